package loopwright.kit;

import java.time.Instant;
import loopwright.loop.PartSet;
import org.jspecify.annotations.Nullable;

/**
 * Parts kept together.
 *
 * @param dissolved why it is none any more; null while it stands
 */
public record Kit(
    long id,
    String name,
    PartSet set,
    String note,
    String madeBy,
    Instant madeAt,
    @Nullable String dissolved) {

  /** As people call it. */
  public String number() {
    return "KIT-" + id;
  }

  String href() {
    return "/kits/" + number();
  }

  boolean stands() {
    return dissolved == null;
  }
}
