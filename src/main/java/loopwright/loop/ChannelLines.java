package loopwright.loop;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Limits;
import loopwright.plant.PointChannel;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;

/** Monitor channels in words: what was approved, and what somebody found. */
final class ChannelLines {
  private ChannelLines() {}

  /** A channel and the lines under its name. */
  record Shown(String name, List<String> lines) {}

  static List<Shown> of(List<PointChannel> channels) {
    return channels.stream().map(ChannelLines::shown).toList();
  }

  private static Shown shown(PointChannel channel) {
    List<String> lines = new ArrayList<>();
    if (channel.approved() == null && channel.found() == null) {
      lines.add("No setting is recorded.");
    }
    add(lines, "approved", channel.approved());
    add(lines, "found", channel.found());
    return new Shown(channel.channel().position().toString(), lines);
  }

  private static void add(List<String> lines, String basis, @Nullable ChannelSetting setting) {
    if (setting == null) {
      return;
    }
    String unit = setting.levelUnit() == null ? "" : " " + setting.levelUnit().symbol();
    List<String> words = new ArrayList<>();
    if (setting.scaleFactor() != null) {
      words.add("scale factor " + setting.scaleFactor() + because(setting.scaleReason()));
    }
    limits(words, "full scale", setting.fullScale(), unit);
    limits(words, "alert", setting.alert(), unit + after(setting.delays().alertSeconds()));
    limits(words, "danger", setting.danger(), unit + after(setting.delays().dangerSeconds()));
    limits(words, "OK", setting.okVolts(), " V");
    if (setting.zeroVolts() != null) {
      words.add("zero at " + Numbers.plain(setting.zeroVolts()) + " V");
    }
    if (setting.positive() != null) {
      words.add("positive " + setting.positive().word() + " the probe");
    }
    if (!setting.authority().isEmpty()) {
      words.add("by authority " + setting.authority());
    }
    lines.add(
        basis
            + ": "
            + (words.isEmpty() ? "nothing that is recorded here" : String.join(", ", words)));
  }

  private static String because(String reason) {
    return reason.isEmpty() ? "" : " (" + reason + ")";
  }

  private static String after(@Nullable BigDecimal seconds) {
    return seconds == null ? "" : " after " + Numbers.plain(seconds) + " s";
  }

  private static void limits(List<String> words, String name, Limits limits, String unit) {
    @Nullable BigDecimal low = limits.low();
    @Nullable BigDecimal high = limits.high();
    if (low != null && high != null) {
      words.add("%s %s … %s%s".formatted(name, Numbers.plain(low), Numbers.plain(high), unit));
    } else if (high != null) {
      words.add("%s %s%s".formatted(name, Numbers.plain(high), unit));
    } else if (low != null) {
      words.add("%s from %s%s".formatted(name, Numbers.plain(low), unit));
    }
  }
}
