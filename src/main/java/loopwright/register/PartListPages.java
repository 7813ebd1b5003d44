package loopwright.register;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;

/** The list of parts, with its filter in the address. */
final class PartListPages implements Pages {
  private static final List<String> FILTERS =
      List.of("kind", "family", "length", "length-unit", "state", "maker", "serial", "order");

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
    ComponentQuery query = query(form, known);
    Cursor at = cursor(form);
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
    model.put("earlier", address(form, "before", found.earlier()));
    model.put("later", address(form, "after", found.later()));
    model.put("shown", shown(found.rows()));
    page.show(http, form.ok() ? 200 : 422, "register/list", model);
  }

  static List<String> unitChoices(UnitsShown units) {
    return units.metric() ? List.of("m", "ft") : List.of("ft", "m");
  }

  private static ComponentQuery query(Form form, List<Family> known) {
    return ComponentQuery.EVERYTHING
        .ofKind(form.optional("kind", PartWords::kind).orElse(null))
        .inState(form.optional("state", PartWords::state).orElse(null))
        .ofFamily(form.optional("family", code -> named(known, code)).map(Family::id).orElse(null))
        .ofLength(length(form).orElse(null))
        .ofMaker(form.optional("maker", PartListPages::maker).orElse(""))
        .withSerial(form.optional("serial", PartListPages::serial).orElse(""))
        .inOrder(ComponentQuery.Order.named(form.typed("order")));
  }

  static Family named(List<Family> known, String code) {
    return known.stream()
        .filter(family -> family.code().equalsIgnoreCase(code.strip()))
        .findFirst()
        .orElseThrow(() -> new Refused(RegisterProblem.UNKNOWN_FAMILY, code.strip()));
  }

  /** Checked like a length that a part can have, or the list would silently be empty. */
  private static Optional<Length> length(Form form) {
    Unit unit = form.typed("length-unit").equals(Unit.FOOT.symbol()) ? Unit.FOOT : Unit.METRE;
    return form.optional(
        "length",
        text -> {
          Reported typed = NominalLength.reported(text, unit);
          NominalLength.refuseImpossible(typed, NominalLength.MOST_METRES);
          return Length.of(typed);
        });
  }

  private static String maker(String text) {
    return ComponentQuery.EVERYTHING.ofMaker(text).maker();
  }

  private static String serial(String text) {
    return ComponentQuery.EVERYTHING.withSerial(text).serial();
  }

  private static @Nullable Cursor cursor(Form form) {
    return form.optional("before", text -> Cursor.read(true, text))
        .or(() -> form.optional("after", text -> Cursor.read(false, text)))
        .orElse(null);
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

  /** The same list at another place; null when there is none. */
  private static @Nullable String address(Form form, String name, @Nullable Cursor at) {
    if (at == null) {
      return null;
    }
    String filter =
        FILTERS.stream()
            .filter(field -> !form.typed(field).isBlank())
            .map(field -> field + "=" + encoded(form.typed(field)))
            .collect(Collectors.joining("&"));
    return "/parts?" + filter + (filter.isEmpty() ? "" : "&") + name + "=" + encoded(at.text());
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static String shown(List<PartRow> rows) {
    return rows.isEmpty()
        ? ""
        : rows.get(0).part().label() + " to " + rows.get(rows.size() - 1).part().label();
  }
}
