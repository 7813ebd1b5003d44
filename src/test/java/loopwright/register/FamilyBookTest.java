package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Function;
import loopwright.curve.BuiltInProfiles;
import loopwright.curve.Grid;
import loopwright.curve.ShiftRule;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.matching.CableUse;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.Output;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.units.Length;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Families and profiles in both databases. */
@ParameterizedClass
@EnumSource(Engine.class)
class FamilyBookTest {
  private final Engine engine;
  private final FamilyBook book = new FamilyBook();
  private final ToleranceProfiles profiles = new ToleranceProfiles();
  private Database database;

  FamilyBookTest(Engine engine) {
    this.engine = engine;
  }

  @BeforeEach
  void open() {
    database = engine.open(new TestClock("2026-03-01T10:15:30Z"));
    profiles.seed(database);
  }

  @AfterEach
  void close() {
    if (database != null) {
      database.close();
    }
  }

  private <R> R write(Function<Tx, R> work) {
    return database.write(new Act(null, "E. Ngineer", "engineer", "family", "new"), work);
  }

  private static FamilyDetails.Builder q8() {
    return FamilyDetails.of("Q8", "8 mm", "Nordling", ScaleFactor.millivoltsPerMil("200"))
        .range(new LinearRange(250.0, 2250.0))
        .startVolts(new BigDecimal("-1.50"))
        .tipMillimetres(new BigDecimal("8.0"))
        .cableUse(CableUse.OPTIONAL)
        .twoCablesAllowed(true)
        .lengthTolerance(Length.ofMetres("0.1"))
        .connectors("threaded coaxial")
        .targetAlloy("42CrMo4")
        .output(Output.CURRENT)
        .profile("api670-2mm")
        .note("as the maker's sheet has it")
        .lengths(
            List.of(
                length(PartKind.DRIVER, "5", Unit.METRE),
                length(PartKind.PROBE, "1.0", Unit.METRE),
                length(PartKind.CABLE, "13.1", Unit.FOOT),
                length(PartKind.PROBE, "0,5", Unit.METRE)));
  }

  private static OfferedLength length(PartKind part, String text, Unit unit) {
    return OfferedLength.read(part, text, unit);
  }

  private List<ToleranceProfiles.Stored> newest() {
    return database.read(profiles::newest);
  }

  @Test
  void aFamilyComesBackAsItWasEntered() {
    FamilyDetails details = q8().build();
    write(tx -> book.add(tx, details));
    Family family = database.read(sql -> book.named(sql, "q8")).orElseThrow();
    assertThat(family.details()).isEqualTo(details);
    assertThat(family.details().lengths())
        .extracting(offered -> offered.part().word() + " " + offered.typed())
        .containsExactly("probe 0,5 m", "probe 1.0 m", "extension cable 13.1 ft", "driver 5 m");
    assertThatThrownBy(() -> write(tx -> book.add(tx, q8().build())))
        .hasMessageContaining("A family Q8 exists already");
  }

  @Test
  void aChangedFamilyKeepsTheLengthsThatStay() {
    FamilyId id = write(tx -> book.add(tx, q8().build()));
    FamilyDetails changed =
        q8().profile(null)
            .lengths(
                List.of(
                    length(PartKind.PROBE, "1.0", Unit.METRE),
                    length(PartKind.PROBE, "2", Unit.METRE)))
            .build();
    write(
        tx -> {
          book.change(tx, id, 1, changed);
          return true;
        });
    assertThat(database.read(sql -> book.family(sql, id)).orElseThrow().details())
        .isEqualTo(changed);
    assertThatThrownBy(
            () ->
                write(
                    tx -> {
                      book.change(tx, id, 1, changed);
                      return true;
                    }))
        .isInstanceOfSatisfying(
            Refused.class, r -> assertThat(r.problem()).isEqualTo(DbProblem.STALE));
  }

