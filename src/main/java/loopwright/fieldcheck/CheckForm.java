package loopwright.fieldcheck;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.loop.TypedMoment;
import loopwright.problem.Text;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** Reads the form of a check; complaints stay with the form. */
final class CheckForm {
  private final CheckKind kind;
  private final Form form;
  private final List<Entered> entered = new ArrayList<>();

  private CheckForm(CheckKind kind, Form form) {
    this.kind = kind;
    this.form = form;
  }

  static Optional<NewCheck> read(CheckKind kind, Form form, long point, ZoneId zone, Instant now) {
    CheckForm reading = new CheckForm(kind, form);
    kind.items().forEach(reading::item);
    if (!kind.columns().isEmpty()) {
      reading.table();
    }
    Optional<Instant> at = TypedMoment.read(form, zone, now);
    String by = form.read("taken-by", text -> Text.needed("who took it", text, 120));
    String note = form.read("note", text -> Text.kept("the note", text, 2000));
    form.read("reason", text -> Text.needed("why it was taken", text, 400));
    reading.refuseHalf();
    return form.ok()
        ? at.map(
            moment -> new NewCheck(point, kind, moment, by, new Entries(reading.entered), note))
        : Optional.empty();
  }

  private void item(Item item) {
    String name = item.name();
    if (form.typed(name).isBlank()) {
      return;
    }
    if (item.measured()) {
      Unit unit = form.unit(name + "-unit", item.units());
      form.optional(name, text -> item.plausible(number(text, unit, item)))
          .ifPresent(number -> entered.add(Entered.of(name, 0, number)));
    } else {
      form.optional(name, text -> oneOf(item, text))
          .ifPresent(word -> entered.add(Entered.of(name, word)));
    }
  }

  private static Reported number(String text, @Nullable Unit unit, Item item) {
    Unit known = unit == null ? item.units().get(0) : unit; // a wrong unit is complained of already
    return Reported.read(text, known)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "\u201c" + text + "\u201d is not one number. Give it such as 4.5 or 4,5."));
  }

  private static String oneOf(Item item, String text) {
    if (!item.choices().contains(text)) {
      throw new IllegalArgumentException("Choose one from the list.");
    }
    return text;
  }

  /** A row that holds anything holds all of its columns but those that may be missing. */
  private void table() {
    List<Item> columns = kind.columns();
    List<Unit> units = columns.stream().map(c -> form.unit(c.name() + "-unit", c.units())).toList();
    int rows = columns.stream().mapToInt(c -> form.every(c.name()).size()).max().orElse(0);
    for (int row = 1; row <= Math.min(rows, kind.rows()); row++) {
      List<String> cells = new ArrayList<>();
      for (Item column : columns) {
        cells.add(cell(column.name(), row));
      }
      if (cells.stream().anyMatch(cell -> !cell.isBlank())) {
        row(columns, units, cells, row);
      }
    }
  }

  private String cell(String column, int row) {
    List<String> all = form.every(column);
    return row <= all.size() ? all.get(row - 1) : "";
  }

  private void row(List<Item> columns, List<Unit> units, List<String> cells, int row) {
    for (int i = 0; i < columns.size(); i++) {
      Item column = columns.get(i);
      if (cells.get(i).isBlank()) {
        if (!kind.mayMiss(column)) {
          form.complain(
              "rows",
              "Row %s: %s is missing.".formatted(row, column.label().toLowerCase(Locale.ROOT)));
        }
        continue;
      }
      try {
        Reported number = column.plausible(number(cells.get(i), units.get(i), column));
        entered.add(Entered.of(column.name(), row, number));
      } catch (IllegalArgumentException wrong) {
        form.complain("rows", "Row %s, %s: %s".formatted(row, column.label(), wrong.getMessage()));
      }
    }
  }

  private void refuseHalf() {
    if (entered.isEmpty() && form.ok()) {
      form.complain("Nothing was measured yet: fill in at least one field.");
    }
    kind.items().stream()
        .filter(item -> item.needed() && form.typed(item.name()).isBlank())
        .forEach(item -> form.complain(item.name(), "Fill this in."));
    if (kind == CheckKind.RESPONSE && entered.stream().noneMatch(one -> one.row() > 1)) {
      form.complain("rows", "A response takes two frequencies at least.");
    }
    if (kind == CheckKind.SLOW_ROLL
        && !form.typed("phase").isBlank()
        && form.typed("phase-as").isBlank()) {
      form.complain("phase-as", "Say whether the phase is counted as lag or as lead.");
    }
    if (kind == CheckKind.CHANNEL
        && entered.stream().anyMatch(one -> one.row() > 0)
        && form.typed("injected-as").isBlank()) {
      form.complain("injected-as", "Say what was injected.");
    }
  }
}
