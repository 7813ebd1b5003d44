package loopwright.bypass;

import java.time.Instant;
import loopwright.problem.Text;

/**
 * That a bypass was taken off, as a sheet tells it.
 *
 * @param by as written there
 */
public record Removal(Instant at, String by) {
  public Removal {
    by = Text.needed("who took it off", by, 120);
  }
}
