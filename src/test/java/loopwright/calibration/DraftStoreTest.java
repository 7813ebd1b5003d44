package loopwright.calibration;

import static loopwright.db.gen.Tables.PERSON;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import loopwright.db.gen.tables.records.PersonRecord;
import loopwright.loop.PartSet;
import loopwright.testing.Engine;
import loopwright.web.Form;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class DraftStoreTest {
  private static CalibrationWorld world;
  private static int people;

  private final DraftStore store = new DraftStore();
  private long writer;
  private long other;

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    world = new CalibrationWorld(engine);
  }

  @AfterParameterizedClassInvocation
  static void close() {
    world.close();
  }

  @BeforeEach
  void another() {
    world.another();
    writer = person();
    other = person();
  }

  private static long person() {
    return world.write(
        tx -> {
          PersonRecord row = tx.row(PERSON);
          row.setLogin("person-" + people++);
          row.setFullName("Somebody");
          row.setRole("technician");
          row.setPasswordHash("none");
          return tx.insert(row).getId();
        });
  }

  private static Form form(String... volts) {
    return Form.of(
            Map.of("csrf", "secret", "do", "draft", "reason", "ünfertig \u2212 \"halb\"\nzwei"))
        .put("up", List.of(volts));
  }

  private long save(long person, String... volts) {
    return world.write(tx -> store.save(tx, fitted(world.point), person, form(volts)));
  }

  private Optional<Form> find(long person) {
    return world
        .database()
        .read(sql -> store.find(sql, fitted(world.point), person))
        .map(DraftStore.Draft::form);
  }

  private static TakenWith fitted(long point) {
    return new TakenWith.Fitted(point);
  }

  @Test
  void onTheBenchAndWithAPartStandingInAreDraftsOfTheirOwn() {
    PartSet set = PartSet.read("probe:1/driver:2").orElseThrow();
    List<TakenWith> all =
        List.of(
            fitted(world.point),
            new TakenWith.StoodIn(world.point, set),
            new TakenWith.Bench(set),
            new TakenWith.Bench(PartSet.read("probe:1/path-1:3/driver:2").orElseThrow()));
    for (TakenWith with : all) {
      world.write(tx -> store.save(tx, with, writer, form(with.toString())));
    }
    for (TakenWith with : all) {
      Optional<DraftStore.Draft> found =
          world.database().read(sql -> store.find(sql, with, writer));
      assertThat(found.orElseThrow().form().every("up")).containsExactly(with.toString());
    }
    assertThat(waiting()).hasSize(4);
  }

  private List<DraftStore.Waiting> waiting() {
    return world.database().read(sql -> store.of(sql, writer));
  }

  @Test
  void everyCellComesBackAsTypedAndNothingElse() {
    save(writer, "-2.00", "", "x");
    Form found = find(writer).orElseThrow();
    assertThat(found.every("up")).containsExactly("-2.00", "", "x");
    assertThat(found.typed("reason")).isEqualTo("ünfertig \u2212 \"halb\"\nzwei");
    assertThat(found.everything()).doesNotContainKeys("csrf", "do");
    assertThat(find(other)).isEmpty();
  }

  @Test
  void aPersonHasOneOfEachPointAndTheLaterStands() {
    long first = save(writer, "-2");
    assertThat(save(writer, "-3")).isEqualTo(first);
    save(other, "-9");
    assertThat(find(writer).orElseThrow().every("up")).containsExactly("-3");
    assertThat(find(other).orElseThrow().every("up")).containsExactly("-9");
    assertThat(waiting()).extracting(DraftStore.Waiting::tag).containsExactly(world.tag());
  }

  @Test
  void savedFromManySidesAtOnceItIsOne() {
    IntStream.range(0, 6)
        .mapToObj(i -> CompletableFuture.runAsync(() -> save(writer, "-" + i)))
        .toList()
        .forEach(CompletableFuture::join);
    assertThat(waiting()).hasSize(1);
  }

  @Test
  void thrownAwayItIsGoneAndOnlyThat() {
    save(writer, "-2");
    save(other, "-9");
    world.write(
        tx -> {
          store.discard(tx, fitted(world.point), writer);
          store.discard(tx, fitted(world.bare), writer);
          return writer;
        });
    assertThat(find(writer)).isEmpty();
    assertThat(find(other)).isPresent();
  }
}
