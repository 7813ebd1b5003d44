package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import loopwright.matching.Connector;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartSheet;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConnectorsMateTest extends RuleContract {

  @Override
  Rule rule() {
    return new ConnectorsMate();
  }

  @Override
  boolean mindsTheOrder() {
    return true;
  }

  private static PartView.Builder with(PartView.Builder part, String probeSide, String driverSide) {
    return part.sheet(
        PartSheet.NOT_GIVEN.withConnectors(
            Connector.read(probeSide).orElse(null), Connector.read(driverSide).orElse(null)));
  }

  private static LoopView loop(String lead, String cableNear, String cableFar, String box) {
    return Loops.loop(
            with(probe("1.0"), "", lead),
            slot(with(cable("4.0"), cableNear, cableFar)),
            with(driver("5.0"), box, ""))
        .build();
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          each joint mates;       coax S male; coax S female; coax S male;   coax S female; MATCHES
          written another way;    coax S male; Coax s female; COAX  S male;  coaxS female;  MATCHES
          two of one gender;      coax S male; coax S male;   coax S female; coax S male;   REFUSED
          two types;              coax S male; coax T female; coax T male;   coax T female; REFUSED
          the second joint;       coax S male; coax S female; coax S male;   coax T female; REFUSED
          one is not recorded;    coax S male; '';            coax S male;   coax S female; UNKNOWN
          bad beats unknown;      coax S male; '';            coax S male;   coax S male;   REFUSED
          nothing is recorded;    '';          '';            '';            '';            NOT_JUDGED
          """)
  void truthTable(String name, String lead, String near, String far, String box, Verdict verdict) {
    assertThat(rule().judge(loop(lead, near, far, box)).verdict()).isEqualTo(verdict);
  }

  @Test
  void namesBothConnectorsAndWhatToDo() {
    Finding finding =
        rule().judge(loop("coax S male", "coax S male", "coax S female", "coax S male"));
    assertThat(finding.message())
        .isEqualTo(
            "Probe PR-1 ends in coax S male, extension cable XC-1 begins with coax S male: they"
                + " don't mate.");
    assertThat(finding.remedy())
        .isEqualTo("Fit a part with the other gender, or an adapter between them.");
  }

  @Test
  void aLeadStraightIntoTheDriverIsAJointToo() {
    LoopView loop =
        Loops.loop(
                with(probe("5.0"), "", "coax S male"),
                Slot.NONE_FITTED,
                with(driver("5.0"), "coax S male", ""))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.REFUSED);
  }

  @Test
  void anAdapterMakesTwoJointsOfOne() {
    PartView.Builder adapter =
        with(Loops.part(PartKind.ADAPTER, "AD-1", "0.1"), "coax S female", "coax T male");
    LoopView loop =
        LoopView.at("T-1")
            .probe(slot(with(probe("1.0"), "", "coax S male")))
            .path(
                java.util.List.of(
                    slot(adapter), slot(with(cable("3.9"), "coax T female", "coax T male"))))
            .driver(slot(with(driver("5.0"), "coax T female", "")))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.MATCHES);
  }

  @Test
  void aPlaceNobodyHasRecordedJoinsNothing() {
    LoopView loop =
        LoopView.at("T-1")
            .probe(slot(with(probe("1.0"), "", "coax S male")))
            .driver(slot(with(driver("5.0"), "coax S male", "")))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }

  @ParameterizedTest
  @CsvSource({
    "miniature coaxial male, miniature coaxial, MALE",
    "'SMA, female', SMA, FEMALE",
    "Type 7 FEMALE, Type 7, FEMALE",
  })
  void readsTypeAndGender(String text, String type, Connector.Gender gender) {
    assertThat(Connector.read(text)).contains(new Connector(type, gender));
    assertThat(Connector.read(new Connector(type, gender).toString()))
        .contains(new Connector(type, gender));
  }

  @ParameterizedTest
  @CsvSource({"male", "coaxial", "''", "xfemale"})
  void readsNothingElse(String text) {
    assertThat(Connector.read(text)).isEmpty();
  }
}
