package loopwright.whatif;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import loopwright.cause.Baseline;
import loopwright.cause.LengthOutlook;
import loopwright.cause.LengthOutlook.Outcome;
import loopwright.cause.LengthOutlook.Spread;
import loopwright.cause.Told;
import loopwright.exposure.EffectShown;
import loopwright.print.OutlookDrawing;
import loopwright.print.OutlookPicture;
import loopwright.protection.ActsAt;
import loopwright.protection.ChannelEffect;
import loopwright.protection.ChannelEffect.Reading;
import loopwright.protection.EffectWords;
import loopwright.protection.GapSpan;
import loopwright.protection.MonitorTold;
import loopwright.protection.OutputCurve;
import loopwright.protection.Ramp;
import loopwright.units.Unit;

/** Works an outlook out for a page. Rounded here and nowhere before. */
final class Outlook {
  private static final int DRAWN = 41;

  private final Present present;
  private final LengthOutlook outlook;
  private final Ramp ramp;
  private final boolean metric;
  private final double[] gaps;

  Outlook(Present present, LengthOutlook outlook, Ramp ramp, boolean metric) {
    this.present = present;
    this.outlook = outlook;
    this.ramp = ramp;
    this.metric = metric;
    GapSpan known = present.known();
    double step = (known.farMicrometres() - known.nearMicrometres()) / (DRAWN - 1);
    this.gaps =
        IntStream.range(0, DRAWN).mapToDouble(i -> known.nearMicrometres() + i * step).toArray();
  }

  /** A value now and as expected, with the interval of 95 %. */
  record Line(String name, String now, String expected, String between) {}

  /** What a channel does then, and how far the law lets it vary. */
  record Channel(EffectShown effect, List<String> between) {}

  record Shown(String drawing, List<Line> lines, List<Channel> channels) {}

  Shown shown(Reading reading, List<MonitorTold> told, Optional<GapSpan> straight) {
    return new Shown(
        drawing(), lines(), told.stream().map(each -> channel(reading, each, straight)).toList());
  }

  private String drawing() {
    Unit unit = metric ? Unit.MICROMETRE : Unit.MIL;
    Baseline baseline = present.baseline();
    Spread[] spreads =
        Arrays.stream(gaps)
            .mapToObj(gap -> outlook.spread(curve -> curve.volts(gap)))
            .toArray(Spread[]::new);
    return OutlookDrawing.svg(
        new OutlookPicture(
            "At the set gap "
                + Told.volts(baseline.setVolts())
                + " now, "
                + Told.volts(outlook.expected().volts(present.setGap()))
                + " expected.",
            unit.symbol(),
            Arrays.stream(gaps).map(unit::fromCanonical).toArray(),
            Arrays.stream(gaps).map(baseline::volts).toArray(),
            Arrays.stream(spreads).mapToDouble(Spread::middle).toArray(),
            Arrays.stream(spreads).mapToDouble(Spread::low).toArray(),
            Arrays.stream(spreads).mapToDouble(Spread::high).toArray(),
            unit.fromCanonical(present.setGap())));
  }

  private List<Line> lines() {
    Baseline baseline = present.baseline();
    double set = present.setGap();
    Spread volts = outlook.spread(curve -> curve.volts(set));
    Spread sensitivity = outlook.spread(curve -> curve.sensitivity(set));
    Spread moved = outlook.spread(curve -> curve.gapAt(baseline.setVolts()));
    List<Line> lines = new ArrayList<>();
    lines.add(
        new Line(
            "Gap voltage at the set gap",
            Told.volts(baseline.setVolts()),
            Told.volts(volts.middle()),
            Told.volts(volts.high()) + " to " + Told.volts(volts.low())));
    lines.add(
        new Line(
            "Sensitivity there",
            sensitivity(baseline.setSensitivity()),
            sensitivity(sensitivity.middle()),
            sensitivity(sensitivity.low()) + " to " + sensitivity(sensitivity.high())));
    if (!Double.isNaN(moved.middle())) {
      lines.add(
          new Line(
              "Gap, if the probe is moved until the volts look right",
              gap(set),
              gap(moved.middle()),
              gap(moved.low()) + " to " + gap(moved.high())));
      lines.add(
          new Line(
              "Sensitivity then",
              sensitivity(baseline.setSensitivity()),
              sensitivity(outlook.expected().sensitivity(moved.middle())),
              ""));
    }
    return lines;
  }

  private Channel channel(Reading reading, MonitorTold told, Optional<GapSpan> straight) {
    Optional<ChannelEffect> effect = effect(outlook.expected(), reading, told, straight);
    if (effect.isEmpty()) {
      return new Channel(
          new EffectShown(
              told.name(), List.of("The expected curve doesn't fall at the set gap."), ""),
          List.of());
    }
    List<String> between = new ArrayList<>();
    for (int i = 0; i < effect.get().setPoints().size(); i++) {
      between.add(between(effect.get().setPoints().get(i), i, reading, told));
    }
    return new Channel(
        EffectShown.of(effect.get(), metric),
        between.stream().filter(sentence -> !sentence.isEmpty()).toList());
  }

  private String between(ActsAt acts, int i, Reading reading, MonitorTold told) {
    if (acts.acts().isEmpty()) {
      return "";
    }
    Spread spread =
        outlook.spread(
            curve ->
                effect(curve, reading, told, Optional.empty())
                    .map(each -> each.setPoints().get(i).acts())
                    .filter(OptionalDouble::isPresent)
                    .map(OptionalDouble::getAsDouble)
                    .orElse(Double.NaN));
    return "%s of %s %s: between %s and %s with 95 %%."
        .formatted(
            acts.setPoint().name(),
            loopwright.units.Numbers.plain(acts.setPoint().level()).replace('-', '\u2212'),
            acts.setPoint().unit().symbol(),
            length(spread.low()),
            length(spread.high()));
  }

  private Optional<ChannelEffect> effect(
      Outcome curve, Reading reading, MonitorTold told, Optional<GapSpan> straight) {
    double[] volts = Arrays.stream(gaps).map(curve::volts).toArray();
    double[] now = Arrays.stream(gaps).map(present.baseline()::volts).toArray();
    Optional<OutputCurve> before =
        OutputCurve.falling(gaps, now, present.setGap(), Optional.empty());
    return OutputCurve.falling(gaps, volts, present.setGap(), straight)
        .map(
            output ->
                ChannelEffect.of(
                    new ChannelEffect.Loop(reading, output, before, present.setGap(), ramp), told));
  }

  private String length(double micrometres) {
    return new EffectWords(metric).length(micrometres);
  }

  /** In the reader's unit: the column is narrow. */
  private String gap(double micrometres) {
    return metric
        ? String.format(Locale.ROOT, "%.0f µm", micrometres)
        : String.format(Locale.ROOT, "%.1f mil", Unit.MIL.fromCanonical(micrometres));
  }

  private String sensitivity(double millivoltsPerMicrometre) {
    return metric
        ? String.format(Locale.ROOT, "%.2f mV/µm", millivoltsPerMicrometre)
        : String.format(
            Locale.ROOT,
            "%.0f mV/mil",
            Unit.MILLIVOLT_PER_MIL.fromCanonical(millivoltsPerMicrometre));
  }
}
