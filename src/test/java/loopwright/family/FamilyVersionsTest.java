package loopwright.family;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.journal.JournalStore;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyDetails;
import loopwright.register.FamilyId;
import loopwright.register.OfferedLength;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Every change of a family leaves a version, in both databases. */
@ParameterizedClass
@EnumSource(Engine.class)
class FamilyVersionsTest {
  private final FamilyVersions versions = new FamilyVersions();
  private final FamilyBook book = new FamilyBook(versions::add);
  private final Database database;

  FamilyVersionsTest(Engine engine) {
    database = engine.open(new TestClock("2026-03-01T10:15:30Z"));
  }

  @AfterEach
  void close() {
    database.close();
  }

  private <R> R write(String why, Function<Tx, R> work) {
    return database.write(new Act(null, "E. Ngineer", "engineer", "family", why), work);
  }

  private static FamilyDetails.Builder family(String code, String... feet) {
    return FamilyDetails.of(code, "8 mm", "Nordling", ScaleFactor.millivoltsPerMil("200"))
        .lengths(
            List.of(feet).stream()
                .map(length -> OfferedLength.read(PartKind.DRIVER, length, Unit.FOOT))
                .toList());
  }

  private Family now(FamilyId id) {
    return database.read(sql -> book.family(sql, id)).orElseThrow();
  }

  private List<FamilyVersion> versions(FamilyId id) {
    return database.read(sql -> versions.of(sql, id));
  }

  @Test
  void lengthsPairsAndWhoSaidSoAreInTheVersions() {
    FamilyId id = write("data sheet 1", tx -> book.add(tx, family("T8", "15", "20").build()));
    FamilyId other = write("data sheet 2", tx -> book.add(tx, family("N8").build()));
    int seen = now(id).version();
    FamilyDetails longer = family("T8", "15", "20", "25").build();
    write("a new length", tx -> changed(tx, id, seen, longer));
    write("tried", tx -> paired(tx, other, id));
    List<FamilyVersion> all = versions(id);
    assertThat(all).extracting(FamilyVersion::number).containsExactly(3, 2, 1);
    assertThat(all)
        .extracting(v -> v.made().reason())
        .containsExactly("tried", "a new length", "data sheet 1");
    assertThat(all.get(0).entry()).isEqualTo(database.read(JournalStore::head).longValue());
    assertThat(FamilyVersion.between(all.get(2).words(), all.get(0).words()))
        .containsExactly(
            org.assertj.core.api.Assertions.entry(
                "interchangeable with N8", "not said → said by the shop"),
            org.assertj.core.api.Assertions.entry(
                "system lengths", "15 ft; 20 ft → 15 ft; 20 ft; 25 ft"));
    assertThat(versions(other)).hasSize(2);
    assertThat(now(id).details().lengths().get(2).length().metres()).isEqualByComparingTo("7.62");
    assertThatThrownBy(() -> write("late", tx -> changed(tx, id, seen, family("T8").build())))
        .satisfies(t -> assertThat(((Refused) t).problem()).isEqualTo(DbProblem.STALE));
    assertThat(versions(id)).hasSize(3);
  }

  private Boolean changed(Tx tx, FamilyId id, int version, FamilyDetails details) {
    book.change(tx, id, version, details);
    return true;
  }

  private Boolean paired(Tx tx, FamilyId one, FamilyId other) {
    book.pair(tx, one, other, "the shop");
    return true;
  }
}
