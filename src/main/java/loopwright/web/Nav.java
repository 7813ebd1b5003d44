package loopwright.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The navigation as one person sees it: the entries that most people need side by side, the others
 * behind one more click; on a phone all of them in one list.
 */
public record Nav(List<NavItem> all) {
  private static final int SIDE_BY_SIDE = 8;

  public Nav {
    all = List.copyOf(all);
  }

  public List<NavItem> first() {
    return all.subList(0, Math.min(SIDE_BY_SIDE, all.size()));
  }

  public List<NavItem> more() {
    return all.subList(first().size(), all.size());
  }

  /** The entry behind the click that the page belongs to, so that it can be named there. */
  public @Nullable NavItem among(@Nullable String here) {
    return more().stream().filter(item -> item.key().equals(here)).findFirst().orElse(null);
  }
}
