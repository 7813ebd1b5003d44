package loopwright.register;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Database;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;

/** The list of parts, with its filter in the address. */
final class PartListPages implements Pages {
  private final Database database;
  private final Page page;
  private final FamilyBook families;
  private final PartSearch search;

  PartListPages(Database database, Page page, FamilyBook families, PartSearch search) {
    this.database = database;
    this.page = page;
    this.families = families;
    this.search = search;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/parts", Permission.READ, this::list);
  }

  private void list(Context http) {
    Form form = Form.fromQuery(http);
    List<Family> known = database.read(families::all);
    ComponentQuery query = PartFilter.query(form, known);
    Cursor at = PartFilter.cursor(form);
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("kinds", PartWords.orNone("every kind", PartWords.kinds()));
    model.put("states", PartWords.orNone("every state", PartWords.states()));
    model.put("families", PartWords.orNone("every family", PartWords.families(known)));
    model.put("makers", makers());
    model.put("orders", orders());
    model.put("unitChoices", unitChoices(UnitsShown.of(http)));
    model.put(
        "narrowed", !query.inOrder(ComponentQuery.Order.LABEL).equals(ComponentQuery.EVERYTHING));
    PartsPage found =
        form.ok()
            ? database.read(sql -> search.page(sql, query, at))
            : new PartsPage(List.of(), null, null);
    model.put("rows", found.rows().stream().map(PartLine::of).toList());
    model.put("earlier", PartFilter.address("/parts", form, "before", found.earlier()));
    model.put("later", PartFilter.address("/parts", form, "after", found.later()));
    model.put("shown", shown(found.rows()));
    model.put("filter", PartFilter.text(form));
    page.show(http, form.ok() ? 200 : 422, "register/list", model);
  }

  static List<String> unitChoices(UnitsShown units) {
    return units.metric() ? List.of("m", "ft") : List.of("ft", "m");
  }

  private Map<String, String> makers() {
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", "every maker");
    database.read(search::makers).forEach(maker -> choices.put(maker, maker));
    return choices;
  }

  private static Map<String, String> orders() {
    Map<String, String> orders = new LinkedHashMap<>();
    orders.put(ComponentQuery.Order.LABEL.word(), "by serial");
    orders.put(ComponentQuery.Order.LABEL_BACKWARD.word(), "by serial, backward");
    orders.put(ComponentQuery.Order.NEWEST.word(), "last registered first");
    return orders;
  }

  private static String shown(List<PartRow> rows) {
    return rows.isEmpty()
        ? ""
        : rows.get(0).part().label() + " to " + rows.get(rows.size() - 1).part().label();
  }
}
