package loopwright.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoublePredicate;
import loopwright.problem.Text;
import loopwright.units.Numbers;

/** Puts a result into sentences: why it doesn't conform first, then what the curve looks like. */
final class CurveFindings {
  /** Output moving by less than this share of what it should is called dead or saturated. */
  private static final double HARDLY = 0.1;

  private final CurveResult result;
  private final ToleranceProfile profile;
  private final Say say;
  private final List<Finding> found = new ArrayList<>();

  CurveFindings(CurveResult result, Say say) {
    this.result = result;
    this.profile = result.profile();
    this.say = say;
  }

  List<Finding> all() {
    result.runs().forEach(this::whyNot);
    result.runs().forEach(this::shape);
    result.runs().forEach(this::drawnOnly);
    result.hysteresis().ifPresent(this::hysteresis);
    worseRun();
    return List.copyOf(found);
  }

  private void add(Finding.Kind kind, RunResult run, String sentence) {
    boolean two = result.runs().size() > 1;
    found.add(
        new Finding(kind, two ? Text.capital(run.run().label()) + " run: " + sentence : sentence));
  }

  private void whyNot(RunResult run) {
    incomplete(run);
    isfOut(run);
    dslOut(run);
  }

  private void incomplete(RunResult run) {
    if (run.complete()) {
      return;
    }
    GapRange judged = run.judgedRange();
    Grid grid = result.grid();
    if (!Lattice.of(grid).isCoveredBy(judged)) {
      add(
          Finding.Kind.INCOMPLETE,
          run,
          "The readings don't cover the profile's range, "
              + say.span(new GapRange(grid.fromMicrometres(), grid.toMicrometres()))
              + ": judged from "
              + say.span(judged)
              + ". A curve conforms only over the whole range; read the missing gaps.");
    }
    long whole = run.judgedIncrements().size();
    if (whole == 0) {
      add(
          Finding.Kind.INCOMPLETE,
          run,
          "No readings stand one increment of "
              + say.gap(grid.stepMicrometres())
              + " apart, so the ISF limits can't be applied. Read at "
              + grid
              + ".");
    } else if (run.increments().stream().anyMatch(this::isWide)) {
      Increment wide = run.increments().stream().filter(this::isWide).findFirst().orElseThrow();
      add(
          Finding.Kind.INCOMPLETE,
          run,
          "The step from "
              + say.span(wide.span())
              + " is wider than the profile's increment of "
              + say.gap(grid.stepMicrometres())
              + ", so its ISF can't be judged. Read the gaps between.");
    }
  }

  private boolean isWide(Increment step) {
    return !step.whole() && step.span().lengthMicrometres() > result.grid().stepMicrometres();
  }

  private void isfOut(RunResult run) {
    List<Increment> judged = run.judgedIncrements();
    long out = judged.stream().filter(step -> !step.conforms()).count();
    if (out == 0) {
      return;
    }
    Increment worst = run.worstIncrement(profile.slope()).orElseThrow();
    add(
        Finding.Kind.ISF_OUT,
        run,
        "ISF is outside ±"
            + Numbers.plain(profile.isfTolerancePercent())
            + " % in "
            + out
            + " of "
            + judged.size()
            + " increments; the worst, "
            + say.span(worst.span())
            + ", has "
            + say.scaleFactor(worst.isf())
            + " ("
            + Say.percent(worst.percentFrom(profile.slope()))
            + ").");
  }

  private void dslOut(RunResult run) {
    if (run.dslVerdict() == Verdict.CONFORMS) {
      return;
    }
    CurvePoint worst = run.worstPoint();
    add(
        Finding.Kind.DSL_OUT,
        run,
        "The deviation from the straight line reaches "
            + say.deviation(worst.deviationMicrometres())
            + " at "
            + say.gap(worst.gapMicrometres())
            + "; the limit is ±"
            + say.gap(profile.dslLimitMicrometres())
            + ".");
  }

  private void shape(RunResult run) {
    List<CurvePoint> judged = run.points().stream().filter(CurvePoint::judged).toList();
    if (isDead(run, judged)) {
      add(
          Finding.Kind.DEAD,
          run,
          "The output hardly moves with the gap: it stays between "
              + Say.volts(judged.stream().mapToDouble(CurvePoint::volts).max().orElseThrow())
              + " and "
              + Say.volts(judged.stream().mapToDouble(CurvePoint::volts).min().orElseThrow())
              + ". There is no working loop behind it.");
      return;
    }
    turns(run, judged);
    saturation(run, judged);
    trend(run);
    if (run.linearRange().isEmpty()) {
      add(
          Finding.Kind.NO_LINEAR_RANGE,
          run,
          "No increment passes both tests, so there is no linear range; the mid-range gap is the"
              + " middle of the profile's range.");
    }
  }

