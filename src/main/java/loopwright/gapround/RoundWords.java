package loopwright.gapround;

import java.util.Locale;
import loopwright.cause.Told;

/** A round in plain words. */
final class RoundWords {
  private RoundWords() {}

  static String summary(RoundStore.Round round) {
    return "%s: %s rows, %s new, %s kept already, %s of unknown tags."
        .formatted(
            round.name(),
            round.rows(),
            round.fresh(),
            round.rows() - round.fresh() - round.unmatched(),
            round.unmatched());
  }

  static String of(Ranking.Ranked ranked) {
    Compared loop = ranked.loop();
    String volts = Told.volts(loop.now().volts().canonical()) + " " + loop.now().state().label();
    if (ranked.isAtARail()) {
      volts += ", near an end of the output: look at once";
    }
    if (loop.before().isEmpty()) {
      return volts + ". Nothing before it compares.";
    }
    return volts
        + ", was "
        + Told.volts(loop.before().get().volts().canonical())
        + ": "
        + direction(loop.change().orElse(0.0))
        + ranked
            .common()
            .filter(common -> Math.abs(common) >= 0.05)
            .map(common -> ", of which the pair moved together " + signed(common))
            .orElse("")
        + ".";
  }

  private static String direction(double change) {
    return signed(change) + (change > 0 ? ", as if nearer" : change < 0 ? ", as if farther" : "");
  }

  static String signed(double volts) {
    return String.format(Locale.ROOT, "%+.2f V", volts).replace('-', '\u2212');
  }
}
