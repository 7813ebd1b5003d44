package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.matching.Finding;
import loopwright.matching.Verdict;
import loopwright.plant.ChannelId;
import loopwright.plant.PointKind;
import loopwright.plant.SettingBasis;
import loopwright.testing.Engine;
import loopwright.time.Viewpoint;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** A loop in the database is judged by what the database holds around it, rule by rule. */
@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class FedRulesTest {
  private final OneLoop loop;

  FedRulesTest(Engine engine) {
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
      assertThat(finding.message()).contains(word);
    }
  }

  @Test
  void whoKeepsNoneOfItIsNotToldSo() {
    for (String rule :
        List.of(
            "connectors mate",
            "area approval",
            "target alloy",
            "temperature ratings",
            "monitor channel",
            "axial danger positions")) {
      says(rule, Verdict.NOT_JUDGED);
    }
    loop.channel();
    says("monitor channel", Verdict.NOT_JUDGED);
  }

  @Test
  void aDangerLevelBeyondTheRangeIsRefused() {
    ChannelId channel = loop.channel();
    loop.set(channel, SettingBasis.APPROVED, "200", "130", "");
    says("monitor channel", Verdict.UNKNOWN, "The gap to set is not recorded");
    loop.approvedGap();
    says("monitor channel", Verdict.MATCHES);
    loop.set(channel, SettingBasis.FOUND, "200", "2100", "");
    says("monitor channel", Verdict.REFUSED, "R slot 1 channel 1", "outside the linear range");
  }

  @Test
  void aScaleFactorThatNobodyExplainsIsRefusedWhereverItWasFound() {
    loop.approvedGap();
    ChannelId channel = loop.channel();
    loop.set(channel, SettingBasis.FOUND, "190", "130", "");
    loop.set(channel, SettingBasis.APPROVED, "200", "130", "");
    says("monitor channel", Verdict.REFUSED, "190", "no reason is on record");
  }

  @Test
  void eachChannelThatThePointFeedsIsJudged() {
    loop.approvedGap();
    loop.set(loop.channel(), SettingBasis.APPROVED, "200", "130", "");
    loop.set(loop.channel(), SettingBasis.APPROVED, "100", "130", "");
    says("monitor channel", Verdict.REFUSED, "R slot 1 channel 2");
  }

  @Test
  void anAxialDangerPositionOutsideTheRangeIsRefused() {
    loop.point(details -> details.kind(PointKind.AXIAL));
    ChannelId channel = loop.channel();
    loop.set(channel, SettingBasis.APPROVED, "200", "700", "-9.874");
    says("axial danger positions", Verdict.MATCHES);
    loop.set(channel, SettingBasis.FOUND, "200", "700", "-5");
    says("axial danger positions", Verdict.REFUSED, "outside the linear range");
  }

  @Test
  void aPastViewIsJudgedByTheSettingsOfItsMoment() {
    loop.approvedGap();
    ChannelId channel = loop.channel();
    loop.set(channel, SettingBasis.APPROVED, "190", "130", "");
    assertThat(past(null)).isEqualTo(Verdict.REFUSED);
    long known = loop.world.database.read(loopwright.journal.JournalStore::head);
    loop.set(channel, SettingBasis.FOUND, "200", "130", "");
    assertThat(past(null)).isEqualTo(Verdict.MATCHES);
    assertThat(past(known)).isEqualTo(Verdict.REFUSED);
  }

  private Verdict past(@org.jspecify.annotations.Nullable Long known) {
    Judging.Subject subject = new Judging.Subject(loop.point.number(), "V-1");
    return loop
        .world
        .database
        .read(
            sql ->
                loop.world.judging.judge(sql, List.of(subject), new Viewpoint(OneLoop.NOW, known)))
        .get(0)
        .judgement()
        .findings()
        .stream()
        .filter(finding -> finding.rule().name().equals("monitor channel"))
        .findFirst()
        .orElseThrow()
        .verdict();
  }
}
