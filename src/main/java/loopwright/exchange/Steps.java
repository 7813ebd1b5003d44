package loopwright.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.units.Length;

/** An exchange told as steps for the person who does it. */
final class Steps {
  private Steps() {}

  static List<String> of(Exchange exchange) {
    List<String> steps = new ArrayList<>();
    steps.add(look(exchange));
    steps.add(prove(exchange));
    exchange.moves().forEach(move -> steps.add(move(move)));
    steps.add(calibrate(exchange));
    steps.removeIf(String::isEmpty);
    return steps;
  }

  private static String look(Exchange exchange) {
    return ("Look: are the parts swapped, or only the records? Read serial and length of the %ss at"
            + " %s. Where only the record is wrong, record a survey of what is there and move"
            + " nothing.")
        .formatted(exchange.kind().word(), list(exchange.loops()));
  }

  private static String prove(Exchange exchange) {
    List<String> unproved =
        exchange.moves().stream()
            .map(Exchange.Move::part)
            .filter(part -> !part.proved())
            .map(FittedPart::words)
            .toList();
    return unproved.isEmpty()
        ? ""
        : "Prove the length of %s first: what is recorded is not read on the part, certified or measured."
            .formatted(list(unproved));
  }

  private static String move(Exchange.Move move) {
    Length length = move.part().length();
    return "Move %s (%s) from %s to %s in place of %s: the balance of %s goes from %s to %s%s."
        .formatted(
            move.part().words(),
            length == null ? "length not known" : length + ", " + length.inFeet(),
            move.from(),
            move.to(),
            move.takesPlaceOf().words(),
            move.to(),
            move.before().signedMetres(),
            move.after().signedMetres(),
            move.inBalance() ? "" : ", still out");
  }

  private static String calibrate(Exchange exchange) {
    return "Record a survey of each loop with the part taken out, then its assembly, and take a new curve of %s: any exchange ends what a curve stands for."
        .formatted(list(exchange.loops()));
  }

  static String list(List<String> words) {
    int n = words.size();
    return n < 2
        ? String.join("", words)
        : words.subList(0, n - 1).stream().collect(Collectors.joining(", "))
            + " and "
            + words.get(n - 1);
  }
}
