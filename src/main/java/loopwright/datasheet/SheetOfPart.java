package loopwright.datasheet;

import java.util.Map;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.PartPanel;
import loopwright.register.Register;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** On a part's page: what data sheets say of it. */
public final class SheetOfPart implements PartPanel {
  private final Register register;
  private final DataSheets sheets;

  public SheetOfPart(Register register, DataSheets sheets) {
    this.register = register;
    this.sheets = sheets;
  }

  record Panel(Map<String, String> facts, String model, String href) {}

  @Override
  public String template() {
    return "datasheet/part";
  }

  @Override
  public Object model(DSLContext sql, ComponentId id, UnitsShown units) {
    Component part = register.component(sql, id).orElseThrow();
    Subject own = Subject.ofModel(part.kind(), part.details().identity());
    return new Panel(
        SheetWords.of(
            own,
            sheets.read(sql).of(part.kind(), part.details().identity(), part.facts().family())),
        own.model(),
        SheetAddress.of(own, Map.of()).href());
  }
}
