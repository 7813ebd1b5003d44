package loopwright.loop;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/**
 * What another feature shows on a loop's page; its template has a fragment {@code panel(model)}.
 */
public interface LoopPanel {

  /**
   * The loop shown.
   *
   * @param fingerprint of what is fitted, where that is known
   */
  record Loop(
      long point, String tag, ZoneId zone, Optional<String> fingerprint, UnitsShown units) {}

  /** Something one can do from the page. */
  record Action(String label, String href) {}

  String template();

  Object model(DSLContext sql, Loop loop);

  List<Action> actions(Loop loop);
}
