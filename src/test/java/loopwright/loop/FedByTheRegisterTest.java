package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import loopwright.alloy.AlloyBook;
import loopwright.alloy.GroupDetails;
import loopwright.circuit.CircuitProblem;
import loopwright.circuit.FieldCircuit;
import loopwright.datasheet.SheetDetails;
import loopwright.datasheet.SheetProblem;
import loopwright.datasheet.Subject;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.matching.Approval;
import loopwright.matching.AreaClass;
import loopwright.matching.Connector;
import loopwright.matching.Entity;
import loopwright.matching.Finding;
import loopwright.matching.PartKind;
import loopwright.matching.PartSheet;
import loopwright.matching.Range;
import loopwright.matching.Verdict;
import loopwright.plant.Surroundings;
import loopwright.problem.Refused;
import loopwright.register.FamilyDetails;
import loopwright.testing.Engine;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Connectors, area, alloy and temperatures are judged by data sheets, field circuit and alloy
 * groups in the database: nothing while nobody asks and nobody says, unknown while one side is
 * missing.
 */
@ParameterizedClass
@EnumSource(Engine.class)
class FedByTheRegisterTest {
  private final OneLoop loop;

  FedByTheRegisterTest(Engine engine) {
    loop = new OneLoop(engine);
  }

  @AfterEach
  void close() {
    loop.close();
  }

  private void says(String rule, Verdict verdict, String... words) {
    Finding finding = loop.finding(rule);
    assertThat(finding.verdict()).as(finding.message()).isEqualTo(verdict);
    for (String word : words) {
      assertThat(finding.message() + " " + finding.expect()).contains(word);
    }
  }

  private Subject ofFamily(PartKind kind) {
    return Subject.ofFamily(kind, loop.family);
  }

  private void sheet(Subject subject, PartSheet sheet) {
    loop.write(
        tx -> {
          int seen = loop.world.sheets.versions(tx.sql(), subject).size();
          loop.world.sheets.record(
              tx, subject, seen, new SheetDetails(sheet, Range.NOT_SAID, "sheet 1"));
          return seen;
        });
  }

  private static PartSheet plugs(String towardProbe, String towardDriver) {
    return PartSheet.NOT_GIVEN.withConnectors(
        Connector.read(towardProbe).orElse(null), Connector.read(towardDriver).orElse(null));
  }

  @Test
  void connectorsMateByTheSheetsOfTheFamilyUnlessTheModelSaysOtherwise() {
    says("connectors mate", Verdict.NOT_JUDGED);
    sheet(ofFamily(PartKind.PROBE), plugs("", "miniature coaxial male"));
    says("connectors mate", Verdict.UNKNOWN, "extension cable C-1");
    sheet(ofFamily(PartKind.CABLE), plugs("miniature coaxial female", "miniature coaxial male"));
    sheet(ofFamily(PartKind.DRIVER), plugs("miniature coaxial female", ""));
    says("connectors mate", Verdict.MATCHES);
    Subject model = Subject.ofModel(PartKind.DRIVER, "NORDLING", "n  Driver");
    sheet(model, plugs("miniature coaxial male", ""));
    says("connectors mate", Verdict.REFUSED, "driver D-1 begins with miniature coaxial male");
    sheet(model, PartSheet.NOT_GIVEN.withCelsius(Range.of("-35", "65")));
    says("connectors mate", Verdict.MATCHES);
  }

  /** Ratings after API Std 670, from memory: probe −35 to 120 °C, driver −35 to 65 °C. */
  @Test
  void ratingsAreHeldAgainstTheTemperaturesOfThePoint() {
    says("temperature ratings", Verdict.NOT_JUDGED);
    around("", "", "119.5");
    says("temperature ratings", Verdict.UNKNOWN, "probe P-1");
    sheet(ofFamily(PartKind.PROBE), PartSheet.NOT_GIVEN.withCelsius(Range.of("-35", "120")));
    says("temperature ratings", Verdict.MATCHES);
    around("", "", "120.5");
    says("temperature ratings", Verdict.REFUSED, "120.5 °C at the tip is outside");
    around("", "", "");
    says("temperature ratings", Verdict.UNKNOWN, "The temperature at the tip is not recorded");
  }

