package loopwright.print;

import java.util.ArrayList;
import java.util.List;
import loopwright.print.ChainPicture.Content;
import loopwright.print.ChainPicture.Part;
import loopwright.units.Length;

/**
 * The block of text that names one part: what it is and how long, its serial, a note.
 *
 * @param over middle of the part
 */
record ChainLabel(Part part, double over) {
  static final String MONO = "'IBM Plex Mono', 'DejaVu Sans Mono', monospace";
  private static final String INK = "#1c2733";
  private static final String SOFT = "#56626e";
  private static final double LINE = 18;

  /** Widths of a letter at 14 units, on the safe side for the faces that may stand in. */
  private static final double SANS = 7.6;

  private static final double MONOSPACED = 8.5;
  private static final int LONGEST_SERIAL = 18;
  private static final int LONGEST_IN_BOX = 12;
  private static final int LONGEST_NOTE = 30;

  static double sansWidth(String text) {
    return SANS * text.length();
  }

  /** What it is, with a blank where a length follows. */
  private String caption() {
    return switch (part.content()) {
      case NONE -> "no " + part.caption();
      case UNKNOWN -> part.caption() + " not known";
      case FITTED -> part.caption() + " ";
    };
  }

  private String length() {
    Length length = part.length();
    if (part.content() != Content.FITTED) {
      return "";
    }
    return length == null ? "length not known" : length.inMetres();
  }

  private boolean hasNumber() {
    return part.length() != null;
  }

  private String serial() {
    return part.content() == Content.FITTED && part.serial().isEmpty()
        ? "no serial"
        : shortened(part.serial(), LONGEST_SERIAL);
  }

  private String note() {
    return shortened(part.note(), LONGEST_NOTE);
  }

  /** Lines of text. */
  int height() {
    return 1 + (serial().isEmpty() ? 0 : 1) + (note().isEmpty() ? 0 : 1);
  }

  Labels.Block block() {
    double number = hasNumber() ? MONOSPACED * length().length() : sansWidth(length());
    double first = sansWidth(caption()) + number;
    double width = Math.max(first, Math.max(MONOSPACED * serial().length(), sansWidth(note())));
    return new Labels.Block(over, width);
  }

  /**
   * @param backed whether a line may run behind it
   */
  void draw(Svg.Element into, double middle, double top, boolean backed) {
    if (backed) {
      double width = block().width() + 6;
      into.rect(middle - width / 2, top, width, LINE * height() + 3)
          .set("class", "chain-ground")
          .set("fill", "#fffefa");
    }
    Svg.Element first = text(into, middle, top + 14, caption(), INK, "");
    if (hasNumber()) {
      first
          .add("tspan")
          .set("class", "n")
          .set("font-family", MONO)
          .set("font-weight", "600")
          .text(length());
    } else {
      first.text(length());
    }
    double y = top + 14;
    if (!serial().isEmpty()) {
      y += LINE;
      boolean named = !part.serial().isEmpty();
      Svg.Element serial = text(into, middle, y, serial(), SOFT, named ? "n soft" : "soft");
      if (named) {
        serial.set("font-family", MONO);
        serial.add("title").text(part.serial());
      }
    }
    if (!note().isEmpty()) {
      text(into, middle, y + LINE, note(), SOFT, "soft").add("title").text(part.note());
    }
  }

  private static Svg.Element text(
      Svg.Element into, double x, double y, String text, String colour, String styleClass) {
    Svg.Element label = into.label(x, y, "middle", text).set("font-size", "14").set("fill", colour);
    return styleClass.isEmpty() ? label : label.set("class", styleClass);
  }

  /** What stands in the driver's box: the word, then its serial in one line or two. */
  static List<String> boxLines(Part driver) {
    List<String> lines = new ArrayList<>(List.of(driver.caption()));
    if (driver.content() != Content.FITTED) {
      lines.add(driver.content() == Content.NONE ? "none fitted" : "not known");
    } else if (driver.serial().isEmpty()) {
      lines.add("no serial");
    } else {
      String serial = shortened(driver.serial(), 2 * LONGEST_IN_BOX);
      int first = serial.offsetByCodePoints(0, Math.min(LONGEST_IN_BOX, count(serial)));
      lines.add(serial.substring(0, first));
      if (first < serial.length()) {
        lines.add(serial.substring(first));
      }
    }
    return lines;
  }

  /** The middle of a long name is left out: its end tells parts apart. */
  static String shortened(String text, int most) {
    int length = count(text);
    if (length <= most) {
      return text;
    }
    int head = (most - 1) / 2;
    int tail = most - 1 - head;
    return text.substring(0, text.offsetByCodePoints(0, head))
        + "…"
        + text.substring(text.offsetByCodePoints(text.length(), -tail));
  }

  private static int count(String text) {
    return text.codePointCount(0, text.length());
  }
}
