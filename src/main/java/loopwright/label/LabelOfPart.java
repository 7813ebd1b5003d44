package loopwright.label;

import loopwright.register.ComponentId;
import loopwright.register.PartPanel;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** On a part's page: the code of its label, and where to print it. */
public final class LabelOfPart implements PartPanel {
  record Panel(String code, String href, String check) {}

  @Override
  public String template() {
    return "label/panel";
  }

  @Override
  public Object model(DSLContext sql, ComponentId part, UnitsShown units) {
    return new Panel(
        LabelCode.ofComponent(part.number()).text(),
        "/labels?part=" + part.number(),
        "/scan?part=" + part.number());
  }
}
