package loopwright.pack;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Limits;
import loopwright.plant.PointChannel;
import loopwright.units.Numbers;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;

/** A monitor channel in one line: where it is plugged and what it was told. */
final class ChannelShown {
  private ChannelShown() {}

  static String line(PointChannel fed) {
    ChannelSetting setting = fed.approved() == null ? fed.found() : fed.approved();
    List<String> words = new ArrayList<>();
    words.add(fed.channel().position().toString());
    if (setting == null) {
      words.add("no setting on record");
      return String.join("; ", words);
    }
    words.add(setting.basis().word());
    ScaleFactor scale = setting.scaleFactor();
    if (scale != null) {
      words.add(scale.toString());
    }
    Unit unit = setting.levelUnit();
    String symbol = unit == null ? "" : " " + unit.symbol();
    add(words, "full scale ", setting.fullScale(), symbol);
    add(words, "alert ", setting.alert(), symbol);
    add(words, "danger ", setting.danger(), symbol);
    add(words, "OK ", setting.okVolts(), " V");
    BigDecimal zero = setting.zeroVolts();
    if (zero != null) {
      words.add("zero " + Numbers.plain(zero) + " V");
    }
    return String.join("; ", words);
  }

  private static void add(List<String> words, String what, Limits limits, String unit) {
    BigDecimal low = limits.low();
    BigDecimal high = limits.high();
    if (low != null || high != null) {
      String range =
          low == null || high == null
              ? Numbers.plain(
                  Objects.requireNonNullElse(low, high == null ? BigDecimal.ZERO : high))
              : Numbers.plain(low) + " to " + Numbers.plain(high);
      words.add(what + range + unit);
    }
  }
}
