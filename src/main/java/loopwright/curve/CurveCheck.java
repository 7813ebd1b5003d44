package loopwright.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * Makes a curve of typed cells and says what is wrong with them, never by an exception: what can't
 * be read or used ({@link #complaints}, then there is no curve) apart from what can be asked back
 * and confirmed ({@link #questions}, beside the curve).
 *
 * @param complaints every one, in the order of rows
 * @param questions to confirm before the curve is kept
 * @param curve empty when there are complaints
 */
public record CurveCheck(List<Remark> complaints, List<Remark> questions, Optional<Curve> curve) {
  static final int MOST_READINGS = 1000;

  /** The longest text of a cell that is kept. */
  public static final int MOST_CHARACTERS = 30;

  public CurveCheck {
    complaints = List.copyOf(complaints);
    questions = List.copyOf(questions);
  }

  /** Checks the cells and, where they make a curve, whether the profile can judge it. */
  public static CurveCheck of(CurveEntry entry, ToleranceProfile profile) {
    CurveCheck check = of(entry);
    Optional<Remark> unfit = check.curve.flatMap(curve -> unfit(curve, entry, profile));
    return unfit.isPresent() ? stopped(List.of(unfit.get())) : check;
  }

  /** Checks the cells of a curve that no profile is to judge. */
  public static CurveCheck of(CurveEntry entry) {
    if (entry.rows().isEmpty()) {
      return stopped(List.of(nothing()));
    }
    if (entry.rows().size() > MOST_READINGS) {
      return stopped(List.of(tooMany(entry)));
    }
    CellCheck check = CellCheck.of(entry);
    if (check.complaints().isEmpty()) {
      check.counts();
    }
    if (!check.complaints().isEmpty()) {
      return stopped(check.complaints());
    }
    Curve curve = new Curve(check.readings());
    return new CurveCheck(List.of(), check.questions(), Optional.of(curve));
  }

  /** What is said where there is no reading at all. */
  public static Remark nothing() {
    return Remark.whole(CurveProblem.NO_READINGS);
  }

  private static Remark tooMany(CurveEntry entry) {
    return Remark.whole(CurveProblem.TOO_MANY_READINGS, entry.rows().size(), MOST_READINGS);
  }

  /**
   * As {@link #of}, for readings that are to be kept as typed: a cell longer than {@link
   * #MOST_CHARACTERS} is complained of too.
   */
  public static CurveCheck toKeep(CurveEntry entry, ToleranceProfile profile) {
    return of(entry, profile).alsoStoppedBy(tooLong(entry));
  }

  /**
   * Readings of which no curve is asked, because there was none to take: each must be readable, but
   * there may be any number of them, at any gap.
   *
   * @param readings empty when there are complaints
   */
  public record Alone(List<Remark> complaints, List<CurveReading> readings) {
    public Alone {
      complaints = List.copyOf(complaints);
      readings = List.copyOf(readings);
    }
  }

  /** Checks readings without asking for a curve; see {@link Alone}. */
  public static Alone alone(CurveEntry entry) {
    if (entry.rows().size() > MOST_READINGS) {
      return new Alone(List.of(tooMany(entry)), List.of());
    }
    CellCheck check = CellCheck.of(entry);
    List<Remark> complaints = together(tooLong(entry), check.complaints());
    return new Alone(complaints, complaints.isEmpty() ? check.readings() : List.of());
  }

  /** The same as a check: complaints, but no questions and no curve. */
  public static CurveCheck withoutCurve(CurveEntry entry) {
    return stopped(alone(entry).complaints());
  }

  private static List<Remark> tooLong(CurveEntry entry) {
    List<Remark> complaints = new ArrayList<>();
    for (CurveEntry.Cells cells : entry.rows()) {
      tooLong(cells.row(), Remark.Column.GAP, cells.gap()).ifPresent(complaints::add);
      tooLong(cells.row(), cells.voltsColumn(), cells.volts()).ifPresent(complaints::add);
    }
    return complaints;
  }

  private static Optional<Remark> tooLong(int row, Remark.Column column, String text) {
    int length = text.strip().length();
    return length <= MOST_CHARACTERS
        ? Optional.empty()
        : Optional.of(Remark.at(row, column, CurveProblem.TOO_LONG, length, MOST_CHARACTERS));
  }

  /** The same with more complaints, which leave no curve. */
  CurveCheck alsoStoppedBy(List<Remark> more) {
    return more.isEmpty() ? this : stopped(together(more, complaints));
  }

  private static List<Remark> together(List<Remark> some, List<Remark> others) {
    return Stream.concat(some.stream(), others.stream())
        .sorted(Comparator.comparingInt(Remark::row))
        .toList();
  }

  static CurveCheck stopped(List<Remark> complaints) {
    return new CurveCheck(complaints, List.of(), Optional.empty());
  }

  /** Gaps typed in the wrong unit give a curve that no grid of the profile can take. */
  private static Optional<Remark> unfit(Curve curve, CurveEntry entry, ToleranceProfile profile) {
    if (CurveAnalysis.grid(curve, profile).isPresent()) {
      return Optional.empty();
    }
    Unit unit = entry.gapUnit();
    int row = entry.rows().get(0).row();
    Unit other = unit == Unit.MIL ? Unit.MICROMETRE : Unit.MIL;
    if (CurveAnalysis.grid(in(other, curve), profile).isPresent()) {
      Say say = new Say(unit);
      List<CurveReading> all = curve.readings();
      double least = all.stream().mapToDouble(CurveReading::gapMicrometres).min().orElseThrow();
      double most = all.stream().mapToDouble(CurveReading::gapMicrometres).max().orElseThrow();
      return Optional.of(
          Remark.at(
              row,
              Remark.Column.GAP,
              CurveProblem.GAP_UNIT_SLIP,
              say.span(new GapRange(least, most)),
              profile.code(),
              profile.grids().get(0),
              other.symbol(),
              unit.symbol()));
    }
    return Optional.of(
        Remark.at(
            row,
            Remark.Column.GAP,
            CurveProblem.OUTSIDE_RANGE,
            profile.code(),
            profile.grids().get(0)));
  }

  private static Curve in(Unit unit, Curve curve) {
    return new Curve(
        curve.readings().stream()
            .map(
                reading ->
                    CurveReading.of(
                        reading.run(),
                        new Reported(reading.gap().typed(), unit, reading.gap().amount()),
                        reading.output()))
            .toList());
  }
}
