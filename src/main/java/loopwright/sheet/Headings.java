package loopwright.sheet;

import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.problem.Nearest;
import loopwright.problem.Refused;

/**
 * Checks a table's headings against those a reader knows; an unknown one is refused, not ignored.
 */
public final class Headings {
  private Headings() {}

  /**
   * @throws Refused naming the first unknown heading and the nearest known one
   */
  public static void refuseUnknown(Table table, Collection<String> known) {
    unknown(table, known).stream()
        .findFirst()
        .ifPresent(
            refused -> {
              throw refused;
            });
  }

  /** A refusal for every unknown heading, each with the nearest known one. */
  public static List<Refused> unknown(Table table, Collection<String> known) {
    return IntStream.range(0, table.headings().size())
        .filter(at -> !known.contains(table.headings().get(at)))
        .mapToObj(at -> unknown(table, at, known))
        .toList();
  }

  private static Refused unknown(Table table, int at, Collection<String> known) {
    String heading = table.headings().get(at);
    return new Refused(
        SheetProblem.UNKNOWN_HEADING,
        table.name(),
        table.headingLine(),
        at + 1,
        heading,
        nearest(heading, known));
  }

  /**
   * @throws Refused naming the first of these headings that the table lacks
   */
  public static void refuseMissing(Table table, Collection<String> needed) {
    missing(table, needed).stream()
        .findFirst()
        .ifPresent(
            refused -> {
              throw refused;
            });
  }

  /** A refusal for every one of these headings that the table lacks. */
  public static List<Refused> missing(Table table, Collection<String> needed) {
    return needed.stream()
        .filter(heading -> !table.has(heading))
        .map(
            heading ->
                new Refused(
                    SheetProblem.MISSING_HEADING, table.name(), table.headingLine(), heading))
        .toList();
  }

  /** The known word with the fewest single-letter edits to the given one. */
  public static String nearest(String word, Collection<String> known) {
    return Nearest.word(word, known);
  }
}
