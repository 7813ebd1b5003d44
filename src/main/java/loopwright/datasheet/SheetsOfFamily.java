package loopwright.datasheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.matching.PartKind;
import loopwright.register.Family;
import loopwright.register.FamilyPanel;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** On a family's page: the data sheets of its kinds of part. */
public final class SheetsOfFamily implements FamilyPanel {
  private static final List<PartKind> KINDS =
      List.of(PartKind.PROBE, PartKind.CABLE, PartKind.DRIVER);

  private final DataSheets sheets;

  public SheetsOfFamily(DataSheets sheets) {
    this.sheets = sheets;
  }

  record Sheet(String kind, String href, Map<String, String> facts) {}

  @Override
  public String template() {
    return "datasheet/family";
  }

  @Override
  public Object model(DSLContext sql, Family family, UnitsShown units) {
    Map<Long, String> code = Map.of(family.id().number(), family.code());
    List<Sheet> shown = new ArrayList<>();
    Map<Subject, SheetDetails> entered =
        sheets.all(sql).stream().collect(Collectors.toMap(DataSheet::subject, DataSheet::details));
    for (PartKind kind : PartKind.values()) {
      Subject subject = Subject.ofFamily(kind, family.id());
      @Nullable SheetDetails details = entered.get(subject);
      if (details != null || KINDS.contains(kind)) {
        shown.add(
            new Sheet(
                kind.word(),
                SheetAddress.of(subject, code).href(),
                details == null ? Map.of() : SheetWords.of(subject, details)));
      }
    }
    return shown;
  }
}