  private void around(String alloy, String area, String tip) {
    BigDecimal celsius = tip.isEmpty() ? null : new BigDecimal(tip);
    loop.point(
        details -> details.surroundings(new Surroundings(alloy, area, "", celsius, null, null)));
  }

  private void family(FamilyDetails.Builder details) {
    loop.write(
        tx -> {
          int version = loop.world.families.family(tx.sql(), loop.family).orElseThrow().version();
          loop.world.families.change(tx, loop.family, version, details.build());
          return version;
        });
  }

  /** 250 against 200 mV/mil is +25 % (vibration handbooks, from memory). */
  @Test
  void alloysAreToldByTheGroupsThatTheShopKeeps() {
    family(OneLoop.family().targetAlloy("4140"));
    says("target alloy", Verdict.NOT_JUDGED);
    around("42 CrMo4", "", "");
    says("target alloy", Verdict.UNKNOWN, "in no alloy group");
    loop.write(this::begin);
    says("target alloy", Verdict.MATCHES, "Low-alloy steel");
    around("304", "", "");
    says("target alloy", Verdict.ATTENTION, "+25 %");
    around("Brass", "", "");
    says("target alloy", Verdict.REFUSED, "Ferrous and non-ferrous");
    around("", "", "");
    says("target alloy", Verdict.UNKNOWN, "The shaft's alloy is not recorded");
  }

  private Boolean begin(Tx tx) {
    loop.world.alloys.begin(tx);
    return true;
  }

  @Test
  void anAlloyStandsInOneGroupOnlyAndAnOldFormIsRefused() {
    loop.write(this::begin);
    var steel = loop.world.database.read(loop.world.alloys::groups).get(4);
    assertThat(steel.details().alloys()).contains("42CrMo4", "SCM440");
    GroupDetails more =
        new GroupDetails(
            "Low-alloy steel",
            true,
            new BigDecimal("1.00"),
            "by definition",
            List.of("4140", "4340"));
    loop.write(tx -> changed(tx, steel.id(), steel.version(), more));
    Optional<AlloyBook.Group> now =
        loop.world.database.read(sql -> loop.world.alloys.group(sql, steel.id()));
    assertThat(now.orElseThrow().details()).isEqualTo(more);
    assertThatThrownBy(() -> loop.write(tx -> changed(tx, steel.id(), steel.version(), more)))
        .satisfies(t -> assertThat(((Refused) t).problem()).isEqualTo(DbProblem.STALE));
    GroupDetails brass = new GroupDetails("Steel", null, null, "", List.of("43-40"));
    assertThatThrownBy(() -> loop.write(tx -> loop.world.alloys.add(tx, brass)))
        .hasMessageContaining("Alloy 43-40 is in group Low-alloy steel already");
  }

  private Boolean changed(Tx tx, long id, int version, GroupDetails details) {
    loop.world.alloys.change(tx, id, version, details);
    return true;
  }

  /**
   * Worked by hand: 300 m at 150 pF/m are 45 nF, with 5.7 nF 50.7 nF of 94 nF allowed; 300 m at
   * 0.65 µH/m are 195 µH, with 10 µH 205 µH of 4,200 µH. 600 m: 5.7 + 90 = 95.7 nF, too much. 10 µH
   * is less than 1 % of 4,200 µH, so that the whole of Co may be used.
   */
  @Test
  void anIntrinsicallySafeCircuitIsAddedUpOutOfItsRecord() {
    says("area approval", Verdict.NOT_JUDGED);
    around("", "Zone 1 IIC T4", "");
    says("area approval", Verdict.UNKNOWN, "No approval for hazardous areas is recorded");
    sheet(ofFamily(PartKind.DRIVER), driverSheet());
    says("area approval", Verdict.UNKNOWN, "Which barrier or isolator");
    long barrier = loop.part(PartKind.BARRIER, "B-1", "1");
    circuit(new Content.None(), "300");
    says("area approval", Verdict.REFUSED, "no barrier or isolator is fitted");
    circuit(new Content.Part(barrier), "300");
    says("area approval", Verdict.UNKNOWN, "Uo of barrier B-1");
    sheet(
        Subject.ofModel(PartKind.BARRIER, "Nordling", "N barrier"),
        PartSheet.NOT_GIVEN.withEntity(Entity.of("26.6", "94", "660", "94", "4200")));
    says("area approval", Verdict.NOT_JUDGED, "the Ex dossier decides");
    circuit(new Content.Part(barrier), "600");
    says("area approval", Verdict.REFUSED, "5.7 + 90 = 95.7 nF", "94 nF");
    around("", "safe area", "");
    says("area approval", Verdict.NOT_JUDGED, "no hazardous area");
  }

