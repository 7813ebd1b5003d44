package loopwright.register;

import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/**
 * What another feature shows on a part's page; its template has a fragment {@code panel(model)}.
 */
public interface PartPanel {
  String template();

  Object model(DSLContext sql, ComponentId part, UnitsShown units);
}
