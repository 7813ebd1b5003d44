package loopwright.pack;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.calibration.Zero;

/** A line of a loop's block in the sheet to fill in. */
enum Item {
  OUTCOME("outcome", Entry.WORD, false, Returned.OUTCOMES),
  REASON("reason", Entry.TEXT, false, List.of()),
  NOTHING_TOUCHED("nothing touched", Entry.WORD, false, List.of("yes", "no")),
  DONE_BY("done by", Entry.TEXT, true, List.of()),
  MEASURED_AT("measured at", Entry.MOMENT, true, List.of()),
  ZERO("gap zero", Entry.WORD, true, Stream.of(Zero.values()).map(Zero::word).toList()),
  SERIAL("serial", Entry.TEXT, true, List.of()),
  GAP_VOLTAGE("gap voltage", Entry.NUMBER, true, List.of()),
  NO_CURVE("no curve because", Entry.TEXT, true, List.of()),
  READING("reading", Entry.NUMBER, true, List.of()),
  STANDARDS("standards used", Entry.TEXT, true, List.of()),
  /** What is written down of a bypass, part by part; see {@link BypassPart}. */
  BYPASS("bypass", Entry.TEXT, false, List.of()),
  BYPASS_TIME("bypass, day and time", Entry.MOMENT, false, List.of());

  private final String word;
  private final Entry entry;
  private final boolean found;
  private final List<String> choices;

  Item(String word, Entry entry, boolean found, List<String> choices) {
    this.word = word;
    this.entry = entry;
    this.found = found;
    this.choices = choices;
  }

  /** What is to be typed. */
  enum Entry {
    TEXT,
    /** One of a list. */
    WORD,
    NUMBER,
    /** Day and time on the site's clock. */
    MOMENT
  }

  String word() {
    return word;
  }

  /** The longest text that is kept of it. */
  int mostCharacters() {
    return switch (this) {
      case REASON -> 2000;
      case NO_CURVE, STANDARDS -> 400;
      default -> 120;
    };
  }

  Entry entry() {
    return entry;
  }

  List<String> choices() {
    return choices;
  }

  /** Whether something may be typed in that column of this line. */
  boolean takes(Column column) {
    return switch (column) {
      case AS_LEFT -> true;
      case AS_FOUND -> found;
      case AS_FOUND_DOWN, AS_LEFT_DOWN -> this == READING;
      default -> false;
    };
  }

  static Optional<Item> named(String word) {
    return Stream.of(values()).filter(item -> item.word.equals(word)).findFirst();
  }
}
