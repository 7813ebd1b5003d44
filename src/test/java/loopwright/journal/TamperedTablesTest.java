package loopwright.journal;

import static loopwright.db.gen.Tables.JOURNAL_HEAD;
import static loopwright.journal.Tampering.name;
import static loopwright.journal.Tampering.sameRow;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import loopwright.db.Journaled;
import loopwright.testing.Engine;
import org.jooq.Field;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Each test changes one thing in a table, sees it named, and puts it back. */
@ParameterizedClass
@EnumSource(Engine.class)
class TamperedTablesTest {
  private static @Nullable Tampering world;

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    world = new Tampering(engine);
  }

  @AfterParameterizedClassInvocation
  static void close() {
    if (world != null) {
      world.close();
    }
  }

  @Test
  @Tag("zone")
  void whatWentThroughTheDoorAgrees() {
    Verdict verdict = Verification.of(world.database);
    assertThat(verdict.disagreement()).isNull();
    assertThat(verdict.entries()).isEqualTo(5);
    assertThat(verdict.changes()).isEqualTo(5);
    int rows =
        Journaled.all().stream()
            .mapToInt(table -> world.database.read(sql -> sql.fetchCount(table.table())))
            .sum();
    assertThat(verdict.rows()).isEqualTo(rows);
    byte[] head = world.database.read(sql -> sql.fetchSingle(JOURNAL_HEAD).getChainHash());
    assertThat(verdict.headHash()).isEqualTo(HexFormat.of().formatHex(head));
  }

  /** Column by column, so that none is forgotten; only the password is not journaled. */
  @TestFactory
  Stream<DynamicTest> aFlippedValueIsNamedByTableRowAndColumn() {
    return Journaled.all().stream()
        .flatMap(
            table ->
                Stream.concat(
                    Stream.of(table.table().fields())
                        .filter(column -> !table.order().contains(column))
                        .filter(column -> !name(column).equals("password_hash"))
                        .map(column -> flipping(table, column)),
                    Stream.of(
                        DynamicTest.dynamicTest(
                            table.name() + " as it was", () -> world.assertAgrees()))));
  }

  private DynamicTest flipping(Journaled table, Field<?> column) {
    return DynamicTest.dynamicTest(table.name() + "." + name(column), () -> flip(table, column));
  }

  private <T> void flip(Journaled table, Field<T> column) {
    Record row =
        world.owner.secretly(
            sql ->
                sql.selectFrom(table.table())
                    .where(column.isNotNull())
                    .orderBy(table.order())
                    .limit(1)
                    .fetchSingle());
    T was = row.get(column);
    T other = column.getDataType().convert(Tampering.flipped(was));
    List<T> others = column.getDataType().nullable() ? Arrays.asList(other, null) : List.of(other);
    for (T now : others) {
      world.set(table.table(), sameRow(table, row), column, now);
      Disagreement found = world.disagreement();
      world.set(table.table(), sameRow(table, row), column, was);
      assertThat(found.table()).isEqualTo(table.name());
      assertThat(found.key()).isEqualTo(String.valueOf(row.get(table.key())));
      assertThat(found.column()).isEqualTo(name(column));
      assertThat(found.sentence()).contains(table.inWords()).contains(name(column));
    }
  }

  @TestFactory
  Stream<DynamicTest> aRowThatIsGoneIsNamed() {
    return Journaled.all().stream()
        .map(table -> DynamicTest.dynamicTest(table.name(), () -> lose(table)));
  }

  private void lose(Journaled table) {
    Record row = world.lastRow(table);
    world.delete(table.table(), sameRow(table, row));
    Disagreement found = world.disagreement();
    world.insert(table.table(), row);
    assertThat(found.table()).isEqualTo(table.name());
    assertThat(found.key()).isEqualTo(String.valueOf(row.get(table.key())));
    assertThat(found.sentence())
        .contains(table.grouped() ? "it has 1 rows, entry 4 wrote 2" : "it is missing");
    world.assertAgrees();
  }

  @TestFactory
  Stream<DynamicTest> aRowThatNobodyWroteIsNamed() {
    return Journaled.all().stream()
        .map(table -> DynamicTest.dynamicTest(table.name(), () -> smuggle(table)));
  }

  private void smuggle(Journaled table) {
    Record row = world.lastRow(table);
    row.set(table.key(), row.get(table.key()) + 7000);
    world.insert(table.table(), row);
    Disagreement found = world.disagreement();
    world.delete(table.table(), sameRow(table, row));
    assertThat(found.table()).isEqualTo(table.name());
    assertThat(found.key()).isEqualTo(String.valueOf(row.get(table.key())));
    assertThat(found.sentence()).contains("no entry of the journal tells of it");
    world.assertAgrees();
  }

  @TestFactory
  Stream<DynamicTest> aDerivedTableThatDoesNotFollowIsNamed() {
    String occupancy = "UPDATE occupancy SET %s WHERE placement_id = ";
    String facts = "UPDATE component_fact_now SET %s WHERE fact_id = ";
    return Stream.of(
        derived(occupancy, "slot = 'path-2'", "slot = 'path-1'", 4),
        derived(occupancy, "component_id = 1", "component_id = 3", 5),
        derived(occupancy, "occupant = 1", "occupant = 3", 5),
        derived(occupancy, "slot_prev_until = NULL", "slot_prev_until = occupant_prev_until", 3),
        derived(
            occupancy, "occupant_prev_until = NULL", "occupant_prev_until = slot_prev_until", 3),
        derived(facts, "prev_until = NULL", "prev_until = valid_from", 4),
        derived(facts, "component_id = 3", "component_id = 2", 2));
  }

  private DynamicTest derived(String statement, String wrong, String right, long key) {
    return DynamicTest.dynamicTest(
        statement.formatted(wrong), () -> derive(statement, wrong, right, key));
  }

  private void derive(String statement, String wrong, String right, long key) {
    world.owner.secretly(sql -> sql.execute(statement.formatted(wrong) + key));
    Disagreement found = world.disagreement();
    world.owner.secretly(sql -> sql.execute(statement.formatted(right) + key));
    assertThat(found.table()).isIn("occupancy", "component_fact_now");
    assertThat(found.key()).isEqualTo(Long.toString(key));
    world.assertAgrees();
  }

  @TestFactory
  Stream<DynamicTest> aBeliefThatIsNotHeldAnyMoreOrLackingIsNamed() {
    return Stream.of(
        swapped(
            "DELETE FROM occupancy WHERE placement_id = 6",
            "INSERT INTO occupancy SELECT 6, 2, 'probe', 'unknown', -6, 1, NULL, valid_from,"
                + " valid_until, NULL, NULL FROM placement WHERE id = 6"),
        swapped(
            "INSERT INTO occupancy SELECT 1, 1, 'probe', 'part', 1, 1, 1, valid_from, valid_until,"
                + " NULL, NULL FROM placement WHERE id = 1",
            "DELETE FROM occupancy WHERE placement_id = 1"),
        swapped(
            "INSERT INTO component_fact_now SELECT 5, 1, valid_from, valid_until, NULL FROM"
                + " component_fact WHERE id = 5",
            "DELETE FROM component_fact_now WHERE fact_id = 5"));
  }

  private DynamicTest swapped(String wrong, String right) {
    return DynamicTest.dynamicTest(
        wrong,
        () -> {
          world.owner.secretly(sql -> sql.execute(wrong));
          Disagreement found = world.disagreement();
          world.owner.secretly(sql -> sql.execute(right));
          assertThat(wrong).contains(found.table());
          world.assertAgrees();
        });
  }
}