  private boolean isDead(RunResult run, List<CurvePoint> judged) {
    double most = judged.stream().mapToDouble(CurvePoint::volts).max().orElseThrow();
    double least = judged.stream().mapToDouble(CurvePoint::volts).min().orElseThrow();
    double expected = profile.slope() * run.judgedRange().lengthMicrometres() / 1000;
    return most - least < HARDLY * expected;
  }

  private void turns(RunResult run, List<CurvePoint> judged) {
    if (run.asf() < 0) {
      add(
          Finding.Kind.REVERSED,
          run,
          "The output gets less negative as the gap grows: the gaps may be counted from the wrong"
              + " end. Closer to the target is less negative.");
      return;
    }
    for (int i = 1; i < judged.size(); i++) {
      if (judged.get(i).volts() > judged.get(i - 1).volts()) {
        add(
            Finding.Kind.NOT_MONOTONE,
            run,
            "The output turns back between "
                + say.span(span(judged.get(i - 1), judged.get(i)))
                + ", where it should get more negative all along.");
        return;
      }
    }
  }

  private static GapRange span(CurvePoint from, CurvePoint to) {
    return new GapRange(from.gapMicrometres(), to.gapMicrometres());
  }

  /** A flat piece at one end of a curve that moves elsewhere. */
  private void saturation(RunResult run, List<CurvePoint> judged) {
    DoublePredicate flat = isf -> Math.abs(isf) < HARDLY * profile.slope();
    int last = judged.size() - 1;
    int near = 0;
    while (near < last && flat.test(isf(judged, near + 1))) {
      near++;
    }
    int far = last;
    while (far > 0 && flat.test(isf(judged, far))) {
      far--;
    }
    if (far < last) {
      saturated(run, "From " + say.gap(judged.get(far).gapMicrometres()) + " on", judged.get(last));
    }
    if (near > 0) {
      saturated(run, "Up to " + say.gap(judged.get(near).gapMicrometres()), judged.get(0));
    }
  }

  private void saturated(RunResult run, String where, CurvePoint end) {
    add(
        Finding.Kind.SATURATED,
        run,
        where
            + " the output stays near "
            + Say.volts(end.volts())
            + ": it looks saturated. Check the supply at the driver, the parts fitted and the"
            + " gap zero.");
  }

  private static double isf(List<CurvePoint> judged, int i) {
    CurvePoint before = judged.get(i - 1);
    CurvePoint after = judged.get(i);
    return 1000
        * (before.volts() - after.volts())
        / (after.gapMicrometres() - before.gapMicrometres());
  }

  private void trend(RunResult run) {
    IsfTrend trend = run.isfTrend().orElse(null);
    if (trend == null || trend.direction() == IsfTrend.Direction.NONE) {
      return;
    }
    boolean falls = trend.direction() == IsfTrend.Direction.FALLS;
    String hint =
        run.isfVerdict() == Verdict.CONFORMS
            ? "."
            : falls
                ? ", as with more cable than the driver is tuned for. Prove the lengths first."
                : ", as with less cable than the driver is tuned for. Prove the lengths first.";
    add(
        Finding.Kind.TREND,
        run,
        "ISF "
            + trend.direction().label()
            + " along the gap by "
            + Say.fixed(Math.abs(trend.changePercent()), 1)
            + " % of nominal"
            + hint);
  }

  private void drawnOnly(RunResult run) {
    long outside =
        run.points().stream().filter(p -> !result.grid().holds(p.gapMicrometres())).count();
    long drawn = run.points().stream().filter(p -> !p.judged()).count();
    if (drawn > 0) {
      add(
          Finding.Kind.DRAWN_ONLY,
          run,
          drawn
              + (drawn == 1 ? " reading is" : " readings are")
              + " drawn but not judged: "
              + outside
              + " outside the range, "
              + (drawn - outside)
              + " between the increments.");
    }
  }

  private void hysteresis(Hysteresis hysteresis) {
    found.add(
        new Finding(
            Finding.Kind.HYSTERESIS,
            "Up and down differ by at most "
                + Say.fixed(hysteresis.millivolts(), 0)
                + " mV ("
                + say.gap(hysteresis.micrometres())
                + "), at "
                + say.gap(hysteresis.atGapMicrometres())
                + "."));
  }

  private void worseRun() {
    if (result.runs().size() > 1) {
      found.add(
          new Finding(
              Finding.Kind.WORSE_RUN,
              "The values of the curve are those of its worse run, "
                  + result.worse().run().label()
                  + "."));
    }
  }
}
