package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import loopwright.dynamic.DynamicReading;
import loopwright.dynamic.StaticCurve;
import loopwright.print.StackPicture;
import loopwright.print.StackPicture.Mark;
import loopwright.print.StackPicture.Pane;
import loopwright.print.StackPicture.Spot;
import loopwright.print.StackPicture.Stroke;
import loopwright.print.StackPicture.Tick;
import loopwright.print.StackPicture.Trail;
import loopwright.print.StackPlot;
import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/** The dynamic sensitivity among the local slopes of the static curve. */
final class DynamicDrawing {
  private static final int STEPS = 60;

  private DynamicDrawing() {}

  static Optional<String> svg(
      Entries entries, Background.AsLeft asLeft, @Nullable Reported approvedGap) {
    OptionalDouble approved =
        approvedGap == null ? OptionalDouble.empty() : OptionalDouble.of(approvedGap.canonical());
    OptionalDouble gap = DynamicJudge.gap(entries, asLeft.curve(), approved);
    return gap.isEmpty()
        ? Optional.empty()
        : Sines.reading(entries)
            .map(reading -> StackPlot.svg(picture(entries, asLeft, gap.getAsDouble(), reading)));
  }

  private static StackPicture picture(
      Entries entries, Background.AsLeft asLeft, double gap, DynamicReading reading) {
    StaticCurve curve = asLeft.curve();
    List<Double> gaps = curve.gaps();
    double from = gaps.get(0);
    double to = gaps.get(gaps.size() - 1);
    List<Spot> slopes =
        IntStream.rangeClosed(0, STEPS)
            .mapToDouble(i -> from + (to - from) * i / STEPS)
            .mapToObj(x -> Spot.of(x, curve.slopeAt(x)))
            .toList();
    List<Trail> trails = new ArrayList<>();
    trails.add(new Trail("slope of " + asLeft.number(), Stroke.FULL, slopes));
    DynamicJudge.budget(entries, reading)
        .ifPresent(
            budget ->
                trails.add(
                    new Trail(
                        "",
                        Stroke.FULL,
                        List.of(
                            Spot.of(gap, reading.sensitivity() - budget.expandedUncertainty()),
                            Spot.of(gap, reading.sensitivity() + budget.expandedUncertainty())))));
    trails.add(
        new Trail(
            "dynamic check",
            Stroke.NONE,
            List.of(new Spot(gap, reading.sensitivity(), Mark.OTHER))));
    return new StackPicture(
        "dynamic",
        "The dynamic sensitivity beside the slope of the static curve.",
        "gap, µm",
        gaps.stream().map(x -> new Tick(x, Amounts.number("%.0f", x))).toList(),
        List.of(),
        List.of(
            new Pane(
                "Sensitivity, mV/µm", "upright bar: ± U of the dynamic check", List.of(), trails)));
  }
}
