package loopwright.testing;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.ComponentId;
import loopwright.register.FactsWatch;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyDetails;
import loopwright.register.FamilyId;
import loopwright.register.NewComponent;
import loopwright.register.NominalLength;
import loopwright.register.OfferedLength;
import loopwright.register.PartIdentity;
import loopwright.register.Register;
import loopwright.register.Shelf;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** A shop with one 5 m family over a running program, for tests of pages about loops. */
public final class Shop implements AutoCloseable {
  /** Since when parts are on record. */
  public static final Instant KNOWN_FROM = Instant.parse("2026-01-10T05:00:00Z");

  public final RunningApp app = new RunningApp();
  public final Register register = new Register(FactsWatch.NOBODY);
  public final Visitor technician = app.as("technician");
  private final FamilyId family;
  private final long machine;

  public Shop() {
    family = app.write(tx -> new FamilyBook().add(tx, q8()));
    machine = app.write(tx -> RawWorld.machine(tx, "K-301"));
  }

  private static FamilyDetails q8() {
    return FamilyDetails.of("Q8", "8 mm, 5 m", "Nordling", ScaleFactor.millivoltsPerMil("200"))
        .profile("api670-2mm")
        .lengths(
            List.of(
                OfferedLength.read(PartKind.PROBE, "0.5", Unit.METRE),
                OfferedLength.read(PartKind.PROBE, "1", Unit.METRE),
                OfferedLength.read(PartKind.CABLE, "4", Unit.METRE),
                OfferedLength.read(PartKind.CABLE, "4.5", Unit.METRE),
                OfferedLength.read(PartKind.DRIVER, "5", Unit.METRE)))
        .build();
  }

  /** A point on the site's only machine; its clock is Berlin's. */
  public long point(String tag) {
    return app.write(tx -> RawWorld.point(tx, machine, tag));
  }

  /** A part of the family, its length read on it; a driver's is the system length. */
  public ComponentId part(PartKind kind, String serial, String metres) {
    return part(kind, new PartIdentity("Nordling", "X9", serial, ""), metres);
  }

  public ComponentId part(PartKind kind, PartIdentity identity, String metres) {
    ComponentFacts facts =
        ComponentFacts.NOTHING_KNOWN
            .withFamily(family)
            .withTip(BigDecimal.valueOf(8))
            .withScaleFactor(ScaleFactor.millivoltsPerMil("200"))
            .withLength(NominalLength.read(metres, Unit.METRE, Evidence.READ_ON_PART))
            .withShelf(new Shelf("Store 2", "14"));
    return part(ComponentDetails.of(kind, identity), facts);
  }

  public ComponentId part(ComponentDetails details, ComponentFacts facts) {
    return app.write(tx -> register.add(tx, new NewComponent(details, facts, KNOWN_FROM)));
  }

  /** Probe P-n 1 m, cable C-n 4 m, driver D-n 5 m: together in balance. */
  public void set(int n) {
    part(PartKind.PROBE, "P-" + n, "1");
    part(PartKind.CABLE, "C-" + n, "4");
    part(PartKind.DRIVER, "D-" + n, "5");
  }

  /** The fields of a page's form as a browser would send them back, in order. */
  public static Map<String, String> fields(Document page) {
    Map<String, String> fields = new LinkedHashMap<>();
    for (Element input :
        page.select("main form input[name], main form textarea[name], main form select[name]")) {
      String type = input.attr("type");
      boolean sent = !type.equals("file") && (!type.equals("checkbox") || input.hasAttr("checked"));
      if (sent && !input.attr("name").equals("csrf")) {
        fields.put(input.attr("name"), value(input));
      }
    }
    return fields;
  }

  private static String value(Element input) {
    if (!input.tagName().equals("select")) {
      return input.val();
    }
    Element chosen = input.selectFirst("option[selected]");
    return (chosen == null ? input.selectFirst("option") : chosen).attr("value");
  }

  /** Surveys the set n at the tag: opens the form, types the serials, sends it. */
  public Visitor.Answer survey(String tag, String on, String probe, String cable, String driver) {
    String path = "/loops/" + tag + "/survey";
    Map<String, String> fields = fields(technician.get(path).page());
    fields.put("probe", probe);
    fields.put("path-1", cable);
    fields.put("driver", driver);
    fields.put("on", on);
    fields.put("time", "08:00");
    fields.put("reason", "round");
    return technician.post(path, flat(fields));
  }

  public static String[] flat(Map<String, String> fields) {
    return fields.entrySet().stream()
        .flatMap(field -> List.of(field.getKey(), field.getValue()).stream())
        .toArray(String[]::new);
  }

  @Override
  public void close() {
    app.close();
  }
}
