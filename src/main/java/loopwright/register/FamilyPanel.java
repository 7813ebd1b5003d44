package loopwright.register;

import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/**
 * What another feature shows on a family's page; its template has a fragment {@code panel(model)}.
 */
public interface FamilyPanel {
  String template();

  Object model(DSLContext sql, Family family, UnitsShown units);
}
