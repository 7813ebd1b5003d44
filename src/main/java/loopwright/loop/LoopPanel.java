package loopwright.loop;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import loopwright.time.Viewpoint;
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
   * @param viewpoint from where it is looked at; {@link Viewpoint#LATEST} for the present
   */
  record Loop(
      long point,
      String tag,
      ZoneId zone,
      Optional<String> fingerprint,
      UnitsShown units,
      Viewpoint viewpoint) {}

  /** Something one can do from the page. */
  record Action(String label, String href) {}

  String template();

  Object model(DSLContext sql, Loop loop);

  List<Action> actions(Loop loop);
}
