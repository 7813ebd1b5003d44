package loopwright.fieldcheck;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import loopwright.dynamic.Amplitude;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Direction;
import loopwright.plant.Limits;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/** What a monitor shows and does, held against what it was told. */
final class ChannelJudge {
  /** Share of full scale by which a monitor may be off. */
  private static final double ACCURACY = 0.01;

  private static final String BASIS =
      "±1 % of full scale, after API Std 670 (from memory; no clause confirmed)";

  private final Entries entries;
  private final boolean vibration;
  private final ChannelSetting setting;
  private final List<Said> said = new ArrayList<>();

  private ChannelJudge(Entries entries, boolean vibration, ChannelSetting setting) {
    this.entries = entries;
    this.vibration = vibration;
    this.setting = setting;
  }

  static List<Said> judge(Entries entries, Background background) {
    List<Said> said = new ArrayList<>();
    Optional<ChannelSetting> setting = background.setting();
    if (setting.isEmpty()) {
      said.add(
          Said.only(
              "channel", "No setting of the channel is on record, so readings aren't judged."));
    } else {
      said.addAll(told(entries, background.isVibration(), setting.get()));
    }
    acted(said, entries, "ok-fault", "not-OK", "acted");
    acted(said, entries, "relay", "relay", "changed over");
    return said;
  }

  private static List<Said> told(Entries entries, boolean vibration, ChannelSetting setting) {
    ChannelJudge judge = new ChannelJudge(entries, vibration, setting);
    for (int row = 1; row <= entries.rows(); row++) {
      judge.reading(row);
    }
    judge.level("alert", setting.alert(), setting.delays().alertSeconds());
    judge.level("danger", setting.danger(), setting.delays().dangerSeconds());
    return judge.said;
  }

  private void reading(int row) {
    Optional<Double> injected = entries.amount("injected", row);
    Optional<Double> shown = entries.amount("shown", row);
    OptionalDouble scale = fullScale();
    if (injected.isEmpty() || shown.isEmpty()) {
      return;
    }
    OptionalDouble expected = expected(injected.get());
    String about = "reading at " + entries.reported("injected", row).orElseThrow();
    if (expected.isEmpty() || scale.isEmpty()) {
      said.add(
          Said.only(
              about,
              "Shown only: scale factor, zero, full scale or what was injected isn't said."));
      return;
    }
    said.add(against(about, shown.get(), expected.getAsDouble(), scale.getAsDouble()));
  }

  private static Said against(String about, double shown, double expected, double fullScale) {
    boolean good = Math.abs(shown - expected) <= ACCURACY * fullScale * (1 + 1e-9);
    return Said.judged(
        good,
        about,
        "%s shown, %s expected: %s of full scale off."
            .formatted(
                Amounts.gap(shown),
                Amounts.gap(expected),
                Amounts.number("%.2f %%", 100 * Math.abs(shown - expected) / fullScale)),
        BASIS);
  }

  /**
   * What the monitor should show, µm: for vibration V pk-pk / S, for positions s (V − V zero) / S
   * with s = +1 where movement toward the probe counts positive (the volts are then less negative).
   */
  private OptionalDouble expected(double volts) {
    if (setting.scaleFactor() == null) {
      return OptionalDouble.empty();
    }
    double slope = setting.scaleFactor().millivoltsPerMicrometre();
    Optional<Amplitude> amplitude = Amplitude.named(entries.word("injected-as"));
    if (vibration) {
      return amplitude.isEmpty()
          ? OptionalDouble.empty()
          : OptionalDouble.of(1000 * amplitude.get().toPeakToPeak(Math.abs(volts)) / slope);
    }
    if (setting.zeroVolts() == null
        || setting.positive() == null
        || !entries.word("injected-as").equals("direct voltage")) {
      return OptionalDouble.empty();
    }
    int sign = setting.positive() == Direction.TOWARD ? 1 : -1;
    return OptionalDouble.of(sign * 1000 * (volts - setting.zeroVolts().doubleValue()) / slope);
  }

  /** The larger end of full scale, µm. */
  private OptionalDouble fullScale() {
    return Stream.of(
            Optional.ofNullable(setting.fullScale().low()),
            Optional.ofNullable(setting.fullScale().high()))
        .flatMap(Optional::stream)
        .mapToDouble(end -> Math.abs(micrometres(end)))
        .filter(end -> end > 0)
        .max();
  }

  private double micrometres(BigDecimal level) {
    Unit unit = setting.levelUnit();
    return unit == null ? 0 : unit.toCanonical(level).doubleValue();
  }

  private void level(String name, Limits told, @Nullable BigDecimal delay) {
    Optional<Double> acted = entries.amount(name);
    OptionalDouble scale = fullScale();
    acted.ifPresent(
        at -> {
          OptionalDouble nearest = nearest(told, at);
          if (nearest.isEmpty() || scale.isEmpty()) {
            said.add(Said.only(name, "Acted at " + Amounts.gap(at) + "; the record has no level."));
          } else {
            said.add(acts(name, at, nearest.getAsDouble(), scale.getAsDouble()));
          }
        });
    entries.reported(name + "-delay").ifPresent(after -> said.add(delay(name, after, delay)));
  }

  private static Said acts(String name, double at, double told, double fullScale) {
    boolean good = Math.abs(at - told) <= ACCURACY * fullScale * (1 + 1e-9);
    return Said.judged(
        good, name, "Acted at %s, told %s.".formatted(Amounts.gap(at), Amounts.gap(told)), BASIS);
  }

  /** Two-sided levels are held against the nearer one. */
  private OptionalDouble nearest(Limits told, double at) {
    return Stream.of(Optional.ofNullable(told.low()), Optional.ofNullable(told.high()))
        .flatMap(Optional::stream)
        .mapToDouble(this::micrometres)
        .boxed()
        .min((a, b) -> Double.compare(Math.abs(a - at), Math.abs(b - at)))
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  private static Said delay(String name, Reported after, @Nullable BigDecimal told) {
    return Said.only(
        name + " delay",
        "Acted after " + after + (told == null ? "." : "; told " + Numbers.plain(told) + " s."));
  }

  private static void acted(
      List<Said> said, Entries entries, String item, String about, String good) {
    String word = entries.word(item);
    if (word.equals("inhibited")) {
      said.add(Said.only(about, "Inhibited while this was done; it was not seen to act."));
    } else if (!word.isEmpty()) {
      said.add(
          Said.judged(
              word.equals(good),
              about,
              word.equals(good)
                  ? "It " + word + "."
                  : "It " + word + ": the protection is not proved.",
              "a function that is relied on is seen to act; common practice, no source"));
    }
  }
}
