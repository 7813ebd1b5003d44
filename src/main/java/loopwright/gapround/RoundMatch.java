package loopwright.gapround;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import loopwright.fieldcheck.FieldCheckProblem;
import loopwright.fieldcheck.NewGapReading;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.SiteClocks;
import loopwright.problem.Refused;
import loopwright.sheet.Complaints;
import loopwright.time.SiteMoment;
import org.jooq.DSLContext;

/**
 * Finds the points of a file's rows and puts their moments on the site's clock, a thousand rows at
 * a time. Rows of tags that nobody knows are counted, and so many of those tags are kept.
 */
final class RoundMatch implements Consumer<RoundFile.Line> {
  private static final int AT_ONCE = 1_000;
  private static final int MOST_TAGS_KEPT = 2_000;

  private final DSLContext sql;
  private final Plant plant;
  private final Bringing bringing;
  private final Complaints complaints;
  private final Taker matched;
  private final List<RoundFile.Line> waiting = new ArrayList<>(AT_ONCE);
  private final Set<String> unmatched = new LinkedHashSet<>();
  private int rows;
  private int rowsUnmatched;

  /** Takes the readings of some rows. */
  interface Taker {
    void take(List<NewGapReading> some);
  }

  /**
   * What holds for the whole file.
   *
   * @param name of the file
   * @param readBy who read the voltages, as far as is known
   * @param now no reading is later
   */
  record Bringing(String name, String readBy, Instant now) {}

  /**
   * @param complaints takes rows that can't be meant
   * @param matched takes the readings of each thousand rows
   */
  RoundMatch(DSLContext sql, Plant plant, Bringing bringing, Complaints complaints, Taker matched) {
    this.sql = sql;
    this.plant = plant;
    this.bringing = bringing;
    this.complaints = complaints;
    this.matched = matched;
  }

  @Override
  public void accept(RoundFile.Line line) {
    rows++;
    waiting.add(line);
    if (waiting.size() == AT_ONCE) {
      match();
    }
  }

  /** After the last row. */
  void end() {
    match();
  }

  int rows() {
    return rows;
  }

  int rowsUnmatched() {
    return rowsUnmatched;
  }

  /** Tags that nobody knows, as far as there is room. */
  Set<String> unmatched() {
    return unmatched;
  }

  private void match() {
    Map<String, Point> points =
        plant.pointsAsTyped(sql, waiting.stream().map(RoundFile.Line::tag).toList());
    SiteClocks clocks =
        plant.clocks(sql, points.values().stream().map(point -> point.id().number()).toList());
    List<NewGapReading> fresh = new ArrayList<>(waiting.size());
    for (RoundFile.Line line : waiting) {
      Point point = points.get(line.tag());
      if (point == null) {
        unknown(line.tag());
      } else {
        long number = point.id().number();
        reading(line, number, clocks.of(number)).ifPresent(fresh::add);
      }
    }
    waiting.clear();
    matched.take(fresh);
  }

  private void unknown(String tag) {
    rowsUnmatched++;
    if (unmatched.size() < MOST_TAGS_KEPT) {
      unmatched.add(tag);
    }
  }

  private Optional<NewGapReading> reading(RoundFile.Line line, long point, ZoneId zone) {
    try {
      Instant at = moment(line.time(), zone);
      if (at.isAfter(bringing.now())) {
        throw new Refused(FieldCheckProblem.IN_FUTURE, line.time());
      }
      return Optional.of(
          new NewGapReading(
              point,
              at,
              bringing.readBy(),
              line.volts(),
              line.tap(),
              line.state(),
              line.warmth(),
              "",
              line.note(),
              "imported"));
    } catch (Refused wrong) {
      String column = wrong.problem() == FieldCheckProblem.IN_FUTURE ? "time" : "volts";
      complaints.add(
          RoundProblem.NOT_VOLTS,
          bringing.name(),
          line.row(),
          column,
          String.valueOf(wrong.getMessage()));
    } catch (IllegalArgumentException | DateTimeException wrong) {
      complaints.add(
          RoundProblem.NO_MOMENT,
          bringing.name(),
          line.row(),
          "time",
          line.time(),
          "Write it like 2026-03-14 09:40 on the site's clock, or with its offset:"
              + " 2026-03-14T09:40+01:00.");
    }
    return Optional.empty();
  }

  /** On the site's clock, unless it names its offset. */
  private static Instant moment(String typed, ZoneId zone) {
    String text = typed.strip().replace(' ', 'T');
    if (text.matches(".*(Z|[+-]\\d\\d:\\d\\d)$") && text.contains("T")) {
      return OffsetDateTime.parse(text).toInstant();
    }
    String[] halves = text.split("T", -1);
    if (halves.length != 2) {
      throw new IllegalArgumentException("no moment");
    }
    LocalDate day = SiteMoment.day(halves[0]);
    return SiteMoment.of(day, SiteMoment.time(halves[1]), zone);
  }
}
