package loopwright.exposure;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.time.SiteMoment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What a record out of tolerance did to protection until it was found, in sentences. */
public final class Meanwhile {
  private static final String NOTHING_KNOWN =
      "Nothing of a monitor channel is on record for then: where set points acted isn't known.";

  private final Effects effects;

  public Meanwhile(Effects effects) {
    this.effects = effects;
  }

  /**
   * Since when it may have been so, then where set points acted, channel by channel.
   *
   * @param zone clock of the site
   */
  public List<String> told(DSLContext sql, Calibrated record, ZoneId zone, UnitsShown units) {
    Effects.Shown effect = effects.ofRecord(sql, record, units).orElse(null);
    List<String> told = told(since(sql, record, zone), effect);
    if (effect == null) {
      told.add(NOTHING_KNOWN);
    }
    return told;
  }

  static List<String> told(String since, Effects.@Nullable Shown effect) {
    List<String> told = new ArrayList<>(List.of(since));
    if (effect != null) {
      told.addAll(effect.said());
      effect
          .channels()
          .forEach(
              channel ->
                  channel.sentences().forEach(each -> told.add(channel.channel() + ": " + each)));
    }
    return told;
  }

  /** From when it may have been so. */
  String since(DSLContext sql, Calibrated record, ZoneId zone) {
    String found = SiteMoment.day(record.measuredAt(), zone).toString();
    Optional<Calibrated> good = effects.lastGood(sql, record);
    if (good.isEmpty()) {
      return "Found on %s. No good record stands before it: since when it was so nobody can say."
          .formatted(found);
    }
    long days = Duration.between(good.get().measuredAt(), record.measuredAt()).toDays();
    String sentence =
        "Left good on %s (%s), found out of tolerance on %s: for up to %s days set points acted as told below."
            .formatted(
                SiteMoment.day(good.get().measuredAt(), zone), good.get().number(), found, days);
    return effects.settingsChanged(sql, good.get(), record)
        ? sentence
            + " The monitor's settings were changed meanwhile; the levels told are those of the end."
        : sentence;
  }
}
