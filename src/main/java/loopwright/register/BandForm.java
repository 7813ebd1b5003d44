package loopwright.register;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import loopwright.dynamic.ResponseBand;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** Reads the table of a profile's allowed frequency response: a row a range of frequencies. */
final class BandForm {
  /** Fields of a row, in their order on the page. */
  private static final List<String> CELLS =
      List.of("band-from", "band-to", "band-low", "band-high", "band-phase-low", "band-phase-high");

  static final List<String> HEADINGS =
      List.of("from Hz", "to Hz", "lowest dB", "highest dB", "lowest phase", "highest phase");
  private static final Map<String, Double> MOST =
      Map.of(
          "band-from", 1e6,
          "band-to", 1e6,
          "band-low", 200.0,
          "band-high", 200.0,
          "band-phase-low", 720.0,
          "band-phase-high", 720.0);
  private static final int ROWS = 5;
  private static final int DECIMALS = 3;

  private final Form form;
  private boolean wrong;

  BandForm(Form form) {
    this.form = form;
  }

  /** Fills in what a version allows. */
  static void put(Form form, ResponseBand band) {
    form.put("band-source", band.source());
    fill(form, band, 0, ResponseBand.Stretch::from);
    fill(form, band, 1, ResponseBand.Stretch::to);
    fill(form, band, 2, ResponseBand.Stretch::lowDecibels);
    fill(form, band, 3, ResponseBand.Stretch::highDecibels);
    fill(form, band, 4, ResponseBand.Stretch::lowPhase);
    fill(form, band, 5, ResponseBand.Stretch::highPhase);
  }

  private static void fill(
      Form form,
      ResponseBand band,
      int cell,
      Function<ResponseBand.Stretch, @Nullable BigDecimal> number) {
    for (int row = 0; row < band.stretches().size(); row++) {
      BigDecimal found = number.apply(band.stretches().get(row));
      form.put(name(cell, row), found == null ? "" : Numbers.plain(found));
    }
  }

  private static String name(int cell, int row) {
    return CELLS.get(cell) + "-" + (row + 1);
  }

  /** A cell of the table: its field's name and what was typed. */
  record Cell(String name, String typed) {}

  /** The rows as typed, filled up with empty ones. */
  static List<List<Cell>> rows(Form form) {
    List<List<Cell>> rows = new ArrayList<>();
    for (int row = 0; row < ROWS || !isBlank(row(form, row)); row++) {
      rows.add(row(form, row));
    }
    return rows;
  }

  private static List<Cell> row(Form form, int row) {
    List<Cell> cells = new ArrayList<>();
    for (int cell = 0; cell < CELLS.size(); cell++) {
      cells.add(new Cell(name(cell, row), form.typed(name(cell, row)).strip()));
    }
    return cells;
  }

  private static boolean isBlank(List<Cell> row) {
    return row.stream().allMatch(cell -> cell.typed().isEmpty());
  }

  /** Empty when nothing was typed, or when something is wrong, which is said. */
  Optional<ResponseBand> read() {
    List<ResponseBand.Stretch> stretches = new ArrayList<>();
    List<List<Cell>> rows = rows(form);
    for (int row = 0; row < rows.size(); row++) {
      if (!isBlank(rows.get(row))) {
        stretch(row + 1, rows.get(row).stream().map(Cell::typed).toList())
            .ifPresent(stretches::add);
      }
    }
    boolean named = !form.typed("band-source").isBlank();
    if (wrong || (stretches.isEmpty() && !named)) {
      return Optional.empty();
    }
    String source =
        form.read("band-source", typed -> Text.needed("the source of the band", typed, 200));
    if (stretches.isEmpty()) {
      form.complain("band-source", "Give the ranges of frequencies, or leave the source empty.");
      return Optional.empty();
    }
    return source == null ? Optional.empty() : Optional.of(new ResponseBand(source, stretches));
  }

  private Optional<ResponseBand.Stretch> stretch(int row, List<String> cells) {
    List<@Nullable BigDecimal> numbers = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      numbers.add(number(row, i, cells.get(i)));
    }
    if (Stream.of(0, 1).anyMatch(i -> cells.get(i).isEmpty())) {
      complain(row, "give the frequencies from and to.");
      return Optional.empty();
    }
    BigDecimal from = numbers.get(0);
    BigDecimal to = numbers.get(1);
    if (wrong || from == null || to == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new ResponseBand.Stretch(
              from, to, numbers.get(2), numbers.get(3), numbers.get(4), numbers.get(5)));
    } catch (IllegalArgumentException backwards) {
      complain(row, Objects.requireNonNull(backwards.getMessage()));
      return Optional.empty();
    }
  }

  private @Nullable BigDecimal number(int row, int cell, String typed) {
    if (typed.isEmpty()) {
      return null;
    }
    Optional<BigDecimal> number = Numbers.read(typed);
    double most = Objects.requireNonNull(MOST.get(CELLS.get(cell)));
    if (number.isEmpty() || Math.abs(number.get().doubleValue()) > most) {
      complain(row, "\"" + typed + "\" is no number for " + HEADINGS.get(cell) + ".");
      return null;
    }
    if (number.get().stripTrailingZeros().scale() > DECIMALS) {
      complain(row, "\"" + typed + "\" has more than " + DECIMALS + " decimals.");
      return null;
    }
    return number.get();
  }

  private void complain(int row, String what) {
    wrong = true;
    form.complain("Response band, row " + row + ": " + what);
  }
}
