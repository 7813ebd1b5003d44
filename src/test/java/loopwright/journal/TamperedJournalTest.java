package loopwright.journal;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.JOURNAL_HEAD;
import static loopwright.journal.Tampering.flipped;
import static loopwright.journal.Tampering.name;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;
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

/** Each test changes one thing in the journal, sees it named, and puts it back. */
@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class TamperedJournalTest {
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

  private static Condition seq(long seq) {
    return JOURNAL_ENTRY.SEQ.eq(seq);
  }

  @TestFactory
  Stream<DynamicTest> aFlippedValueIsNamedByItsEntry() {
    return Stream.of(JOURNAL_ENTRY.fields())
        .filter(column -> !column.equals(JOURNAL_ENTRY.SEQ))
        .map(column -> DynamicTest.dynamicTest(name(column), () -> flipInEntry(column)));
  }

  private <T> void flipInEntry(Field<T> column) {
    T was = world.entry(3).get(column);
    Object other =
        column.equals(JOURNAL_ENTRY.CHANGE_ID) ? world.entry(2).get(column) : flipped(was);
    world.set(JOURNAL_ENTRY, seq(3), column, column.getDataType().convert(other));
    Disagreement found = world.disagreement();
    world.set(JOURNAL_ENTRY, seq(3), column, was);
    assertThat(found.entry()).isEqualTo(3L);
    world.assertAgrees();
  }

  @TestFactory
  Stream<DynamicTest> aChangedChangeIsNamedByItsEntry() {
    return Stream.of(CHANGE.fields())
        .filter(column -> !column.equals(CHANGE.ID))
        .map(column -> DynamicTest.dynamicTest(name(column), () -> flipInChange(column)));
  }

  private <T> void flipInChange(Field<T> column) {
    Condition which = CHANGE.ID.eq(world.entry(5).get(JOURNAL_ENTRY.CHANGE_ID));
    T was = world.owner.secretly(sql -> sql.fetchSingle(CHANGE, which).get(column));
    world.set(CHANGE, which, column, column.getDataType().convert(flipped(was)));
    Disagreement found = world.disagreement();
    world.set(CHANGE, which, column, was);
    assertThat(found.entry()).isEqualTo(5L);
    world.assertAgrees();
  }

  @Test
  void aLostEntryIsNamed() {
    for (long seq : List.of(1L, 3L)) {
      Record row = world.entry(seq);
      world.delete(JOURNAL_ENTRY, seq(seq));
      Disagreement found = world.disagreement();
      world.insert(JOURNAL_ENTRY, row);
      assertThat(found.entry()).isEqualTo(seq);
      assertThat(found.sentence()).contains("it is missing");
    }
    world.assertAgrees();
  }

  @Test
  void aLostTailShowsInTheHead() {
    Record row = world.entry(5);
    world.delete(JOURNAL_ENTRY, seq(5));
    Disagreement found = world.disagreement();
    world.insert(JOURNAL_ENTRY, row);
    assertThat(found.sentence())
        .isEqualTo("The journal's head says entry 5, but the last entry is 4.");
    world.assertAgrees();
  }

  @Test
  void twoEntriesThatChangedPlacesAreNamed() {
    swapSecondAndThird();
    Disagreement found = world.disagreement();
    swapSecondAndThird();
    assertThat(found.entry()).isEqualTo(2L);
    world.assertAgrees();
  }

  private void swapSecondAndThird() {
    world.set(JOURNAL_ENTRY, seq(2), JOURNAL_ENTRY.SEQ, 99L);
    world.set(JOURNAL_ENTRY, seq(3), JOURNAL_ENTRY.SEQ, 2L);
    world.set(JOURNAL_ENTRY, seq(99), JOURNAL_ENTRY.SEQ, 3L);
  }

  @Test
  void aWrongHeadIsNamed() {
    Condition only = DSL.noCondition();
    byte[] was = world.owner.secretly(sql -> sql.fetchSingle(JOURNAL_HEAD).getChainHash());
    world.set(JOURNAL_HEAD, only, JOURNAL_HEAD.CHAIN_HASH, (byte[]) flipped(was));
    assertThat(world.disagreement().sentence()).contains("head holds another hash");
    world.set(JOURNAL_HEAD, only, JOURNAL_HEAD.CHAIN_HASH, was);
    world.set(JOURNAL_HEAD, only, JOURNAL_HEAD.SEQ, 4L);
    assertThat(world.disagreement().sentence()).contains("head says entry 4");
    world.set(JOURNAL_HEAD, only, JOURNAL_HEAD.SEQ, 5L);
    world.assertAgrees();
  }

  @Test
  void aChangeThatNoEntryTellsOfIsNamed() {
    Long id =
        world.owner.secretly(
            sql ->
                sql.insertInto(CHANGE)
                    .set(CHANGE.MADE_AT, OffsetDateTime.parse("2026-03-01T00:00:00Z"))
                    .set(CHANGE.ACTOR_NAME, "nobody")
                    .set(CHANGE.ACTOR_ROLE, "viewer")
                    .set(CHANGE.WHAT, "nothing")
                    .set(CHANGE.REASON, "none")
                    .returningResult(CHANGE.ID)
                    .fetchSingle()
                    .value1());
    assertThat(world.disagreement().sentence()).contains("Change " + id + " is in no entry");
    world.delete(CHANGE, CHANGE.ID.eq(id));
    world.assertAgrees();
  }

  /** Somebody who works out all hashes anew. */
  @TestFactory
  Stream<DynamicTest> aForgedEntryIsNamedThoughAllItsHashesFit() {
    String draft = "\"key\":\"2\",\"op\":\"delete\",\"table\":\"calibration_draft\"";
    String hash = "is not that of what it says";
    return Stream.of(
        forgery(2, "\":\"", "\": \"", "canonical form"),
        forgery(2, "\\{", "", "canonical form|can't be read"),
        forgery(1, "\"hash\":\"\\w+\",", "", "gives no hash"),
        forgery(1, "\"Test Marsh\"", "\"Test Moors\"", hash),
        forgery(2, "\"change_id\":\"2\"", "\"change_id\":\"3\"", hash),
        forgery(5, "names were short", "names were long", "reason of its change"),
        forgery(1, "\"table\":\"site\"", "\"table\":\"sites\"", "no row of a journaled table"),
        forgery(5, "\"op\":\"delete\"", "\"op\":\"forget\"", "nobody knows the operation"),
        forgery(5, draft, draft.replace("_draft", ""), "stay for ever"),
        forgery(5, draft, draft.replace("2", "5"), "which is not there"),
        forgery(5, "\"part\":\"1\"", "\"part\":\"2\"", "its part is 1, its content says 2"));
  }

  private DynamicTest forgery(long seq, String old, String fresh, String says) {
    return DynamicTest.dynamicTest(
        old + " to " + fresh,
        () -> {
          Disagreement found = world.forged(seq, first(old, fresh));
          assertThat(found.entry()).isEqualTo(seq);
          assertThat(found.sentence()).containsPattern(says);
          world.assertAgrees();
        });
  }

  private static UnaryOperator<String> first(String old, String fresh) {
    return text -> text.replaceFirst(old, fresh);
  }

  @Test
  void aFactLeftOutShowsInTheTable() {
    String renaming = "\\{\"before\":\\{[^{}]*\"full_name\"[^{}]*\\}[^{}]*\\{[^{}]*\\}[^{}]*\\},?";
    Disagreement found = world.forged(5, first(renaming, ""));
    assertThat(found.sentence())
        .isEqualTo(
            "person 1, column change_id: it holds \u201c5\u201d, entry 1 says \u201c1\u201d.");
    world.assertAgrees();
  }

  @Test
  void anUnknownFormatIsNotJudged() {
    assertThatThrownBy(() -> world.forged(4, first("\"format\":\"1\"", "\"format\":\"7\"")))
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> assertThat(refused.problem()).isEqualTo(JournalProblem.UNKNOWN_FORMAT))
        .hasMessageContaining("Entry 4")
        .hasMessageContaining("format 7");
    world.assertAgrees();
  }
}