  @Test
  void theRulesSeeFamiliesAndPairs() {
    FamilyId first = write(tx -> book.add(tx, q8().build()));
    FamilyDetails other =
        FamilyDetails.of("N8", "8 mm", "Sundqvard", ScaleFactor.millivoltsPerMicrometre("8"))
            .build();
    FamilyId second = write(tx -> book.add(tx, other));
    write(
        tx -> {
          book.pair(tx, second, first, "E. Ngineer, letter of the maker");
          return true;
        });
    Families seen = database.read(book::asJudged);
    FamilyView view = seen.named("Q8").orElseThrow();
    assertThat(view.cableLengths()).containsExactly(Length.ofMetres("3.99288"));
    assertThat(view.systemLengths()).containsExactly(Length.ofMetres("5"));
    assertThat(view.forbidsTwoCables()).isFalse();
    assertThat(view.lengthTolerance()).isEqualTo(Length.ofMetres("0.1"));
    assertThat(seen.named("n8").orElseThrow().forbidsTwoCables()).isTrue();
    assertThat(seen.named("n8").orElseThrow().lengthTolerance()).isEqualTo(Length.ofMetres("0.05"));
    assertThat(seen.pair("N8", "q8").orElseThrow().saidBy()).contains("letter");
    assertThatThrownBy(
            () ->
                write(
                    tx -> {
                      book.pair(tx, first, second, "x");
                      return true;
                    }))
        .hasMessageContaining("Q8 and N8 are entered as interchangeable already");
    FamilyPair pair = database.read(book::pairs).get(0);
    write(
        tx -> {
          book.unpair(tx, pair);
          return true;
        });
    assertThat(database.read(book::asJudged).pair("N8", "q8")).isEmpty();
  }

  @Test
  void whatCantBeIsRefused() {
    assertThatThrownBy(() -> q8().lengthTolerance(Length.ofMetres("1.5")).build())
        .hasMessageContaining("The length tolerance can't be 1.5 m");
    assertThatThrownBy(() -> length(PartKind.BARRIER, "1", Unit.METRE))
        .hasMessageContaining("not barrier");
    assertThatThrownBy(() -> length(PartKind.PROBE, "400", Unit.METRE))
        .hasMessageContaining("A length of 400 m can't be");
    assertThatThrownBy(() -> new LinearRange(2250.0, 250.0)).isInstanceOf(Refused.class);
    List<OfferedLength> twice =
        List.of(length(PartKind.PROBE, "1.0", Unit.METRE), length(PartKind.PROBE, "1", Unit.METRE));
    assertThatThrownBy(() -> q8().lengths(twice).build()).hasMessageContaining("stands twice");
    assertThatThrownBy(() -> write(tx -> book.add(tx, q8().profile("nobody's").build())))
        .hasMessageContaining("There is no tolerance profile nobody's");
    assertThat(database.read(book::all)).isEmpty();
  }

  @Test
  void theBuiltInProfilesComeBackAsTheyAre() {
    assertThat(newest())
        .extracting(ToleranceProfiles.Stored::profile)
        .containsExactlyInAnyOrderElementsOf(BuiltInProfiles.all());
    profiles.seed(database);
    assertThat(newest()).hasSize(BuiltInProfiles.all().size());
  }

  @Test
  void changedLimitsAreANewVersionAndTheOldOneStays() {
    ToleranceProfile own =
        new ToleranceProfile(
            "own",
            "Shop's own",
            1,
            "shop procedure",
            "rev. 3",
            ScaleFactor.millivoltsPerMil("200"),
            new BigDecimal("6.5"),
            Reported.read("1.5", Unit.MIL).orElseThrow(),
            ShiftRule.MEAN,
            List.of(Grid.of(Unit.MIL, "10", "90", "10")));
    long first = write(tx -> profiles.add(tx, own));
    long second = write(tx -> profiles.add(tx, own));
    assertThat(database.read(sql -> profiles.version(sql, first)).orElseThrow().profile())
        .isEqualTo(own);
    List<ToleranceProfiles.Stored> versions = database.read(sql -> profiles.versions(sql, "own"));
    assertThat(versions).extracting(v -> v.profile().version()).containsExactly(2, 1);
    assertThat(versions)
        .extracting(ToleranceProfiles.Stored::version)
        .containsExactly(second, first);
    assertThat(database.read(sql -> profiles.newest(sql, "own")).orElseThrow().version())
        .isEqualTo(second);
  }
}
