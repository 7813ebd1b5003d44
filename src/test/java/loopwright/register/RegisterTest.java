package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
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
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class RegisterTest {
  private static final Instant REGISTERED = Instant.parse("2026-01-10T06:00:00Z");

  private final Engine engine;
  private final TestClock clock = new TestClock("2026-03-01T10:15:30.123456Z");
  private final List<ComponentId> told = new ArrayList<>();
  private final Register register = new Register((tx, component) -> told.add(component));
  private final FamilyBook families = new FamilyBook();
  private Database database;

  RegisterTest(Engine engine) {
    this.engine = engine;
  }

  @BeforeEach
  void open() {
    database = engine.open(clock);
  }

  @AfterEach
  void close() {
    if (database != null) {
      database.close();
    }
  }

  private <R> R write(String reason, Function<Tx, R> work) {
    return database.write(new Act(null, "T. Ester", "technician", "part", reason), work);
  }

  private static NewComponent cable(String maker, String model, String serial) {
    ComponentFacts facts =
        ComponentFacts.NOTHING_KNOWN
            .withLength(NominalLength.read("13,10", Unit.FOOT, Evidence.CERTIFICATE))
            .withShelf(new Shelf("Store 2", "14"));
    PartIdentity identity = new PartIdentity(maker, model, serial, "");
    return new NewComponent(ComponentDetails.of(PartKind.CABLE, identity), facts, REGISTERED);
  }

  private ComponentId add(String serial) {
    return write("new", tx -> register.add(tx, cable("Nordling", "X9", serial)));
  }

  private Component part(ComponentId id) {
    return database.read(sql -> register.component(sql, id)).orElseThrow();
  }

  private List<Belief> history(ComponentId id) {
    return database.read(sql -> register.history(sql, id));
  }

  private <T> List<T> list(Function<DSLContext, List<T>> question) {
    return database.read(question);
  }

  private <K, T> Map<K, T> map(Function<DSLContext, Map<K, T>> question) {
    return database.read(question);
  }

  @Test
  void aPartComesBackAsItWasRegistered() {
    FamilyId family =
        write(
            "family",
            tx ->
                families.add(
                    tx,
                    FamilyDetails.of("Q8", "8 mm", "Nordling", ScaleFactor.millivoltsPerMil("200"))
                        .build()));
    ComponentFacts facts =
        new ComponentFacts(
            family,
            NominalLength.read("5,0", Unit.METRE, Evidence.READ_ON_PART),
            NominalLength.reported("16.42", Unit.FOOT),
            new BigDecimal("8.00"),
            ScaleFactor.millivoltsPerMicrometre("7.870"),
            Condition.QUARANTINED,
            "dented",
            new Shelf("S", "B"),
            "ab12");
    ComponentDetails details =
        new ComponentDetails(
            PartKind.DRIVER,
            new PartIdentity(" Nordling ", "D  8", "00417", "SN-9"),
            4,
            "",
            LocalDate.of(2027, 5, 31),
            "two\nlines");
    ComponentId id =
        write("new", tx -> register.add(tx, new NewComponent(details, facts, REGISTERED)));
    Component part = part(id);
    assertThat(part.details()).isEqualTo(details);
    assertThat(part.details().identity().model()).isEqualTo("D 8");
    assertThat(part.label()).isEqualTo("00417");
    assertThat(part.state()).isEqualTo(PartState.QUARANTINED);
    assertThat(part.facts()).isEqualTo(facts.withSettingsHash(null));
    assertThat(part.facts().length().typed()).hasToString("5,0 m");
    assertThat(history(id))
        .singleElement()
        .satisfies(
            belief -> {
              assertThat(belief.facts()).isEqualTo(facts);
              assertThat(belief.span().from()).isEqualTo(REGISTERED);
              assertThat(belief.span().isOpen()).isTrue();
              assertThat(belief.made().by()).isEqualTo("T. Ester");
              assertThat(belief.made().reason()).isEqualTo("new");
              assertThat(belief.isHeld()).isTrue();
            });
  }

  @Test
  void lengthsTypedInFeetStayExact() {
    assertThat(part(add("C-1")).facts().length().length()).isEqualTo(Length.ofMetres("3.99288"));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          # case,               maker,     model, serial, refused
          the same,             Nordling,  X9,    C-1,    true
          in other spelling,    NORDLING,  x9,    c-1,    true
          another model,        Nordling,  X10,   C-1,    false
          another maker,        Sundqvard, X9,    C-1,    false
          zeros at the front,   Nordling,  X9,    C-01,   false
          """)
  void aSerialStandsOnceWithinMakerAndModel(
      String name, String maker, String model, String serial, boolean refused) {
    add("C-1");
    if (refused) {
      assertThatThrownBy(() -> write("new", tx -> register.add(tx, cable(maker, model, serial))))
          .isInstanceOfSatisfying(
              Refused.class,
              r -> assertThat(r.problem()).isEqualTo(RegisterProblem.DUPLICATE_SERIAL))
          .hasMessageContaining("extension cable C-1 (in stock)");
    } else {
      write("new", tx -> register.add(tx, cable(maker, model, serial)));
    }
    assertThat(list(sql -> register.labelled(sql, "c-1")))
        .hasSize(refused || serial.equals("C-01") ? 1 : 2);
  }

  @Test
  void aShopNumberIsGivenOnce() {
    PartIdentity one = new PartIdentity("Nordling", "X9", "", "SHOP-7");
    PartIdentity two = new PartIdentity("Sundqvard", "K", "", "shop-7");
    write("new", tx -> register.add(tx, named(one)));
    assertThatThrownBy(() -> write("new", tx -> register.add(tx, named(two))))
        .hasMessageContaining("Shop number shop-7 belongs to extension cable SHOP-7");
  }

  private static NewComponent named(PartIdentity identity) {
    return new NewComponent(
        ComponentDetails.of(PartKind.CABLE, identity), ComponentFacts.NOTHING_KNOWN, REGISTERED);
  }

  @Test
  void lettersBeyondAsciiAreFoundInAnyCase() {
    ComponentId id = add("Größe-ä1");
    assertThat(list(sql -> register.labelled(sql, "Größe-ä1")))
        .extracting(Component::id)
        .containsExactly(id);
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      textBlock =
          """
          0,      m,  A length of 0 m can't be
          -4,     m,  A length of -4 m can't be
          400,    m,  at most 60 m (196.9 ft)
          60.001, m,  at most 60 m
          197,    ft, A length of 197 ft can't be
          four,   m,  is not a number
          '',     m,  is not a number
          """)
  void impossibleLengthsAreRefused(String typed, String unit, String said) {
    assertThatThrownBy(
            () -> NominalLength.read(typed, Unit.named(unit).orElseThrow(), Evidence.READ_ON_PART))
        .isInstanceOf(Refused.class)
        .hasMessageContaining(said);
  }

  @Test
  void aChangedFactIsANewBeliefAndTheOldOneStaysReadable() {
    ComponentId id = add("C-1");
    Instant cut = Instant.parse("2026-02-20T08:00:00Z");
    boolean changed =
        write(
            "re-terminated at the shop",
            tx ->
                register.changeFacts(
                    tx,
                    id,
                    cut,
                    facts ->
                        facts.withLength(
                            NominalLength.read("3.8", Unit.METRE, Evidence.MEASURED))));
    assertThat(changed).isTrue();
    assertThat(part(id).facts().length().length()).isEqualTo(Length.ofMetres("3.8"));
    assertThat(part(id).version()).isEqualTo(2);
    assertThat(told).containsExactly(id);
    List<Belief> beliefs = database.read(sql -> register.beliefs(sql, id));
    assertThat(beliefs).extracting(b -> b.span().from()).containsExactly(REGISTERED, cut);
    assertThat(history(id)).hasSize(3);
    assertThat(history(id).get(2).givenUp().reason()).isEqualTo("re-terminated at the shop");
    assertThat(history(id).get(2).span().isOpen()).isTrue();
  }

  @Test
  void beliefsAreRewrittenInTheMiddleOfATimeline() {
    ComponentId id = add("C-1");
    for (int day = 2; day <= 6; day += 2) {
      Instant at = Instant.parse("2026-02-0" + day + "T08:00:00Z");
      BigDecimal tip = BigDecimal.valueOf(day);
      write("tip", tx -> register.changeFacts(tx, id, at, facts -> facts.withTip(tip)));
    }
    write(
        "family unknown, shelf since then",
        tx ->
            register.changeFacts(
                tx,
                id,
                Instant.parse("2026-02-03T08:00:00Z"),
                facts -> facts.withShelf(new Shelf("Store 3", ""))));
    List<Belief> beliefs = database.read(sql -> register.beliefs(sql, id));
    assertThat(beliefs)
        .extracting(b -> b.facts().tipMillimetres() + " " + b.facts().shelf().inWords())
        .containsExactly(
            "null Store 2, 14", "2 Store 2, 14", "2 Store 3", "4 Store 3", "6 Store 3");
    assertThat(part(id).facts().shelf().inWords()).isEqualTo("Store 3");
    assertThat(part(id).facts().tipMillimetres()).isEqualTo(new BigDecimal("6"));
  }

  @Test
  void aCorrectionReachesBackToTheBeginning() {
    ComponentId id = add("C-1");
    write(
        "misread",
        tx ->
            register.correctFacts(
                tx,
                id,
                facts ->
                    facts.withLength(
                        NominalLength.read("4.5", Unit.METRE, Evidence.READ_ON_PART))));
    List<Belief> beliefs = database.read(sql -> register.beliefs(sql, id));
    assertThat(beliefs)
        .singleElement()
        .satisfies(
            belief -> {
              assertThat(belief.span().from()).isEqualTo(REGISTERED);
              assertThat(belief.facts().length().typed()).hasToString("4.5 m");
            });
  }

  @Test
  void theFutureIsRefused() {
    ComponentId id = add("C-1");
    Instant tomorrow = clock.instant().plus(Duration.ofDays(1));
    assertThatThrownBy(
            () -> write("x", tx -> register.changeFacts(tx, id, tomorrow, facts -> facts)))
        .hasMessageContaining("still to come");
  }

  @Test
  void quarantineScrapAndReturnChangeTheState() {
    ComponentId id = add("C-1");
    write("wet connector", tx -> act(() -> register.quarantine(tx, id, "wet connector")));
    assertThat(part(id).state()).isEqualTo(PartState.QUARANTINED);
    assertThat(part(id).facts().conditionReason()).isEqualTo("wet connector");
    clock.forward(Duration.ofHours(1));
    write("dried", tx -> act(() -> register.returnToStock(tx, id, new Shelf("Store 1", "3"))));
    assertThat(part(id).state()).isEqualTo(PartState.IN_STOCK);
    assertThat(part(id).facts().shelf().inWords()).isEqualTo("Store 1, 3");
    clock.forward(Duration.ofHours(1));
    write("cut through", tx -> act(() -> register.scrap(tx, id, "cut through")));
    assertThat(part(id).state()).isEqualTo(PartState.SCRAPPED);
    assertThatThrownBy(() -> write("x", tx -> act(() -> register.scrap(tx, id, "again"))))
        .hasMessageContaining("C-1 is scrapped already");
    assertThatThrownBy(() -> write("x", tx -> act(() -> register.quarantine(tx, id, " "))))
        .hasMessageContaining("Say why");
    assertThat(list(sql -> register.beliefs(sql, id)))
        .extracting(b -> b.facts().condition())
        .containsExactly(
            Condition.USABLE, Condition.QUARANTINED, Condition.USABLE, Condition.SCRAPPED);
  }

  private static Boolean act(Runnable work) {
    work.run();
    return true;
  }

  @Test
  void twoChangesInTheSameMomentLeaveTheLastOne() {
    ComponentId id = add("C-1");
    write("wet", tx -> act(() -> register.quarantine(tx, id, "wet")));
    write("burnt", tx -> act(() -> register.scrap(tx, id, "burnt")));
    assertThat(part(id).state()).isEqualTo(PartState.SCRAPPED);
    assertThat(list(sql -> register.beliefs(sql, id))).hasSize(2);
  }

  @Test
  void aFittedPartSaysWhereAndIsNotScrapped() {
    ComponentId id = add("C-1");
    write(
        "fit",
        tx -> {
          long machine = RawWorld.machine(tx, "K1");
          long point = RawWorld.point(tx, machine, "K1-VX");
          FittedWorld.fit(tx, point, "path-1", id, "2026-02-01T00:00:00Z");
          register.refreshState(tx, id);
          return true;
        });
    assertThat(part(id).state()).isEqualTo(PartState.FITTED);
    assertThat(list(sql -> register.now(sql, id)))
        .singleElement()
        .satisfies(
            here -> {
              assertThat(here.tag()).isEqualTo("K1-VX");
              assertThat(here.slot()).isEqualTo("path-1");
              assertThat(here.zone()).hasToString("Europe/Berlin");
              assertThat(here.made().reason()).isEqualTo("fit");
            });
    assertThat(list(sql -> register.story(sql, id))).hasSize(1);
    assertThatThrownBy(() -> write("x", tx -> act(() -> register.scrap(tx, id, "x"))))
        .hasMessageContaining("C-1 is fitted at K1-VX (path-1)");
    write("crushed", tx -> act(() -> register.quarantine(tx, id, "crushed")));
    assertThat(part(id).state()).isEqualTo(PartState.QUARANTINED);
    PartsAsJudged judged = new PartsAsJudged(SheetFacts.NONE);
    assertThat(map(sql -> judged.parts(sql, List.of(id.number(), 999_999L))))
        .hasSize(1)
        .hasEntrySatisfying(
            id.number(), view -> assertThat(view.state()).isEqualTo(PartState.QUARANTINED));
    assertThatThrownBy(
            () ->
                write(
                    "x",
                    tx ->
                        act(
                            () ->
                                register.changeDetails(
                                    tx,
                                    id,
                                    part(id).version(),
                                    ComponentDetails.of(
                                        PartKind.PROBE,
                                        new PartIdentity("Nordling", "X9", "C-1", ""))))))
        .hasMessageContaining("its kind can't be changed any more");
  }

  @Test
  void detailsAreCorrectedByWhoSawTheLatest() {
    ComponentId id = add("C-1");
    add("C-2");
    ComponentDetails right =
        ComponentDetails.of(PartKind.CABLE, new PartIdentity("Nordling", "X9", "C-1A", ""));
    write("misread", tx -> act(() -> register.changeDetails(tx, id, 1, right)));
    assertThat(part(id).label()).isEqualTo("C-1A");
    assertThatThrownBy(
            () -> write("late", tx -> act(() -> register.changeDetails(tx, id, 1, right))))
        .isInstanceOfSatisfying(
            Refused.class, r -> assertThat(r.problem()).isEqualTo(DbProblem.STALE));
    ComponentDetails taken =
        ComponentDetails.of(PartKind.CABLE, new PartIdentity("Nordling", "X9", "C-2", ""));
    assertThatThrownBy(() -> write("x", tx -> act(() -> register.changeDetails(tx, id, 2, taken))))
        .hasMessageContaining("C-2");
  }

  @Test
  void manyAreFoundAtOnceForFiles() {
    ComponentId one = add("C-1");
    ComponentId two = add("C-2");
    PartIdentity known = new PartIdentity("NORDLING", "x9", "c-1", "");
    PartIdentity unknown = new PartIdentity("Nordling", "X9", "C-9", "");
    Map<String, Component> found =
        database.read(sql -> register.identified(sql, List.of(known, unknown)));
    assertThat(found).containsOnlyKeys(known.key());
    assertThat(map(sql -> register.components(sql, List.of(one.number(), two.number()))))
        .hasSize(2);
  }

  @Test
  void anUnknownFamilyIsRefused() {
    ComponentId id = add("C-1");
    assertThatThrownBy(
            () ->
                write(
                    "x",
                    tx ->
                        register.correctFacts(tx, id, facts -> facts.withFamily(new FamilyId(77)))))
        .hasMessageContaining("There is no family 77");
    assertThat(history(id)).hasSize(1);
  }
}
