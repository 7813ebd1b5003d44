package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.part;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import loopwright.matching.Approval;
import loopwright.matching.AreaClass;
import loopwright.matching.Entity;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartSheet;
import loopwright.matching.PlaceView;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * By hand, with a barrier of 28 V, 93 mA, 650 mW, Co 83 nF, Lo 3050 µH, a driver of 28 V, 140 mA,
 * 910 mW, Ci 5.7 nF, Li 850 µH, and a field cable of 200 pF/m and 0.7 µH/m: 150 m add 30 nF and 105
 * µH, so 35.7 nF and 955 µH. 1 % of Co is 0.83 nF and of Lo 30.5 µH, both less than Ci and Li, so
 * only half counts: 41.5 nF and 1525 µH. 150 m are fine; 200 m make 45.7 nF (attention), 400 m 85.7
 * nF (too much).
 */
class AreaApprovalTest extends RuleContract {
  private static final Entity BARRIER = Entity.of("28", "93", "650", "83", "3050");
  private static final Entity DRIVER = Entity.of("28", "140", "910", "5.7", "850");

  @Override
  Rule rule() {
    return new AreaApproval();
  }

  private static LoopView.Builder loop(String area, Approval drivers) {
    return loop(area, drivers, DRIVER, BARRIER, Places.cable("150", "200", "0.7"));
  }

  private static LoopView.Builder loop(
      String area, Approval drivers, Entity driver, Entity barrier, PlaceView.FieldCable field) {
    return Loops.loop(
            probe("1.0"),
            slot(cable("4.0")),
            driver("5.0").sheet(PartSheet.NOT_GIVEN.withApproval(drivers).withEntity(driver)))
        .barrier(
            slot(part(PartKind.BARRIER, "BR-1", "").sheet(PartSheet.NOT_GIVEN.withEntity(barrier))))
        .holding(Set.of(Fact.AREA))
        .place(Places.inArea(area, field));
  }

  private static Approval approval(String words, boolean safe, boolean covers) {
    String[] each = words.split(" ");
    return new Approval(
        "EX 12.345",
        Approval.Level.named(each[0]).orElseThrow(),
        AreaClass.GasGroup.named(each[1]).orElseThrow(),
        AreaClass.TemperatureClass.named(each[2]).orElseThrow(),
        safe,
        covers);
  }

  @ParameterizedTest(name = "{0} in {1}")
  @CsvSource({
    "Gb IIC T4, Zone 1 IIC T4, NOT_JUDGED",
    "Ga IIC T6, Zone 1 IIB T3, NOT_JUDGED",
    "Gb IIC T4, zone 2 iib t3, NOT_JUDGED",
    "Gb IIC T4, Zone 0 IIC T4, REFUSED",
    "Gc IIC T4, Zone 1 IIC T4, REFUSED",
    "Gb IIB T4, Zone 1 IIC T4, REFUSED",
    "Gb IIC T3, Zone 1 IIC T4, REFUSED",
    "Gb IIC T4, '', UNKNOWN",
    "Gb IIC T4, Zone 1, UNKNOWN",
    "Gb IIC T4, blue, UNKNOWN",
    "Gb IIC T4, safe area, NOT_JUDGED",
    "Gb IIC T4, Div 2 group D, NOT_JUDGED",
  })
  void zoneGroupAndClass(String words, String area, Verdict verdict) {
    LoopView loop = loop(area, approval(words, true, true)).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(verdict);
  }

  @ParameterizedTest(name = "{0} m of field cable")
  @CsvSource({
    "150, NOT_JUDGED",
    "179, NOT_JUDGED",
    "180, ATTENTION",
    "386, ATTENTION",
    "387, REFUSED"
  })
  void theSumsByHand(String metres, Verdict verdict) {
    LoopView loop =
        loop(
                "Zone 1 IIC T4",
                approval("Gb IIC T4", true, true),
                DRIVER,
                BARRIER,
                Places.cable(metres, "200", "0.7"))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(verdict);
  }

