package loopwright.exposure;

import java.util.List;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.RecordPanel;
import loopwright.loop.LoopPanel;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Set points on the page of a loop and on that of a record that was out of tolerance. */
public final class EffectPanels implements LoopPanel, RecordPanel {
  private final Effects effects;

  public EffectPanels(Effects effects) {
    this.effects = effects;
  }

  /**
   * @param shown null where there is nothing to work it out from
   */
  record Panel(String title, Effects.@Nullable Shown shown, String nothing) {}

  @Override
  public String template() {
    return "exposure/effect";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    Optional<Effects.Shown> shown =
        loop.fingerprint()
            .flatMap(f -> effects.ofLoop(sql, loop.point(), f, loop.viewpoint(), loop.units()));
    return new Panel(
        "What it does to protection",
        shown.orElse(null),
        "No curve of exactly these parts is on record, or nothing of the monitor channel: where set"
            + " points act isn't known.");
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }

  @Override
  public Optional<Object> model(DSLContext sql, Calibrated record, Reader reader) {
    return record.outcome().equals("conforms")
        ? Optional.empty()
        : Optional.of(
            new Panel(
                "What it did to protection",
                effects.ofRecord(sql, record, reader.units()).orElse(null),
                "Nothing of a monitor channel is on record for then: where set points acted isn't"
                    + " known."));
  }
}
