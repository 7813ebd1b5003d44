package loopwright.importing;

import java.util.Arrays;
import java.util.List;

/** The kinds of file as the page tells of them. */
final class Kinds {
  static final List<Kind> ALL = Arrays.stream(FileKind.values()).map(Kind::of).toList();

  private Kinds() {}

  /**
   * @param needed headings that must be there
   * @param others headings that may be
   */
  record Kind(String name, String row, String needed, String others) {
    private static Kind of(FileKind kind) {
      return new Kind(
          kind.word(),
          row(kind),
          String.join(", ", kind.needed()),
          String.join(", ", kind.others()));
    }

    private static String row(FileKind kind) {
      return switch (kind) {
        case FAMILIES -> "one row a family of interchangeable components";
        case COMPONENTS -> "one row a probe, cable, driver or other part";
        case POINTS -> "one row a point, with its place, monitor channel and settings";
        case PLACEMENTS -> "one row a stay of a part in a slot of a point";
        case CALIBRATIONS -> "one row a reading; rows of one tag, stage and moment are one curve";
      };
    }
  }
}