  @Test
  void theSumIsTold() {
    LoopView loop =
        loop(
                "Zone 1 IIC T4",
                approval("Gb IIC T4", true, true),
                DRIVER,
                BARRIER,
                Places.cable("400", "200", "0.7"))
            .build();
    assertThat(rule().judge(loop).message())
        .isEqualTo("Ci + cable = 5.7 + 80 = 85.7 nF, more than Co of barrier BR-1, 83 nF.");
  }

  @ParameterizedTest(name = "{0} {1} {2} {3} {4}")
  @CsvSource({
    "28, 93, 650, 83, 3050, NOT_JUDGED",
    "28.1, 93, 650, 83, 3050, REFUSED",
    "28, 140.5, 650, 83, 3050, REFUSED",
    "28, 93, 911, 83, 3050, REFUSED",
    "28, 93, 650, 35, 3050, REFUSED",
    "28, 93, 650, 83, 900, REFUSED",
  })
  void eachParameterIsHeldAgainstItsOwn(
      String volts, String amperes, String watts, String farads, String henries, Verdict verdict) {
    LoopView loop =
        loop(
                "Zone 1 IIC T4",
                approval("Gb IIC T4", true, true),
                DRIVER,
                Entity.of(volts, amperes, watts, farads, henries),
                Places.cable("150", "200", "0.7"))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(verdict);
  }

  @Test
  void whatIsMissingIsNamedOnce() {
    LoopView loop =
        loop(
                "Zone 1 IIC T4",
                approval("Gb IIC T4", true, true),
                DRIVER,
                new Entity(BARRIER.volts(), BARRIER.milliamperes(), null, null, null),
                Places.cable(null, "200", "0.7"))
            .build();
    Finding finding = rule().judge(loop);
    assertThat(finding.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(finding.message())
        .isEqualTo(
            "To add up the intrinsically safe circuit is missing: Po of barrier BR-1, the length of"
                + " the field cable, Co of barrier BR-1 and Lo of barrier BR-1.");
  }

  @Test
  void anIntrinsicallySafeDriverNeedsABarrier() {
    LoopView.Builder loop = loop("Zone 1 IIC T4", approval("Gb IIC T4", true, true));
    assertThat(rule().judge(loop.barrier(Slot.NONE_FITTED).build()).verdict())
        .isEqualTo(Verdict.REFUSED);
    assertThat(rule().judge(loop.barrier(Slot.NOT_RECORDED).build()).verdict())
        .isEqualTo(Verdict.UNKNOWN);
  }

  @Test
  void anotherProtectionNeedsNoBarrier() {
    LoopView loop =
        loop("Zone 2 IIB T3", approval("Gc IIC T4", false, true))
            .barrier(Slot.NOT_RECORDED)
            .build();
    assertThat(rule().judge(loop).message())
        .isEqualTo("Consistent with the data entered for Zone 2 IIB T3; the Ex dossier decides.");
  }

  @Test
  void probeAndCableNeedTheirOwnApprovalUnlessTheDriversCoversThem() {
    LoopView loop = loop("Zone 1 IIC T4", approval("Gb IIC T4", true, false)).build();
    Finding finding = rule().judge(loop);
    assertThat(finding.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(finding.message()).contains("probe PR-1").contains("extension cable XC-1");
  }

  @Test
  void anApprovalWithoutItsNumberIsUnknown() {
    Approval nameless =
        new Approval(
            "",
            Approval.Level.GB,
            AreaClass.GasGroup.IIC,
            AreaClass.TemperatureClass.T4,
            false,
            true);
    assertThat(rule().judge(loop("Zone 1 IIC T4", nameless).build()).verdict())
        .isEqualTo(Verdict.UNKNOWN);
  }

  @Test
  void doesNotJudgeWithoutAPlaceForTheArea() {
    LoopView loop =
        loop("Zone 0 IIC T6", approval("Gc IIA T1", true, true)).holding(Set.of()).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }

  @Property(tries = 500)
  @Domain(LoopViews.class)
  void neverSaysMatches(@ForAll LoopView loop) {
    assertThat(rule().judge(loop).verdict()).isNotEqualTo(Verdict.MATCHES);
  }
}
