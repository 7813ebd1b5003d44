package loopwright.pack;

import java.util.List;
import java.util.stream.Stream;

/** Columns of the sheet to fill in, in order. What comes back must have the same headings. */
enum Column {
  PACK("pack"),
  LOOP("loop"),
  LINE("line"),
  OF("of"),
  UNIT("unit"),
  PLANNED("planned"),
  LOWEST("lowest"),
  HIGHEST("highest"),
  AS_FOUND("as found"),
  AS_FOUND_DOWN("as found, down"),
  AS_LEFT("as left"),
  AS_LEFT_DOWN("as left, down");

  /** Columns in which people type. */
  static final List<Column> TYPED = List.of(AS_FOUND, AS_FOUND_DOWN, AS_LEFT, AS_LEFT_DOWN);

  private final String heading;

  Column(String heading) {
    this.heading = heading;
  }

  String heading() {
    return heading;
  }

  static List<String> headings() {
    return Stream.of(values()).map(Column::heading).toList();
  }
}
