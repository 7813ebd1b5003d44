package loopwright.pack;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.BorderSide;
import org.dhatim.fastexcel.ProtectionOption;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * The sheet to fill in, as a workbook: what was handed out is locked, where something is to be
 * typed is open, and cells for numbers are numbers. The lock has no password: it guards against
 * slips.
 */
final class PackWorkbook {
  private static final String PROGRAM = "Loopwright";

  /** How wide each column is, in characters. */
  private static final int[] WIDTHS = {27, 16, 20, 18, 22, 14, 9, 9, 17, 15, 17, 15};

  private static final String SHADE = "E3EDF5";

  private PackWorkbook() {}

  static byte[] of(Identity identity, Revision.Head head, List<LoopSheet> sheets) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(bytes, PROGRAM, "1.0")) {
      Worksheet sheet = book.newWorksheet("Work pack");
      fill(sheet, identity, sheets);
      about(book.newWorksheet("About"), identity, head);
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
    return bytes.toByteArray();
  }

  private static void fill(Worksheet sheet, Identity identity, List<LoopSheet> loops) {
    for (Column column : Column.values()) {
      sheet.value(0, column.ordinal(), column.heading());
      sheet.width(column.ordinal(), WIDTHS[column.ordinal()]);
    }
    sheet.range(0, 0, 0, WIDTHS.length - 1).style().bold().fillColor(SHADE).set();
    sheet.freezePane(3, 1);
    sheet.repeatRows(0);
    sheet.pageOrientation("landscape");
    sheet.fitToWidth((short) 1);
    sheet.fitToHeight((short) 0);
    int row = 1;
    for (LoopSheet loop : loops) {
      for (PackTable.Line line : PackTable.lines(loop)) {
        write(sheet, row, identity, line);
        row++;
      }
    }
    sheet.protect("");
  }

  private static void write(Worksheet sheet, int row, Identity identity, PackTable.Line line) {
    List<String> cells = PackTable.cells(identity, line);
    for (int column = 0; column < cells.size(); column++) {
      if (!cells.get(column).isEmpty()) {
        sheet.value(row, column, cells.get(column));
      }
    }
    if (line.item() == Item.OUTCOME) {
      sheet
          .range(row, 0, row, WIDTHS.length - 1)
          .style()
          .borderStyle(BorderSide.TOP, "medium")
          .set();
      sheet.style(row, Column.LOOP.ordinal()).bold().set();
    }
    for (Column column : Column.TYPED) {
      if (line.item().takes(column)) {
        open(sheet, row, column.ordinal(), line.item());
      }
    }
  }

  private static void open(Worksheet sheet, int row, int column, Item item) {
    sheet
        .style(row, column)
        .protectionOption(ProtectionOption.LOCKED, false)
        .borderStyle("thin")
        .format(
            switch (item.entry()) {
              case NUMBER -> "0.000";
              case MOMENT -> "yyyy-mm-dd hh:mm";
              default -> "@";
            })
        .set();
    if (!item.choices().isEmpty()) {
      sheet
          .range(row, column, row, column)
          .validateWithListByFormula("\"" + String.join(",", item.choices()) + "\"")
          .allowBlank(true)
          .showDropdown(true);
    }
  }

  private static void about(Worksheet sheet, Identity identity, Revision.Head head) {
    List<String[]> lines = new ArrayList<>();
    lines.add(new String[] {"Pack", identity.toString()});
    lines.add(new String[] {"Outage", head.outage() + " " + head.name()});
    lines.add(new String[] {"Site", head.site()});
    lines.add(new String[] {"Window", head.window()});
    lines.add(new String[] {"Trains", head.trains()});
    lines.add(new String[] {"Team", head.team()});
    lines.add(new String[] {"", ""});
    lines.add(
        new String[] {
          "How",
          "Fill in the open cells of \u201cWork pack\u201d. Outputs are negative. A serial left blank is"
              + " the planned one. A loop comes back as a whole or not at all; loops that nobody touched"
              + " may stay blank."
        });
    lines.add(
        new String[] {
          "Standards",
          "Name the standards used by the codes of the register, with commas between them."
        });
    lines.add(
        new String[] {
          "Bypass",
          "Write down a bypass whole: number, function, vote, who authorised it, who answers for it, since"
              + " when, until when. When it is off, say when and by whom; a second person proves that in"
              + " the register. A second bypass of the same loop goes straight into the bypass log."
        });
    head.cautions().forEach(caution -> lines.add(new String[] {"Caution", caution}));
    sheet.width(0, 12);
    sheet.width(1, 110);
    for (int row = 0; row < lines.size(); row++) {
      sheet.value(row, 0, lines.get(row)[0]);
      sheet.value(row, 1, lines.get(row)[1]);
      sheet.style(row, 0).bold().set();
      sheet.style(row, 1).wrapText(true).set();
    }
    sheet.protect("");
  }
}
