package loopwright.label;

import io.javalin.http.Context;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.loop.Configuration;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.ComponentQuery;
import loopwright.register.Cursor;
import loopwright.register.FamilyBook;
import loopwright.register.PartFilter;
import loopwright.register.PartRow;
import loopwright.register.PartSearch;
import loopwright.register.PartsPage;
import loopwright.register.Register;
import loopwright.web.AskedAddress;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Choosing and printing labels, and the address that each leads to. */
public final class LabelPages implements Pages {
  /** Labels chosen on one page; a longer list goes on on the next. */
  private static final int PAGE = 200;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final FamilyBook families;
  private final PartSearch search;
  private final Configuration configuration;
  private final LabelBase base;
  private final InstantSource clock;

  public LabelPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      FamilyBook families,
      PartSearch search,
      Configuration configuration,
      LabelBase base,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.families = families;
    this.search = search;
    this.configuration = configuration;
    this.base = base;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/c/{code}", Permission.READ, this::follow);
    routes.get("/labels", Permission.READ, this::choose);
    routes.post("/labels.pdf", Permission.READ, this::print);
  }

  /** A label that could be printed. */
  record Line(String code, String large, String kind, String name, String about, boolean ticked) {}

  private record Chosen(List<LabelCode> codes, @Nullable String later) {
    static Chosen of(List<LabelCode> codes) {
      return new Chosen(codes, null);
    }
  }

  /** Where a scanned label leads. */
  private void follow(Context http) {
    String typed = http.pathParam("code");
    try {
      LabelCode code = LabelCode.read(typed);
      page.go(http, database.read(sql -> target(sql, code)));
    } catch (Refused refused) {
      page.show(
          http,
          404,
          "label/unread",
          Map.of("typed", typed, "sentence", String.valueOf(refused.getMessage())));
    }
  }

  private String target(DSLContext sql, LabelCode code) {
    return switch (code.named()) {
      case COMPONENT ->
          register
              .component(sql, new ComponentId(code.number()))
              .map(part -> "/parts/" + part.id().number())
              .orElseThrow(() -> new Refused(LabelProblem.NO_SUCH_RECORD, code, "part"));
      case POINT ->
          plant
              .point(sql, new PointId(code.number()))
              .map(point -> "/loops/" + PathSegment.of(point.tag()))
              .orElseThrow(() -> new Refused(LabelProblem.NO_SUCH_RECORD, code, "loop"));
    };
  }

  private void choose(Context http) {
    Form form = PaperForm.filled(Form.fromQuery(http));
    Chosen chosen = database.read(sql -> chosen(sql, form));
    show(http, form.ok() ? 200 : 422, form, chosen, chosen.codes());
  }

  /** A loop with its parts, single parts, or what a filter of the parts' list asks for. */
  private Chosen chosen(DSLContext sql, Form form) {
    if (!form.typed("loop").isBlank()) {
      return form.optional("loop", tag -> needed(sql, tag))
          .map(point -> Chosen.of(ofLoop(sql, point)))
          .orElse(Chosen.of(List.of()));
    }
    if (!form.every("part").isEmpty()) {
      return Chosen.of(
          form.every("part").stream()
              .filter(number -> number.matches("[1-9]\\d{0,17}"))
              .limit(PAGE)
              .map(number -> LabelCode.ofComponent(Long.parseLong(number)))
              .toList());
    }
    ComponentQuery query = PartFilter.query(form, families.all(sql));
    boolean asked = !query.equals(ComponentQuery.EVERYTHING) || !form.typed("all").isEmpty();
    return asked && form.ok() ? filtered(sql, form, query) : Chosen.of(List.of());
  }

  private Point needed(DSLContext sql, String tag) {
    return plant
        .pointTagged(sql, tag)
        .orElseThrow(() -> new IllegalArgumentException("There is no loop " + tag + "."));
  }

  private List<LabelCode> ofLoop(DSLContext sql, Point point) {
    return Stream.concat(
            Stream.of(LabelCode.ofPoint(point.id().number())),
            configuration.at(sql, point.id().number(), clock.instant()).stream()
                .flatMap(placed -> placed.content().component().stream().boxed())
                .map(LabelCode::ofComponent))
        .toList();
  }

  private Chosen filtered(DSLContext sql, Form form, ComponentQuery query) {
    List<LabelCode> codes = new ArrayList<>();
    Cursor at = PartFilter.cursor(form);
    do {
      PartsPage some = search.page(sql, query, at);
      some.rows().forEach(row -> codes.add(LabelCode.ofComponent(row.part().id().number())));
      at = some.later();
    } while (at != null && codes.size() < PAGE);
    return new Chosen(codes, PartFilter.address("/labels", form, "after", at));
  }

  private void show(Context http, int status, Form form, Chosen chosen, List<LabelCode> ticked) {
    Map<String, Object> model = new HashMap<>();
    String asked = AskedAddress.of(http);
    model.put("form", form);
    model.put("papers", PaperForm.papers());
    model.put("lines", lines(chosen.codes(), ticked));
    model.put("later", chosen.later());
    model.put("base", base.address().orElse(base.trying() ? asked : null));
    model.put("trying", base.address().isEmpty() && base.trying());
    model.put("remedy", Refused.say(LabelProblem.NO_BASE));
    page.show(http, status, "label/labels", model);
  }

  private List<Line> lines(List<LabelCode> codes, List<LabelCode> ticked) {
    return labels(codes, "").stream()
        .map(
            label ->
                new Line(
                    label.code().text(),
                    String.join(" · ", label.large()),
                    label.inWords(),
                    label.serial(),
                    label.about(),
                    ticked.contains(label.code())))
        .toList();
  }

  /** In the order of the codes; what no longer exists is not in it. */
  private List<Label> labels(List<LabelCode> codes, String printedBase) {
    LabelWords words = new LabelWords(printedBase);
    return database.read(
        sql -> {
          Map<LabelCode, Label> parts = ofParts(sql, words, codes);
          return codes.stream()
              .distinct()
              .map(code -> parts.containsKey(code) ? parts.get(code) : ofPoint(sql, words, code))
              .filter(Objects::nonNull)
              .toList();
        });
  }

  private Map<LabelCode, Label> ofParts(DSLContext sql, LabelWords words, List<LabelCode> codes) {
    List<Long> numbers =
        codes.stream()
            .filter(code -> code.named() == LabelCode.Named.COMPONENT)
            .map(LabelCode::number)
            .toList();
    Map<Long, Component> found = register.components(sql, numbers);
    Map<LabelCode, Label> labels = new LinkedHashMap<>();
    for (PartRow row : search.rows(sql, List.copyOf(found.values()))) {
      labels.put(LabelCode.ofComponent(row.part().id().number()), words.of(row));
    }
    return labels;
  }

  private @Nullable Label ofPoint(DSLContext sql, LabelWords words, LabelCode code) {
    if (code.named() != LabelCode.Named.POINT) {
      return null;
    }
    PointId id = new PointId(code.number());
    return plant
        .point(sql, id)
        .flatMap(point -> plant.place(sql, id).map(place -> words.of(point, place)))
        .orElse(null);
  }

  private void print(Context http) {
    Form form = Form.from(http);
    List<LabelCode> ticked = codes(form, "label");
    Optional<byte[]> document = document(form, ticked, AskedAddress.of(http));
    if (document.isEmpty()) {
      show(http, 422, PaperForm.filled(form), Chosen.of(codes(form, "shown")), ticked);
      return;
    }
    http.contentType("application/pdf")
        .header("Content-Disposition", "inline; filename=\"labels.pdf\"")
        .result(document.get());
  }

  private Optional<byte[]> document(Form form, List<LabelCode> ticked, String asked) {
    return PaperForm.read(form)
        .flatMap(
            paper -> {
              try {
                List<Label> labels = labels(ticked, base.printed(asked));
                return Optional.of(LabelDocument.of(labels, paper));
              } catch (Refused refused) {
                form.complain(refused);
                return Optional.empty();
              }
            });
  }

  /** What our own page sent; anything else is left out. */
  private static List<LabelCode> codes(Form form, String field) {
    return form.every(field).stream()
        .limit(LabelDocument.MOST)
        .filter(LabelCode::looksLikeOne)
        .map(LabelCode::read)
        .toList();
  }
}
