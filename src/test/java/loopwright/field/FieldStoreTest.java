package loopwright.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.pack.FieldReturns.Cell;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Devices and what they sent, on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class FieldStoreTest {
  private static final Act ACT = new Act(null, "A. Tester", "technician", "field entry", "a test");

  private static Database database;

  private final FieldStore store = new FieldStore();

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    database = engine.open(new TestClock("2026-04-01T20:00:00Z"));
    FullWorld.fill(database);
  }

  @AfterParameterizedClassInvocation
  static void close() {
    database.close();
  }

  private Device device(Token token) {
    Instant expires = Instant.parse("2026-04-15T20:00:00Z");
    long id =
        database.write(ACT, tx -> store.addDevice(tx, 1, 1, "bench tablet", token.hash(), expires));
    return database.read(sql -> store.device(sql, id)).orElseThrow();
  }

  private Optional<Device> holding(String hash) {
    return database.read(sql -> store.withToken(sql, hash));
  }

  private List<FieldStore.Waiting> waiting() {
    return database.read(store::waiting);
  }

  private long add(Device device, SentEntry entry, String state) {
    return database.write(ACT, tx -> store.addEntry(tx, device, entry, 1, state, "a\nb"));
  }

  private static SentEntry entry() {
    return new SentEntry(
        UUID.randomUUID().toString(),
        "T100-VX1",
        "WP-00000000-O1-R1-00000000",
        "2026-04-01T20:00:00Z",
        "2026-04-01T20:00:00Z",
        0,
        List.of(new Cell("reading", "250 µm", "as found", "-2.10")));
  }

  @Test
  void aDeviceIsFoundByItsTokenAlone() {
    Token token = Token.fresh();
    Device device = device(token);
    assertThat(token.toString()).doesNotContain(token.text());
    assertThat(holding(Token.sha256(token.text()))).contains(device);
    assertThat(holding(Token.fresh().hash())).isEmpty();
    Instant now = Instant.parse("2026-04-02T20:00:00Z");
    for (Instant at : List.of(now, now.plusSeconds(90))) {
      database.derive(
          sql -> {
            store.seen(sql, device.id(), at);
            return at;
          });
    }
    assertThat(database.read(sql -> store.device(sql, device.id())).orElseThrow().seenAt())
        .isEqualTo(now.plusSeconds(90));
    database.write(
        ACT,
        tx -> {
          store.end(tx, device.id(), 1, "lost");
          return true;
        });
    assertThat(database.read(sql -> store.devices(sql, 1)).get(0).endReason()).isEqualTo("lost");
  }

  @Test
  void oneIdentityIsOneEntryAndWaitsUntilSomebodyDecides() {
    Device device = device(Token.fresh());
    SentEntry sent = entry();
    long id = add(device, sent, "waits");
    assertThatThrownBy(() -> add(device, sent, "recorded"))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("field entry uuid");
    Entry kept = database.read(sql -> store.withUuid(sql, sent.uuid())).orElseThrow();
    assertThat(kept.content()).isEqualTo(sent);
    assertThat(kept.waits()).isTrue();
    assertThat(waiting()).extracting(FieldStore.Waiting::entries).containsExactly(1);
    database.write(
        ACT,
        tx -> {
          store.decide(tx, id, "set aside", 1, "typed at the desk", "");
          return true;
        });
    assertThat(database.read(sql -> store.entry(sql, id)).orElseThrow().state())
        .isEqualTo("set aside");
    assertThat(waiting()).isEmpty();
  }
}