  private static PartSheet driverSheet() {
    return PartSheet.NOT_GIVEN
        .withApproval(
            new Approval(
                "X 17",
                Approval.Level.GB,
                AreaClass.GasGroup.IIC,
                AreaClass.TemperatureClass.T4,
                true,
                true))
        .withEntity(Entity.of("28", "140", "850", "5.7", "10"));
  }

  private void circuit(Content barrier, String metres) {
    FieldCircuit circuit = circuitOf(barrier, metres);
    loop.write(
        tx -> {
          int seen = loop.world.circuits.versions(tx.sql(), loop.point).size();
          loop.world.circuits.record(tx, loop.point, seen, circuit);
          return seen;
        });
  }

  private static FieldCircuit circuitOf(Content barrier, String metres) {
    return new FieldCircuit(
        barrier,
        Reported.read(metres, Unit.METRE).orElseThrow(),
        new BigDecimal("150"),
        new BigDecimal("0.650"));
  }

  /**
   * Worked by hand: 1 + 3.8 + 0.2 = 5 m on a transmitter tuned for 5 m; without the adapter −0.2.
   */
  @Test
  void anAdapterCountsAndATransmitterStandsInForADriver() {
    Content probe = new Content.Part(loop.part(PartKind.PROBE, "P-2", "1"));
    Content cable = new Content.Part(loop.part(PartKind.CABLE, "C-2", "3.8"));
    Content adapter = new Content.Part(loop.part(PartKind.ADAPTER, "A-2", "0.2"));
    Content transmitter = new Content.Part(loop.part(PartKind.TRANSMITTER, "T-2", "5"));
    survey(Chain.of(probe, List.of(cable, adapter), transmitter));
    says("complete", Verdict.MATCHES);
    says("length balance", Verdict.MATCHES, "1.0 + 3.8 + 0.2");
    survey(Chain.of(probe, List.of(cable), transmitter));
    says("length balance", Verdict.REFUSED, "0.2 m");
    Content sensor = new Content.Part(loop.part(PartKind.ACCELEROMETER, "X-2", "1"));
    survey(Chain.of(sensor, List.of(), new Content.None()));
    says("length balance", Verdict.NOT_JUDGED);
  }

  private void survey(Chain chain) {
    loop.write(
        tx ->
            loop.world.configuration.survey(
                tx, loop.point.number(), chain, OneLoop.BUILT.plusSeconds(++surveys), ""));
  }

  private int surveys;

  @Test
  void versionsStayReadableAndTheSameTwiceIsRefused() {
    circuit(new Content.None(), "300");
    circuit(new Content.Unknown(), "984.25");
    var versions = loop.world.database.read(sql -> loop.world.circuits.versions(sql, loop.point));
    assertThat(versions).extracting(one -> one.version()).containsExactly(2, 1);
    assertThat(versions.get(1).circuit()).isEqualTo(circuitOf(new Content.None(), "300"));
    assertThatThrownBy(() -> circuit(new Content.Unknown(), "984.25"))
        .satisfies(t -> assertThat(((Refused) t).problem()).isEqualTo(CircuitProblem.NOTHING_NEW));
    sheet(ofFamily(PartKind.DRIVER), driverSheet());
    assertThatThrownBy(() -> sheet(ofFamily(PartKind.DRIVER), driverSheet()))
        .satisfies(t -> assertThat(((Refused) t).problem()).isEqualTo(SheetProblem.NOTHING_NEW));
    SheetDetails other = new SheetDetails(driverSheet(), Range.of("-26", "-17.5"), "sheet 2");
    assertThatThrownBy(
            () ->
                loop.write(
                    tx -> {
                      loop.world.sheets.record(tx, ofFamily(PartKind.DRIVER), 0, other);
                      return other;
                    }))
        .satisfies(t -> assertThat(((Refused) t).problem()).isEqualTo(DbProblem.STALE));
  }
}
