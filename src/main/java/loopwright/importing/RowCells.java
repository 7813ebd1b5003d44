package loopwright.importing;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.problem.Nearest;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.sheet.Complaints;
import loopwright.sheet.Table;
import loopwright.time.SiteMoment;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * The cells of one row, read one by one. What is wrong with a cell is complained of and read on, so
 * that all problems of a row are told at once; {@link #isGood} says whether any came up. Nothing is
 * guessed: formulas, shortened numbers, numbers and dates that could mean two things are problems.
 */
final class RowCells {
  private static final Pattern SHORTENED = Pattern.compile("\\d([.,]\\d+)?[eE]\\+\\d+");
  private static final Set<String> SHEET_ERRORS =
      Set.of("#REF!", "#VALUE!", "#NAME?", "#DIV/0!", "#N/A", "#NUM!", "#NULL!", "#SPILL!");
  private static final Pattern MOMENT =
      Pattern.compile(
          "(\\d{4}-\\d{2}-\\d{2})(?:[T ](\\d{2}:\\d{2}(?::\\d{2})?)(Z|[+-]\\d{2}:?\\d{2})?)?");

  private final Table table;
  private final Table.Row row;
  private final NumberStyle numbers;
  private final Complaints complaints;
  private boolean good = true;

  RowCells(Table table, Table.Row row, NumberStyle numbers, Complaints complaints) {
    this.table = table;
    this.row = row;
    this.numbers = numbers;
    this.complaints = complaints;
  }

  RowPlace place() {
    return new RowPlace(table.name(), row.line());
  }

  boolean isGood() {
    return good;
  }

  boolean hasColumn(String heading) {
    return table.has(heading);
  }

  boolean isFilled(String heading) {
    return !table.cell(row, heading).isEmpty();
  }

  boolean anyFilled(Collection<String> headings) {
    return headings.stream().anyMatch(this::isFilled);
  }

  /** The cell as text; empty when there is none. */
  String text(String heading) {
    String cell = table.cell(row, heading);
    if (cell.startsWith("=") || cell.startsWith("@")) {
      complain(heading, ImportProblem.FORMULA, Shown.cell(cell));
      return "";
    }
    if (SHEET_ERRORS.contains(cell)) {
      complain(heading, ImportProblem.SHEET_ERROR, cell);
      return "";
    }
    return cell.replace("\r\n", "\n").replace('\r', '\n');
  }

  /** A serial, tag or code: a number that the spreadsheet has shortened is none. */
  String name(String heading) {
    String text = text(heading);
    if (SHORTENED.matcher(text).matches()) {
      complain(heading, ImportProblem.SHORTENED, text);
      return "";
    }
    return text;
  }

  /**
   * @param what goes on after "Give"
   */
  String neededName(String heading, String what) {
    if (!isFilled(heading)) {
      complain(heading, ImportProblem.EMPTY_CELL, what);
    }
    return name(heading);
  }

  /** Reads a filled cell; a refusal or complaint of the reader becomes the cell's. */
  <T> Optional<T> read(String heading, Function<String, T> reader) {
    String text = text(heading);
    return text.isEmpty() ? Optional.empty() : attempt(heading, () -> reader.apply(text));
  }

  /** Something made of cells; its refusal is told at that heading. */
  <T> Optional<T> attempt(String heading, java.util.function.Supplier<T> making) {
    try {
      return Optional.of(making.get());
    } catch (Refused refused) {
      complain(heading, new AtCell(refused.problem().code()), String.valueOf(refused.getMessage()));
    } catch (IllegalArgumentException wrong) {
      complain(heading, ImportProblem.REFUSED_VALUE, String.valueOf(wrong.getMessage()));
    }
    return Optional.empty();
  }

  Optional<BigDecimal> number(String heading) {
    String text = text(heading);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    NumberStyle.Reading reading = numbers.read(text);
    reading.wrong().ifPresent(wrong -> complain(heading, wrong.problem(), wrong.parts()));
    return reading.number();
  }

  /** Complains of a number that could mean two things, and of nothing else. */
  void refuseDoubtful(String heading) {
    numbers
        .read(table.cell(row, heading))
        .wrong()
        .filter(wrong -> wrong.problem() != ImportProblem.NOT_A_NUMBER)
        .ifPresent(wrong -> complain(heading, wrong.problem(), wrong.parts()));
  }

  /** A number that the given reader accepts. */
  <T> Optional<T> number(String heading, Function<BigDecimal, T> reader) {
    return number(heading).flatMap(number -> attempt(heading, () -> reader.apply(number)));
  }

  /** The text of a number that is one beyond doubt; empty when the cell is. */
  String plainNumber(String heading) {
    number(heading);
    return text(heading);
  }

  Optional<Integer> whole(String heading) {
    Optional<BigDecimal> number = number(heading);
    try {
      return number.map(BigDecimal::intValueExact);
    } catch (ArithmeticException notWhole) {
      complain(
          heading, ImportProblem.OUT_OF_RANGE, text(heading), "Give a whole number, such as 3.");
      return Optional.empty();
    }
  }

  Optional<Reported> quantity(String heading, Unit unit) {
    return number(heading).map(amount -> new Reported(text(heading), unit, amount));
  }

  /** A quantity that may stand in one of two columns, each with its unit. */
  Optional<Reported> quantity(String one, Unit ofOne, String other, Unit ofOther) {
    if (isFilled(one) && isFilled(other)) {
      complainOfRow(ImportProblem.TWO_UNITS, one, other);
      return Optional.empty();
    }
    return isFilled(other) ? quantity(other, ofOther) : quantity(one, ofOne);
  }

  /** One of a fixed set of words. */
  <T> Optional<T> choice(String heading, Collection<T> choices, Function<T, String> word) {
    String text = text(heading);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<T> chosen =
        choices.stream().filter(c -> word.apply(c).equalsIgnoreCase(text)).findFirst();
    if (chosen.isEmpty()) {
      List<String> words = choices.stream().map(word).toList();
      complain(
          heading,
          ImportProblem.UNKNOWN_WORD,
          Shown.cell(text),
          Nearest.word(text, words),
          "Known are: " + String.join(", ", words) + ".");
    }
    return chosen;
  }

  Optional<LocalDate> day(String heading) {
    String text = text(heading);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(SiteMoment.isoDay(text));
    } catch (DateTimeException notIso) {
      complain(heading, ImportProblem.BAD_DATE, Shown.cell(text));
      return Optional.empty();
    }
  }

  /** A moment: a bare day is its start on the site's clock; a time may carry its own offset. */
  Optional<Instant> moment(String heading, ZoneId zone) {
    String text = text(heading);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Matcher parts = MOMENT.matcher(text);
    if (!parts.matches()) {
      complain(heading, ImportProblem.BAD_DATE, Shown.cell(text));
      return Optional.empty();
    }
    try {
      return Optional.of(moment(parts, zone));
    } catch (DateTimeException noSuchDay) {
      complain(heading, ImportProblem.BAD_DATE, Shown.cell(text));
    } catch (IllegalArgumentException neverOrTwice) {
      complain(
          heading, ImportProblem.NO_SUCH_TIME, text, String.valueOf(neverOrTwice.getMessage()));
    }
    return Optional.empty();
  }

  private static Instant moment(Matcher parts, ZoneId zone) {
    LocalDate day = LocalDate.parse(parts.group(1));
    if (parts.group(2) == null) {
      return SiteMoment.startOf(day, zone);
    }
    if (parts.group(3) == null) {
      return SiteMoment.of(day, LocalTime.parse(parts.group(2)), zone);
    }
    String offset = parts.group(3);
    String colon =
        offset.length() == 5 ? offset.substring(0, 3) + ":" + offset.substring(3) : offset;
    return OffsetDateTime.parse(day + "T" + parts.group(2) + colon).toInstant();
  }

  /** As {@link #moment}, and not in the future. */
  Optional<Instant> past(String heading, ZoneId zone, Instant now) {
    Optional<Instant> moment = moment(heading, zone);
    if (moment.filter(at -> at.isAfter(now)).isPresent()) {
      complain(heading, ImportProblem.IN_FUTURE, text(heading));
      return Optional.empty();
    }
    return moment;
  }

  void complain(String heading, Problem problem, Object... parts) {
    good = false;
    complaints.add(problem, put(new Object[] {table.name(), row.line(), heading}, parts));
  }

  void complainOfRow(Problem problem, Object... parts) {
    good = false;
    complaints.add(problem, put(new Object[] {table.name(), row.line()}, parts));
  }

  private static Object[] put(Object[] place, Object[] parts) {
    Object[] all = new Object[place.length + parts.length];
    System.arraycopy(place, 0, all, 0, place.length);
    System.arraycopy(parts, 0, all, place.length, parts.length);
    return all;
  }

  /** A feature's refusal, told at a cell under the feature's own code. */
  private record AtCell(String code) implements Problem {
    @Override
    public String sentence() {
      return "{0}, row {1}, column {2}: {3}";
    }
  }
}
