package loopwright.fieldcheck;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import loopwright.matching.Verdict;

/**
 * What a check says of one thing.
 *
 * @param about what it is about, in a word or two
 * @param sentence the finding
 * @param basis the rule with the mark of its source; empty where nothing was judged
 */
record Said(Verdict verdict, String about, String sentence, String basis) {
  private static final String BETWEEN = "\t";

  static Said judged(boolean good, String about, String sentence, String basis) {
    return new Said(good ? Verdict.MATCHES : Verdict.ATTENTION, about, sentence, basis);
  }

  static Said only(String about, String sentence) {
    return new Said(Verdict.NOT_JUDGED, about, sentence, "");
  }

  static Verdict worst(List<Said> all) {
    return Verdict.worst(all.stream().map(Said::verdict).toList());
  }

  /** A line a finding. */
  static String kept(List<Said> all) {
    return all.stream()
        .map(
            said ->
                String.join(BETWEEN, said.verdict.word(), said.about, said.sentence, said.basis))
        .collect(Collectors.joining("\n"));
  }

  /** What {@link #kept} gave. */
  static List<Said> read(String lines) {
    return lines.lines().filter(line -> !line.isBlank()).map(Said::line).toList();
  }

  private static Said line(String line) {
    String[] parts = line.split(BETWEEN, -1);
    Verdict verdict =
        Arrays.stream(Verdict.values())
            .filter(each -> each.word().equals(parts[0].toLowerCase(Locale.ROOT)))
            .findFirst()
            .orElse(Verdict.NOT_JUDGED);
    return new Said(verdict, part(parts, 1), part(parts, 2), part(parts, 3));
  }

  private static String part(String[] parts, int place) {
    return parts.length > place ? parts[place] : "";
  }
}
