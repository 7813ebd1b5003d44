package loopwright.importing;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;

/** The real numbers that a run gives to what was only planned. Belongs to one run. */
final class Ids {
  private final Map<Long, Long> made = new HashMap<>();

  void made(long planned, long real) {
    made.put(planned, real);
  }

  /** As it is when it is real already. */
  long real(long number) {
    return number > 0 ? number : Objects.requireNonNull(made.get(number), "made by a step before");
  }
}
