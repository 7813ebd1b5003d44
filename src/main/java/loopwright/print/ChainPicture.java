package loopwright.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * What the drawing of a loop shows.
 *
 * @param name of the loop, for those who don't see the drawing
 * @param probe the probe with its lead
 * @param path what lies between lead and driver, in order; empty where the lead goes straight in
 * @param driver whose length is what it is tuned for
 * @param tolerance largest length balance that still counts as none; inclusive
 */
public record ChainPicture(
    String name, Part probe, List<Part> path, Part driver, Length tolerance) {

  public ChainPicture {
    path = List.copyOf(path);
  }

  /** What is known of a slot. */
  public enum Content {
    FITTED,
    /** Known to be empty. */
    NONE,
    /** Something may be there; nobody can say what. */
    UNKNOWN
  }

  /**
   * One slot.
   *
   * @param caption what it is: {@code probe lead}, {@code extension cable}, {@code driver}
   * @param serial or another name; empty when it has none
   * @param length nominal; for the driver what it is tuned for; null when not known
   * @param note said under the serial, for instance how weakly the length is known; may be empty
   */
  public record Part(
      String caption, String serial, Content content, @Nullable Length length, String note) {

    /** Refuses a length that isn't above zero, and one where nothing is fitted. */
    public Part {
      if (length != null && (length.metres().signum() <= 0 || content != Content.FITTED)) {
        throw new IllegalArgumentException("A part that is fitted has a length above zero.");
      }
    }

    public static Part fitted(String caption, String serial, @Nullable Length length, String note) {
      return new Part(caption, serial, Content.FITTED, length, note);
    }

    public static Part none(String caption) {
      return new Part(caption, "", Content.NONE, null, "");
    }

    public static Part unknown(String caption) {
      return new Part(caption, "", Content.UNKNOWN, null, "");
    }

    String words() {
      String named = serial.isEmpty() ? caption : caption + " " + serial;
      return switch (content) {
        case NONE -> "no " + caption;
        case UNKNOWN -> caption + " not known";
        case FITTED -> named;
      };
    }
  }

  /** Slots along the ruler that are not known to be empty, from the probe. */
  List<Part> run() {
    return Stream.concat(Stream.of(probe), path.stream())
        .filter(part -> part.content() != Content.NONE)
        .toList();
  }

  /** What is known to be fitted, added up. */
  Length known() {
    return run().stream()
        .map(Part::length)
        .filter(Objects::nonNull)
        .reduce(Length.ZERO, Length::plus);
  }

  /** Whether every length along the ruler is known. */
  boolean isMeasured() {
    return probe.content() == Content.FITTED
        && run().stream().allMatch(part -> part.length() != null);
  }

  /** Whether there is any length to lay along a ruler. */
  boolean isAnythingMeasured() {
    return driver.length() != null || run().stream().anyMatch(part -> part.length() != null);
  }

  /** Fitted − tuned for; null when a length is not known. */
  @Nullable Length balance() {
    Length tunedFor = driver.length();
    return tunedFor == null || !isMeasured() ? null : known().minus(tunedFor);
  }

  /** Whether the balance is known and beyond the tolerance. */
  boolean isOff() {
    Length balance = balance();
    return balance != null && balance.abs().compareTo(tolerance) > 0;
  }

  /** The drawing in sentences. */
  String sentence() {
    List<String> parts = new ArrayList<>();
    Stream.concat(Stream.of(probe), path.stream()).map(ChainPicture::told).forEach(parts::add);
    Length tunedFor = driver.length();
    parts.add(
        driver.words()
            + (driver.content() != Content.FITTED
                ? ""
                : tunedFor == null ? ", system length not known" : " tuned for " + tunedFor));
    return "Loop "
        + name
        + ", drawn to length: "
        + parts.stream().collect(Collectors.joining(", "))
        + ". "
        + sum();
  }

  private static String told(Part part) {
    Length length = part.length();
    if (part.content() != Content.FITTED) {
      return part.words();
    }
    return part.words() + (length == null ? ", length not known" : " of " + length);
  }

  private String sum() {
    Length balance = balance();
    if (balance == null) {
      return "The length balance is not known.";
    }
    String total = "Together " + known();
    if (balance.isZero()) {
      return total + ", as the driver needs.";
    }
    return "%s, %s (%s) too %s%s."
        .formatted(
            total,
            balance.abs(),
            balance.abs().inFeet(),
            balance.metres().signum() > 0 ? "long" : "short",
            isOff() ? "" : ", within the tolerance");
  }
}
