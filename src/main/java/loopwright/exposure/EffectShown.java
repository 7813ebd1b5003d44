package loopwright.exposure;

import java.util.List;
import java.util.stream.Collectors;
import loopwright.print.LevelDrawing;
import loopwright.print.LevelPicture;
import loopwright.protection.ActsAt;
import loopwright.protection.ChannelEffect;
import loopwright.protection.EffectWords;
import loopwright.protection.VibrationEffect;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What a curve does to one channel, for a page.
 *
 * @param drawing as SVG; empty where no set point could be worked out
 */
public record EffectShown(String channel, List<String> sentences, String drawing) {

  /**
   * @param metric whether micrometres come first
   */
  public static EffectShown of(ChannelEffect effect, boolean metric) {
    return new EffectShown(
        effect.channel(), new EffectWords(metric).of(effect), drawing(effect, metric));
  }

  private static String drawing(ChannelEffect effect, boolean metric) {
    if (effect.setPoints().isEmpty()) {
      return "";
    }
    Unit unit = metric ? Unit.MICROMETRE : Unit.MIL;
    EffectWords words = new EffectWords(metric);
    boolean vibration = effect.vibration().isPresent();
    String label =
        effect.setPoints().stream()
            .map(acts -> words.acts(acts, vibration))
            .collect(Collectors.joining(" "));
    return LevelDrawing.svg(
        new LevelPicture(
            label,
            unit.symbol() + (vibration ? " pk-pk" : ""),
            effect.setPoints().stream().map(acts -> row(acts, unit)).toList(),
            effect.vibration().map(v -> clips(v, unit)).orElse(null)));
  }

  private static LevelPicture.Row row(ActsAt acts, Unit unit) {
    return new LevelPicture.Row(
        acts.setPoint().name(),
        unit.fromCanonical(acts.meant()),
        acts.acts().isPresent() ? (Double) unit.fromCanonical(acts.acts().getAsDouble()) : null);
  }

  private static @Nullable Double clips(VibrationEffect vibration, Unit unit) {
    return vibration.clipsAt().isPresent()
        ? (Double) unit.fromCanonical(vibration.clipsAt().getAsDouble())
        : null;
  }
}
