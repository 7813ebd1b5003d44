package loopwright.spare;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Who gets which part.
 *
 * @param served who goes first first
 * @param left those without
 */
record Dealing(List<Served> served, List<Left> left) {
  Dealing {
    served = List.copyOf(served);
    left = List.copyOf(left);
  }

  /**
   * A want with its part.
   *
   * @param verdict of the loop with the part in it
   */
  record Served(Want want, Want.Option option, String verdict) {
    boolean stays() {
      return want.holds(option.part());
    }

    /** What becomes of it, in words. */
    String change() {
      Held held = want.held();
      return stays()
          ? "stays put aside"
          : held == null ? "to be put aside" : "to be put aside instead of " + held.label();
    }
  }

  /**
   * A want without a part.
   *
   * @param why in sentences
   */
  record Left(Want want, List<String> why) {
    Left {
      why = List.copyOf(why);
    }
  }

  /** What is put aside now and would not be any more. */
  List<Held> released() {
    return Stream.concat(
            served.stream().filter(one -> !one.stays()).map(Served::want),
            left.stream().map(Left::want).filter(want -> !want.isFixed()))
        .flatMap(want -> Stream.ofNullable(want.held()))
        .toList();
  }

  /** What would be put aside anew. */
  List<Served> taken() {
    return served.stream().filter(one -> !one.stays()).toList();
  }

  boolean changesNothing() {
    return released().isEmpty() && taken().isEmpty();
  }

  /** By which the same dealing is known again: SHA-256, hexadecimal. */
  String fingerprint() {
    String text =
        Stream.concat(
                served.stream()
                    .map(
                        one ->
                            line(
                                one.want(),
                                one.option().slot().word() + ">" + one.option().part())),
                left.stream().map(one -> line(one.want(), "without")))
            .collect(Collectors.joining("\n"));
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }

  private static String line(Want want, String what) {
    Held held = want.held();
    return "%s|%s|%s|%s|%s"
        .formatted(
            want.outage().number(),
            want.point(),
            want.slot(),
            held == null ? "" : held.reservation() + "=" + held.component(),
            what);
  }
}
