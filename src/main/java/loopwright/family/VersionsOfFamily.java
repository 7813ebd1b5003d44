package loopwright.family;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loopwright.register.ChangeNote;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyPair;
import loopwright.register.FamilyPanel;
import loopwright.web.Form;
import loopwright.web.PathSegment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** On a family's page: its versions, and what engineers can do with it. */
public final class VersionsOfFamily implements FamilyPanel {
  private final FamilyBook families;
  private final FamilyVersions versions;

  public VersionsOfFamily(FamilyBook families, FamilyVersions versions) {
    this.families = families;
    this.versions = versions;
  }

  record Row(int number, Map<String, String> changed, long entry, ChangeNote made) {}

  record Panel(
      String href,
      List<Row> rows,
      Map<String, String> numbers,
      Form form,
      Map<String, String> others,
      Map<String, String> partners) {}

  @Override
  public String template() {
    return "family/versions";
  }

  @Override
  public Object model(DSLContext sql, Family family, UnitsShown units) {
    List<FamilyVersion> all = versions.of(sql, family.id());
    List<Row> rows = new ArrayList<>();
    Map<String, String> numbers = new java.util.LinkedHashMap<>();
    for (int i = 0; i < all.size(); i++) {
      FamilyVersion version = all.get(i);
      Map<String, String> changed =
          i + 1 == all.size()
              ? Map.of()
              : FamilyVersion.between(all.get(i + 1).words(), version.words());
      rows.add(new Row(version.number(), changed, version.entry(), version.made()));
      numbers.put(Integer.toString(version.number()), "version " + version.number());
    }
    Form form =
        Form.blank()
            .put("from", Integer.toString(Math.max(1, all.size() - 1)))
            .put("to", Integer.toString(all.size()));
    return new Panel(
        "/families/" + PathSegment.of(family.code()),
        rows,
        numbers,
        form,
        FamilyEditPages.others(families.all(sql), family),
        partners(sql, family));
  }

  private Map<String, String> partners(DSLContext sql, Family family) {
    Map<Long, String> codes = families.codes(sql);
    Map<String, String> partners = new java.util.LinkedHashMap<>();
    for (FamilyPair pair : families.pairs(sql)) {
      boolean first = pair.first().equals(family.id());
      if (first || pair.second().equals(family.id())) {
        long other = first ? pair.second().number() : pair.first().number();
        String code = codes.getOrDefault(other, "");
        partners.put(code, code);
      }
    }
    return partners;
  }
}
