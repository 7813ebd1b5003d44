package loopwright.protection;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/** An effect in plain sentences, lengths in both units, the one asked for first. */
public final class EffectWords {
  /** Stands under every such statement. */
  public static final String OWNER =
      "Set points belong to their owner: this says where they act, not where they should stand.";

  /** µm; an offset below it isn't told. */
  private static final double NEARLY_ZERO_POSITION = 1;

  private final boolean micrometresFirst;

  public EffectWords(boolean micrometresFirst) {
    this.micrometresFirst = micrometresFirst;
  }

  /** What somebody should know of a channel, most important first. */
  public List<String> of(ChannelEffect effect) {
    List<String> sentences = new ArrayList<>();
    effect.position().ifPresent(position -> sentences.addAll(zero(position)));
    effect.setPoints().forEach(acts -> sentences.add(acts(acts, effect.vibration().isPresent())));
    effect.vibration().ifPresent(vibration -> sentences.addAll(vibration(vibration)));
    effect.okGaps().forEach(ok -> sentences.add(ok(ok)));
    if (!effect.missing().isEmpty()) {
      sentences.add(
          "Not recorded, so not worked out: "
              + String.join(", ", effect.missing())
              + ". Read the setting out of the monitor and bring it in.");
    }
    return sentences;
  }

  /** {@code Alert meant for 100 µm pk-pk (3.9 mil) acts at 118 µm (4.6 mil): 18 % late.} */
  public String acts(ActsAt acts, boolean vibration) {
    String meant = capital(acts.setPoint().name()) + " meant for " + meant(acts, vibration);
    OptionalDouble at = acts.acts();
    if (at.isEmpty()) {
      return meant
          + " is not reached up to "
          + length(acts.reach())
          + ", where the curve's readings end: don't count on it.";
    }
    String share = " by " + Math.round(100 * Math.abs(at.getAsDouble() / acts.meant() - 1)) + " %";
    return meant
        + " acts at "
        + length(at.getAsDouble())
        + switch (acts.timing()) {
          case AS_MEANT -> ", as meant.";
          case LATE -> ": late" + share + ".";
          case EARLY, NOT_WITHIN_THE_CURVE -> ": early" + share + ".";
        };
  }

  /** As it was entered, then in the other unit. */
  private static String meant(ActsAt acts, boolean vibration) {
    boolean mil = acts.setPoint().unit() == Unit.MIL;
    return signed(Numbers.plain(acts.setPoint().level()))
        + (mil ? " mil" : " µm")
        + (vibration ? " pk-pk" : "")
        + " ("
        + (mil ? micrometres(acts.meant()) : mils(acts.meant()))
        + ")";
  }

  private List<String> zero(PositionEffect position) {
    List<String> sentences = new ArrayList<>();
    if (!position.ramp().isCollar()) {
      sentences.add(ramp(position));
    }
    double shown = position.shownAtZero();
    if (Math.abs(shown) >= NEARLY_ZERO_POSITION) {
      sentences.add(
          "At true zero the monitor shows "
              + length(shown)
              + ": set points on one side act early, on the other late.");
    }
    return sentences;
  }

  private static String ramp(PositionEffect position) {
    return String.format(
            Locale.ROOT,
            "On the ramp of %s° the gap changes by %.3f (its sine) of the shaft's movement; levels are"
                + " movements of the shaft, and the monitor's scale factor is taken ",
            Numbers.plain(java.math.BigDecimal.valueOf(position.ramp().degrees())),
            position.ramp().sine())
        + (position.rampInScale()
            ? "with the sine in it, since it is that much below the loop's own."
            : "as that of the gap, the angle told beside it.");
  }

  private List<String> vibration(VibrationEffect vibration) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "Of a small vibration the monitor shows " + Math.round(100 * vibration.share()) + " %.");
    OptionalDouble clips = vibration.clipsAt();
    if (clips.isEmpty()) {
      sentences.add(
          "No part of the curve is within its limits, so no level is told at which the signal clips.");
    } else if (clips.getAsDouble() <= 0) {
      sentences.add(
          "At "
              + length(vibration.gap())
              + " the probe stands outside the straight part of the curve.");
    } else {
      sentences.add(
          "Vibration up to "
              + length(clips.getAsDouble())
              + " pk-pk stays inside the straight part; beyond, the signal clips.");
    }
    return sentences;
  }

  private String ok(OkGap ok) {
    String limit = "OK limit " + signed(String.format(Locale.ROOT, "%.2f V", ok.volts()));
    if (ok.now().isEmpty()) {
      return limit + " lies beyond the curve's readings.";
    }
    String now = limit + " stands for a gap of " + length(ok.now().getAsDouble());
    return ok.before().isEmpty()
        ? now + "."
        : now + ", was " + length(ok.before().getAsDouble()) + " when the loop was right.";
  }

  /** A length in both units. */
  public String length(double micrometres) {
    return micrometresFirst
        ? micrometres(micrometres) + " (" + mils(micrometres) + ")"
        : mils(micrometres) + " (" + micrometres(micrometres) + ")";
  }

  private static String micrometres(double micrometres) {
    return signed(String.format(Locale.ROOT, "%.0f µm", micrometres + 0.0));
  }

  private static String mils(double micrometres) {
    return signed(String.format(Locale.ROOT, "%.1f mil", micrometres / 25.4 + 0.0));
  }

  private static String signed(String number) {
    return number.replace('-', '\u2212');
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }
}
