package loopwright.loop;

import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.PLACEMENT_RETIRED;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.testing.Engine;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import loopwright.time.Span;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class PlacementStoreTest {
  private static final Act ACT = new Act(null, "A. Tester", "technician", "survey", "to see");
  private static final Instant DAY = Instant.parse("2024-01-01T00:00:00Z");

  private final PlacementStore store = new PlacementStore();
  private final Engine engine;
  private Database database;
  private final List<Long> points = new ArrayList<>();
  private final List<Long> cables = new ArrayList<>();

  PlacementStoreTest(Engine engine) {
    this.engine = engine;
  }

  @BeforeEach
  void open() {
    database = engine.open(new TestClock("2026-03-01T10:00:00Z"));
    database.write(
        ACT,
        tx -> {
          long machine = RawWorld.machine(tx, "M");
          for (int i = 0; i < 3; i++) {
            points.add(RawWorld.point(tx, machine, "V-" + i));
            cables.add(RawWorld.component(tx, "extension cable", "C-" + i));
          }
          return null;
        });
  }

  @AfterEach
  void close() {
    if (database != null) {
      database.close();
    }
  }

  private static Instant day(int number) {
    return DAY.plusSeconds(86_400L * number);
  }

  private static Content part(long component) {
    return new Content.Part(component);
  }

  private void seen(int point, int day, Content cable) {
    database.write(ACT, tx -> apply(tx, point, day, cable));
  }

  private Rewriting apply(Tx tx, int point, int day, Content cable) {
    Chain chain = Chain.of(new Content.Unknown(), List.of(cable), new Content.Unknown());
    Rewriting rewriting =
        Rewriting.of(
            store,
            tx.sql(),
            points.get(point),
            day(day),
            "survey",
            (sql, other, at) -> false,
            chain);
    store.rewrite(tx, rewriting.retired(), rewriting.taken());
    return rewriting;
  }

  private Content cableAt(int point, int day) {
    return database.read(sql -> store.at(sql, points.get(point), day(day))).stream()
        .filter(placed -> placed.slot() == Slot.PATH_1)
        .map(Placed::content)
        .findFirst()
        .orElse(new Content.None());
  }

  @Test
  void anExchangeEndsOneBeliefAndBeginsTheNext() {
    seen(0, 1, part(cables.get(0)));
    seen(0, 5, part(cables.get(1)));
    assertThat(cableAt(0, 4)).isEqualTo(part(cables.get(0)));
    assertThat(cableAt(0, 5)).isEqualTo(part(cables.get(1)));
    List<Placed> story = database.read(sql -> store.ofComponent(sql, cables.get(0)));
    assertThat(story).extracting(placed -> placed.span().until()).containsExactly(day(5));
  }

  @Test
  void seeingTheSameAgainChangesNothing() {
    seen(0, 1, part(cables.get(0)));
    Rewriting again = database.write(ACT, tx -> apply(tx, 0, 5, part(cables.get(0))));
    assertThat(again.changesNothing()).isTrue();
  }

  @Test
  void aPartFoundElsewhereLeavesItsOldSlotUnknown() {
    seen(0, 1, part(cables.get(0)));
    Rewriting rewriting = database.write(ACT, tx -> apply(tx, 1, 3, part(cables.get(0))));
    assertThat(rewriting.displaced()).containsExactly(points.get(0));
    assertThat(cableAt(0, 2)).isEqualTo(part(cables.get(0)));
    assertThat(cableAt(0, 3)).isEqualTo(new Content.Unknown());
    assertThat(cableAt(1, 3)).isEqualTo(part(cables.get(0)));
  }

  @Test
  void aSurveyOfThePastEndsWhereLaterKnowledgeBegins() {
    seen(0, 10, part(cables.get(0)));
    seen(0, 2, part(cables.get(1)));
    assertThat(cableAt(0, 9)).isEqualTo(part(cables.get(1)));
    assertThat(cableAt(0, 10)).isEqualTo(part(cables.get(0)));
  }

  @Test
  void theDatabaseItselfRefusesOnePartInTwoPlacesAndTwoPartsInOneSlot() {
    seen(0, 1, part(cables.get(0)));
    Placed sameCable =
        Placed.fresh(
            points.get(1), Slot.PATH_1, part(cables.get(0)), new Span(day(2), day(3)), "survey");
    Placed sameSlot =
        Placed.fresh(
            points.get(0), Slot.PATH_1, part(cables.get(1)), new Span(day(2), day(3)), "survey");
    for (Placed overlapping : List.of(sameCable, sameSlot)) {
      assertThatThrownBy(
              () ->
                  database.write(
                      ACT,
                      tx -> {
                        store.rewrite(tx, List.of(), List.of(overlapping));
                        return null;
                      }))
          .isInstanceOf(DataAccessException.class);
    }
  }

  @Test
  void randomHistoriesKeepTheTwoTablesInStepAndNeverOverlap() {
    Random random = new Random(20260301);
    for (int i = 0; i < 60; i++) {
      int cable = random.nextInt(4);
      seen(
          random.nextInt(3),
          1 + random.nextInt(20),
          cable == 3 ? new Content.None() : part(cables.get(cable)));
    }
    Set<Long> held =
        new HashSet<>(
            database.read(
                sql ->
                    sql.select(PLACEMENT.ID)
                        .from(PLACEMENT)
                        .whereNotExists(
                            sql.selectOne()
                                .from(PLACEMENT_RETIRED)
                                .where(PLACEMENT_RETIRED.PLACEMENT_ID.eq(PLACEMENT.ID)))
                        .fetch(PLACEMENT.ID)));
    List<Long> occupied =
        database.read(
            sql -> sql.select(OCCUPANCY.PLACEMENT_ID).from(OCCUPANCY).fetch().map(r -> r.value1()));
    assertThat(occupied).containsExactlyInAnyOrderElementsOf(held);
    List<Placed> all = new ArrayList<>();
    points.forEach(point -> all.addAll(database.read(sql -> store.ofPoint(sql, point))));
    for (Placed one : all) {
      for (Placed other : all) {
        boolean sameSlot = one.point() == other.point() && one.slot() == other.slot();
        boolean samePart = one.occupant() == other.occupant();
        if (one.placement() < other.placement() && (sameSlot || samePart)) {
          assertThat(one.span().overlaps(other.span())).as("%s and %s", one, other).isFalse();
        }
      }
    }
  }
}
