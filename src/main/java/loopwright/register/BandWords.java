package loopwright.register;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loopwright.dynamic.ResponseBand;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;

/** A response band in words, a line a range of frequencies; 1 Hz is 60 cpm. */
final class BandWords {
  private BandWords() {}

  static List<String> of(ResponseBand band) {
    return band.stretches().stream().map(BandWords::line).toList();
  }

  private static String line(ResponseBand.Stretch stretch) {
    List<String> limits = new ArrayList<>();
    limits(limits, stretch.lowDecibels(), stretch.highDecibels(), " dB");
    limits(limits, stretch.lowPhase(), stretch.highPhase(), "°");
    return "%s to %s Hz (%s to %s cpm): %s"
        .formatted(
            Numbers.plain(stretch.from()),
            Numbers.plain(stretch.to()),
            cpm(stretch.from()),
            cpm(stretch.to()),
            String.join(", ", limits));
  }

  private static void limits(
      List<String> limits, @Nullable BigDecimal low, @Nullable BigDecimal high, String unit) {
    if (low != null && high != null) {
      limits.add(signed(low) + " to " + signed(high) + unit);
    } else if (low != null) {
      limits.add("not below " + signed(low) + unit);
    } else if (high != null) {
      limits.add("not above " + signed(high) + unit);
    }
  }

  private static String signed(BigDecimal number) {
    String text = Numbers.plain(number).replace('-', '\u2212');
    return number.signum() > 0 ? "+" + text : text;
  }

  private static String cpm(BigDecimal hertz) {
    return String.format(Locale.ROOT, "%,.0f", hertz.doubleValue() * 60);
  }
}
