package loopwright.importing;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Limits;
import loopwright.plant.PointDetails;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/** A point and a channel's setting field by field, as they are compared and shown. */
final class PointText {
  private PointText() {}

  static Map<String, String> of(PointDetails point, Map<Long, String> familyCodes) {
    Map<String, String> text = new LinkedHashMap<>();
    text.put("kind", point.kind().word());
    text.put("place", point.place());
    text.put(
        "family",
        point.family() == null ? "" : familyCodes.getOrDefault(point.family().number(), ""));
    text.put("pair", point.pairTag());
    text.put("angle", plain(point.facing().angleDegrees(), "°"));
    text.put("viewing end", point.facing().viewingEnd());
    text.put("rotation", point.facing().rotation() == null ? "" : point.facing().rotation().word());
    text.put("ramp angle", plain(point.facing().rampDegrees(), "°"));
    text.put("mark", point.phaseMark().mark() == null ? "" : point.phaseMark().mark().word());
    text.put("events per turn", Objects.toString(point.phaseMark().eventsPerTurn(), ""));
    text.put("threshold", plain(point.phaseMark().thresholdVolts(), " V"));
    text.put("shaft alloy", point.surroundings().shaftAlloy());
    text.put("area class", point.surroundings().areaClass());
    text.put("junction box", point.surroundings().junctionBox());
    text.put("tip temperature", plain(point.surroundings().tipCelsius(), " °C"));
    text.put("route temperature", plain(point.surroundings().routeCelsius(), " °C"));
    text.put("box temperature", plain(point.surroundings().boxCelsius(), " °C"));
    text.put("approved gap", gap(point.approvedGap()));
    text.put("interval", Objects.toString(point.intervalMonths(), ""));
    text.put("state", point.state().word());
    return text;
  }

  static Map<String, String> of(ChannelSetting setting) {
    Map<String, String> text = new LinkedHashMap<>();
    String unit = setting.levelUnit() == null ? "" : " " + setting.levelUnit().symbol();
    text.put("scale factor", setting.scaleFactor() == null ? "" : setting.scaleFactor().toString());
    text.put("scale factor reason", setting.scaleReason());
    limits(text, "full scale", setting.fullScale(), unit);
    limits(text, "alert", setting.alert(), unit);
    limits(text, "danger", setting.danger(), unit);
    text.put("alert delay", plain(setting.delays().alertSeconds(), " s"));
    text.put("danger delay", plain(setting.delays().dangerSeconds(), " s"));
    limits(text, "OK limit", setting.okVolts(), " V");
    text.put("zero", plain(setting.zeroVolts(), " V"));
    text.put("positive direction", setting.positive() == null ? "" : setting.positive().word());
    text.put("authority", setting.authority());
    return text;
  }

  private static void limits(Map<String, String> text, String what, Limits limits, String unit) {
    text.put(what + " low", plain(limits.low(), unit));
    text.put(what + " high", plain(limits.high(), unit));
  }

  private static String plain(@Nullable BigDecimal number, String unit) {
    return number == null ? "" : Numbers.plain(number) + unit;
  }

  /** The same gap in µm and in mil reads the same. */
  private static String gap(@Nullable Reported gap) {
    return gap == null
        ? ""
        : Numbers.plain(gap.unit().toCanonical(gap.amount())) + " " + Unit.MICROMETRE.symbol();
  }
}
