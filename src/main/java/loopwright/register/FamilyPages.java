package loopwright.register;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.matching.Output;
import loopwright.matching.PartKind;
import loopwright.matching.Range;
import loopwright.units.Numbers;
import loopwright.units.Unit;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Families to read: what they offer and what adds up to what. */
final class FamilyPages implements Pages {
  private final Database database;
  private final Page page;
  private final FamilyBook families;
  private final List<FamilyPanel> panels;

  FamilyPages(Database database, Page page, FamilyBook families, List<FamilyPanel> panels) {
    this.database = database;
    this.page = page;
    this.families = families;
    this.panels = List.copyOf(panels);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/families", Permission.READ, this::list);
    routes.get("/families/{code}", Permission.READ, this::show);
  }

  record Row(
      String code,
      String name,
      String maker,
      String scale,
      String tip,
      String leads,
      String cables,
      String systems) {}

  record Partner(String code, String saidBy) {}

  record PanelShown(String template, Object model) {}

  record SumRow(String system, List<String> pairs) {}

  private void list(Context http) {
    List<Row> rows = database.read(families::all).stream().map(FamilyPages::row).toList();
    page.show(http, "register/families", Map.of("rows", rows));
  }

  private static Row row(Family family) {
    FamilyDetails details = family.details();
    return new Row(
        details.code(),
        details.name(),
        details.maker(),
        PartWords.scale(details.scaleFactor()),
        details.tipMillimetres() == null ? "" : Numbers.plain(details.tipMillimetres()) + " mm",
        lengths(details, PartKind.PROBE),
        lengths(details, PartKind.CABLE),
        lengths(details, PartKind.DRIVER));
  }

  static String lengths(FamilyDetails details, PartKind part) {
    return details.lengthsOf(part).stream()
        .map(offered -> offered.typed().toString())
        .collect(Collectors.joining(", "));
  }

  private void show(Context http) {
    UnitsShown units = UnitsShown.of(http);
    String code = http.pathParam("code");
    page.show(http, "register/family", database.read(sql -> model(sql, code, units)));
  }

  private Map<String, Object> model(DSLContext sql, String code, UnitsShown units) {
    Family family = families.named(sql, code).orElseThrow(NotFoundResponse::new);
    LengthSums sums = LengthSums.of(family.details());
    Map<String, Object> model = new HashMap<>();
    model.put("family", family);
    model.put("profile", family.details().profile());
    model.put("facts", facts(family.details(), units));
    model.put(
        "sums",
        sums.sums().stream()
            .map(sum -> new SumRow(PartWords.typedAndBoth(sum.system().typed()), sum.pairs()))
            .toList());
    model.put(
        "servingNothing",
        sums.servingNothing().stream()
            .map(offered -> offered.part().word() + " " + offered.typed())
            .collect(Collectors.joining(", ")));
    model.put("leads", offered(family.details(), PartKind.PROBE));
    model.put("cables", offered(family.details(), PartKind.CABLE));
    model.put("partners", partners(sql, family));
    model.put(
        "panels",
        panels.stream()
            .map(panel -> new PanelShown(panel.template(), panel.model(sql, family, units)))
            .toList());
    return model;
  }

  private static List<String> offered(FamilyDetails details, PartKind part) {
    return details.lengthsOf(part).stream()
        .map(offered -> PartWords.typedAndBoth(offered.typed()))
        .toList();
  }

  private static Map<String, String> facts(FamilyDetails details, UnitsShown units) {
    Map<String, String> facts = new LinkedHashMap<>();
    facts.put("Maker", details.maker());
    facts.put("Scale factor", PartWords.scale(details.scaleFactor()));
    facts.put("Linear range", range(details.range()));
    facts.put(
        "Voltage at its begin",
        details.startVolts() == null
            ? PartWords.NOT_KNOWN
            : Numbers.plain(details.startVolts()).replace('-', '−') + " V");
    facts.put(
        "Tip",
        details.tipMillimetres() == null
            ? PartWords.NOT_KNOWN
            : Numbers.plain(details.tipMillimetres()) + " mm");
    facts.put("Extension cable", cable(details));
    facts.put("Length balance counts as zero within", units.both(details.lengthTolerance()));
    facts.put("Connectors", said(details.connectors()));
    facts.put("Target alloy", said(details.targetAlloy()));
    facts.put("Output", details.output() == Output.VOLTAGE ? "voltage" : "current (mA)");
    facts.put("Drivers can put out", volts(details.outputVolts()));
    facts.put(
        "System length of a driver",
        details.selectableSystemLength() ? "can be set; each driver has its setting" : "fixed");
    return facts;
  }

  private static String volts(Range volts) {
    BigDecimal low = volts.low();
    BigDecimal high = volts.high();
    return low == null || high == null
        ? PartWords.NOT_KNOWN
        : (Numbers.plain(low) + " to " + Numbers.plain(high) + " V").replace('-', '−');
  }

  private static String said(String text) {
    return text.isEmpty() ? PartWords.NOT_KNOWN : text;
  }

  private static String cable(FamilyDetails details) {
    return switch (details.cableUse()) {
      case NONE -> "none: the lead reaches the driver";
      case REQUIRED -> "required" + two(details);
      case OPTIONAL -> "with or without" + two(details);
    };
  }

  private static String two(FamilyDetails details) {
    return details.twoCablesAllowed() ? ", two in series allowed" : ", never two in series";
  }

  private static String range(LinearRange range) {
    return range.fromMicrometres() == null || range.toMicrometres() == null
        ? PartWords.NOT_KNOWN
        : gap(range.fromMicrometres(), Unit.MICROMETRE, "%.0f")
            + " to "
            + gap(range.toMicrometres(), Unit.MICROMETRE, "%.0f")
            + " µm ("
            + gap(range.fromMicrometres(), Unit.MIL, "%.1f")
            + " to "
            + gap(range.toMicrometres(), Unit.MIL, "%.1f")
            + " mil)";
  }

  private static String gap(@Nullable Double micrometres, Unit unit, String format) {
    return micrometres == null
        ? ""
        : String.format(Locale.ROOT, format, unit.fromCanonical((double) micrometres));
  }

  private List<Partner> partners(DSLContext sql, Family family) {
    Map<Long, String> codes = families.codes(sql);
    return families.pairs(sql).stream()
        .filter(pair -> pair.first().equals(family.id()) || pair.second().equals(family.id()))
        .map(
            pair -> {
              FamilyId other = pair.first().equals(family.id()) ? pair.second() : pair.first();
              return new Partner(codes.getOrDefault(other.number(), ""), pair.saidBy());
            })
        .toList();
  }
}
