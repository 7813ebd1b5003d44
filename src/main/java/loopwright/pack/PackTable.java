package loopwright.pack;

import java.util.ArrayList;
import java.util.List;

/** The sheet to fill in: for each loop a block of lines, the same in every kind of file. */
final class PackTable {
  private static final String MOMENT = "2026-03-14 09:40";

  private PackTable() {}

  /**
   * A line as it is handed out.
   *
   * @param of which serial, gap or part of a bypass is meant; empty elsewhere
   */
  record Line(
      String loop,
      Item item,
      String of,
      String unit,
      String planned,
      String lowest,
      String highest) {}

  static List<Line> lines(LoopSheet sheet) {
    List<Line> lines = new ArrayList<>();
    for (Item item : Item.values()) {
      switch (item) {
        case SERIAL -> serials(sheet, lines);
        case READING -> readings(sheet, lines);
        case GAP_VOLTAGE -> lines.add(plain(sheet, item, "V at rest", sheet.expectedVolts()));
        case OUTCOME -> lines.add(plain(sheet, item, String.join(" / ", item.choices()), ""));
        case NOTHING_TOUCHED -> lines.add(plain(sheet, item, "yes / no", ""));
        case MEASURED_AT -> lines.add(plain(sheet, item, MOMENT, ""));
        case STANDARDS -> lines.add(plain(sheet, item, "codes, with commas", ""));
        case BYPASS -> BypassPart.texts().forEach(part -> lines.add(bypass(sheet, item, part, "")));
        case BYPASS_TIME ->
            BypassPart.moments().forEach(part -> lines.add(bypass(sheet, item, part, MOMENT)));
        default -> lines.add(plain(sheet, item, "", ""));
      }
    }
    return lines;
  }

  private static Line plain(LoopSheet sheet, Item item, String unit, String planned) {
    return new Line(sheet.tag(), item, "", unit, planned, "", "");
  }

  private static Line bypass(LoopSheet sheet, Item item, BypassPart part, String unit) {
    return new Line(sheet.tag(), item, part.word(), unit, "", "", "");
  }

  private static void serials(LoopSheet sheet, List<Line> lines) {
    sheet
        .chain()
        .forEach(
            part ->
                lines.add(
                    new Line(
                        sheet.tag(),
                        Item.SERIAL,
                        part.slot(),
                        part.metres().isEmpty() ? "" : part.metres() + " m",
                        part.serial(),
                        "",
                        "")));
  }

  private static void readings(LoopSheet sheet, List<Line> lines) {
    LoopSheet.Limits limits = sheet.limits();
    if (limits == null) {
      return;
    }
    limits
        .readings()
        .forEach(
            reading ->
                lines.add(
                    new Line(
                        sheet.tag(),
                        Item.READING,
                        reading.gap() + " " + limits.unit(),
                        "V",
                        reading.expected(),
                        reading.lowest(),
                        reading.highest())));
  }

  /** The cells of a line before anybody typed, by column. */
  static List<String> cells(Identity identity, Line line) {
    return List.of(
        identity.toString(),
        line.loop(),
        line.item().word(),
        line.of(),
        line.unit(),
        line.planned(),
        line.lowest(),
        line.highest(),
        "",
        "",
        "",
        "");
  }
}
