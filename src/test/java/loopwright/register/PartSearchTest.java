package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jooq.DSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass
@EnumSource(Engine.class)
class PartSearchTest {
  private static final Instant FROM = Instant.parse("2026-01-01T00:00:00Z");

  private static final Register register = new Register(FactsWatch.NOBODY);
  private static Database database;
  private static FamilyId family;
  private static ComponentId proved;

  @Parameter Engine engine;

  private final PartSearch search = new PartSearch();

  /** One for all: the tests only look. */
  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    database = engine.open(new TestClock("2026-03-01T10:15:30Z"));
    FamilyDetails details =
        FamilyDetails.of("Q8", "8 mm", "Nordling", ScaleFactor.millivoltsPerMil("200")).build();
    database.write(
        Act.ofProgram("test", "parts"),
        tx -> {
          family = new FamilyBook().add(tx, details);
          for (int i = 0; i < 120; i++) {
            add(tx, PartKind.PROBE, "Nordling", "P-%03d".formatted(i), "1.0", null);
          }
          // the same serial of several makers: ties
          for (int i = 0; i < 70; i++) {
            add(tx, PartKind.CABLE, "Maker %02d".formatted(i), "C-TIE", "4.0", family);
          }
          add(tx, PartKind.CABLE, "Nordling", "C-001", "4.5", family);
          add(tx, PartKind.CABLE, "Nordling", "C-002", "4.0", null);
          add(tx, PartKind.CABLE, "Nordling", "C%9_", "4.0", null);
          ComponentId fitted = add(tx, PartKind.CABLE, "Nordling", "C-000", "4.0", family);
          long point = RawWorld.point(tx, RawWorld.machine(tx, "K1"), "K1-VX");
          FittedWorld.fit(tx, point, "path-1", fitted, "2026-02-01T00:00:00Z", "assembly");
          register.refreshState(tx, fitted);
          register.add(tx, drawn("C-DRAWN", "3.5"));
          proved = add(tx, PartKind.CABLE, "Nordling", "C-READ", "3.5", family);
          return true;
        });
  }

  private static NewComponent drawn(String serial, String metres) {
    NominalLength length = NominalLength.read(metres, Unit.METRE, Evidence.DRAWING);
    return new NewComponent(
        ComponentDetails.of(PartKind.CABLE, new PartIdentity("Nordling", "M1", serial, "")),
        ComponentFacts.NOTHING_KNOWN.withFamily(family).withLength(length),
        FROM);
  }

  private static ComponentId add(
      loopwright.db.Tx tx,
      PartKind kind,
      String maker,
      String serial,
      String metres,
      FamilyId family) {
    ComponentFacts facts =
        ComponentFacts.NOTHING_KNOWN
            .withFamily(family)
            .withLength(NominalLength.read(metres, Unit.METRE, Evidence.READ_ON_PART));
    PartIdentity identity = new PartIdentity(maker, "M1", serial, "");
    return register.add(tx, new NewComponent(ComponentDetails.of(kind, identity), facts, FROM));
  }

  @AfterParameterizedClassInvocation
  static void close() {
    if (database != null) {
      database.close();
    }
  }

  private PartsPage page(ComponentQuery query, Cursor at) {
    return database.read(sql -> search.page(sql, query, at));
  }

  private List<PartRow> rows(Function<DSLContext, List<PartRow>> question) {
    return database.read(question);
  }

  private static List<String> labels(List<PartRow> rows) {
    return rows.stream().map(row -> row.part().label()).toList();
  }

  @Test
  void stockIsCountedBySortWithOneWhoseLengthIsProved() {
    List<Stock.Alike> alike = database.read(sql -> new Stock().alike(sql, List.of("q8")));
    assertThat(alike)
        .extracting(sort -> sort.kind() + " " + sort.length() + " × " + sort.howMany())
        .containsExactly("CABLE 3.5 m × 2", "CABLE 4.0 m × 70", "CABLE 4.5 m × 1");
    assertThat(alike.get(0).first()).isEqualTo(proved);
  }

  private Map<Sort, Integer> putIn(Instant since) {
    return database.read(sql -> new Stock().putIn(sql, List.of(family), since));
  }

  @Test
  void eachLengthOfAFamilyIsCountedByState() {
    List<Stock.Count> counts = database.read(sql -> new Stock().counts(sql, List.of(family)));
    assertThat(counts)
        .extracting(
            count ->
                count.sort().kind()
                    + " "
                    + count.sort().length()
                    + ": "
                    + count.inStock()
                    + ", fitted "
                    + count.fitted())
        .containsExactlyInAnyOrder(
            "CABLE 3.5 m: 2, fitted 0", "CABLE 4.0 m: 70, fitted 1", "CABLE 4.5 m: 1, fitted 0");
    int ofNoSort = database.read(sql -> new Stock().ofNoSort(sql));
    assertThat(ofNoSort).isEqualTo(122);
    assertThat(putIn(FROM))
        .containsExactly(Map.entry(new Sort(family, PartKind.CABLE, Length.ofMetres("4")), 1));
    assertThat(putIn(Instant.parse("2026-02-02T00:00:00Z"))).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(ComponentQuery.Order.class)
  void pagesFollowEachOtherWithoutLossAndBackAgain(ComponentQuery.Order order) {
    ComponentQuery query = ComponentQuery.EVERYTHING.inOrder(order);
    List<ComponentId> forward = new ArrayList<>();
    List<List<ComponentId>> pages = new ArrayList<>();
    PartsPage page = page(query, null);
    assertThat(page.earlier()).isNull();
    while (true) {
      List<ComponentId> ids = page.rows().stream().map(row -> row.part().id()).toList();
      pages.add(ids);
      forward.addAll(ids);
      if (page.later() == null) {
        break;
      }
      page = page(query, Cursor.read(false, page.later().text()));
    }
    assertThat(forward).hasSize(196).doesNotHaveDuplicates();
    for (int i = pages.size() - 2; i >= 0; i--) {
      page = page(query, Cursor.read(true, page.earlier().text()));
      assertThat(page.rows()).extracting(row -> row.part().id()).isEqualTo(pages.get(i));
      assertThat(page.later()).isNotNull();
    }
    assertThat(page.earlier()).isNull();
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          # case,                 kind,  length, state,    maker,    serial, found
          a kind,                 PROBE, ,       ,         '',       '',     50
          kind and length,        CABLE, 4.5,    ,         '',       '',     1
          length in other words,  CABLE, 4.50,   ,         '',       '',     1
          state,                  ,      ,       FITTED,   '',       '',     1
          kind and state,         PROBE, ,       FITTED,   '',       '',     0
          a maker,                CABLE, ,       ,         Nordling, '',     6
          serial begins,          ,      ,       ,         '',       c-0,    3
          serial holds,           ,      ,       ,         '',       *11,    11
          signs are no patterns,  ,      ,       ,         '',       C%,     1
          nor in the middle,      ,      ,       ,         '',       *_,     1
          """)
  void filtersNarrow(
      String name,
      PartKind kind,
      String length,
      PartState state,
      String maker,
      String serial,
      int found) {
    ComponentQuery query =
        new ComponentQuery(
            kind,
            null,
            length == null ? null : Length.ofMetres(length),
            state,
            maker,
            serial,
            ComponentQuery.Order.LABEL);
    assertThat(page(query, null).rows()).hasSize(found);
  }

  @Test
  void aFamilyIsAFilterAndIsShown() {
    PartsPage page = page(ComponentQuery.EVERYTHING.ofFamily(family), null);
    assertThat(page.rows()).hasSize(50).allMatch(row -> row.family().equals("Q8"));
    assertThat(page.rows().get(0).part().label()).isEqualTo("C-000");
    assertThat(page.rows().get(0).now()).singleElement().matches(at -> at.tag().equals("K1-VX"));
    assertThat(page.rows().get(1).now()).isEmpty();
  }

  @Test
  void choicesAreInStockFirstAndTheWantedOnesBeforeThem() {
    List<PartRow> wanted =
        rows(sql -> search.lookup(sql, PartKind.CABLE, "c-00", family, Length.ofMetres("4.5")));
    assertThat(labels(wanted)).containsExactly("C-001", "C-002", "C-000");
    assertThat(rows(sql -> search.lookup(sql, PartKind.CABLE, "", null, null)))
        .hasSize(PartSearch.CHOICES);
    assertThat(rows(sql -> search.lookup(sql, PartKind.DRIVER, "C", null, null))).isEmpty();
  }

  @Test
  void theFindBoxKnowsSerialsMakersAndPartsOfThem() {
    assertThat(labels(rows(sql -> search.holding(sql, "p-11", 5))))
        .containsExactly("P-110", "P-111", "P-112", "P-113", "P-114");
    assertThat(labels(rows(sql -> search.holding(sql, "-002", 5))))
        .containsExactly("C-002", "P-002");
    assertThat(rows(sql -> search.holding(sql, "maker 07", 5)))
        .singleElement()
        .satisfies(row -> assertThat(row.part().label()).isEqualTo("C-TIE"));
  }

  @Test
  void makersAreListedOnce() {
    List<String> makers = database.read(search::makers);
    assertThat(makers).hasSize(71).startsWith("Maker 00", "Maker 01").endsWith("Nordling");
  }

  @ParameterizedTest
  @CsvSource({"''", "12", "x~A", "~A"})
  void aPlaceThatCantBeReadIsRefused(String text) {
    assertThatThrownBy(() -> Cursor.read(false, text))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("Begin at its first page");
  }
}
