package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.FAMILIES;
import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.loop;
import static loopwright.matching.rules.Loops.ofFamily;
import static loopwright.matching.rules.Loops.part;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CompleteTest extends RuleContract {

  @Override
  Rule rule() {
    return new Complete();
  }

  private static Arguments row(String name, LoopView.Builder loop, Verdict verdict, String says) {
    return Arguments.of(name, loop.build(), verdict, says);
  }

  static Stream<Arguments> table() {
    LoopView.Builder two =
        loop("1.0", "2.0", "5.0")
            .path(List.of(slot(cable("2.0")), slot(part(PartKind.CABLE, "XC-2", "2.0"))));
    return Stream.of(
        row("whole", loop("1.0", "4.0", "5.0"), Verdict.MATCHES, "path and driver are recorded"),
        row("no cable, no family", loop("5.0", "none", "5.0"), Verdict.MATCHES, "no extension"),
        row("nothing", LoopView.at("T-1"), Verdict.UNKNOWN, "No probe is recorded. No extension"),
        row(
            "no probe, known",
            loop("1.0", "4.0", "5.0").probe(Slot.NONE_FITTED),
            Verdict.REFUSED,
            "No probe is fitted."),
        row(
            "no driver, known",
            loop("1.0", "4.0", "5.0").driver(Slot.NONE_FITTED),
            Verdict.REFUSED,
            "No driver is fitted."),
        row(
            "driver unknown",
            loop("1.0", "4.0", "5.0").driver(Slot.unknown("displaced by survey")),
            Verdict.UNKNOWN,
            "Which driver is fitted is not known: displaced by survey."),
        row(
            "path unknown",
            loop("1.0", "4.0", "5.0").path(List.of(Slot.unknown(""))),
            Verdict.UNKNOWN,
            "Which extension cable is fitted is not known."),
        row(
            "cable without a serial",
            loop(probe("1.0"), slot(part(PartKind.CABLE, "", "4.0")), driver("5.0")),
            Verdict.ATTENTION,
            "The extension cable is fitted but not identified."),
        row("two cables", two, Verdict.ATTENTION, "2 extension cables stand in series."),
        row(
            "two cables, forbidden by the driver's family",
            loop(probe("1.0"), Slot.NONE_FITTED, driver("5.0").family("R8"))
                .path(two.build().path())
                .families(FAMILIES),
            Verdict.REFUSED,
            "which the family forbids"),
        row(
            "two cables, family not listed",
            loop(probe("1.0"), Slot.NONE_FITTED, driver("5.0").family("R8"))
                .path(two.build().path()),
            Verdict.ATTENTION,
            "in series"),
        row(
            "cable and adapter are not two cables",
            loop("1.0", "2.0", "5.0")
                .path(List.of(slot(cable("4.0")), slot(part(PartKind.ADAPTER, "AD-1", "0.1")))),
            Verdict.MATCHES,
            "recorded"),
        row(
            "cable on a family that takes none",
            ofFamily("N5", "5.0", "4.0", "5.0"),
            Verdict.REFUSED,
            "takes no extension cable"),
        row(
            "no cable in a family that needs one",
            ofFamily("R9", "1.0", "none", "9.0"),
            Verdict.REFUSED,
            "needs an extension cable"),
        row(
            "family indifferent",
            ofFamily("R8", "5.0", "none", "5.0"),
            Verdict.MATCHES,
            "no extension cable"),
        row(
            "wrong slot",
            loop(part(PartKind.DRIVER, "DV-9", "5.0"), slot(cable("4.0")), driver("5.0")),
            Verdict.REFUSED,
            "Driver DV-9 stands in the wrong slot"),
        row(
            "barrier in the path",
            loop("1.0", "4.0", "5.0").path(List.of(slot(part(PartKind.BARRIER, "B-1", "")))),
            Verdict.REFUSED,
            "Barrier B-1 stands in the wrong slot"),
        row(
            "transmitter in place of a driver",
            loop(probe("1.0"), slot(cable("4.0")), part(PartKind.TRANSMITTER, "TX-1", "5.0")),
            Verdict.MATCHES,
            "recorded"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("table")
  void judges(String name, LoopView loop, Verdict verdict, String says) {
    Finding finding = rule().judge(loop);
    assertThat(finding.verdict()).isEqualTo(verdict);
    assertThat(finding.message()).contains(says);
  }

  @Test
  void onlyABarrierOrIsolatorStandsBehindTheDriver() {
    LoopView.Builder loop = loop("1.0", "4.0", "5.0");
    assertThat(
            rule()
                .judge(loop.barrier(slot(Loops.part(PartKind.ISOLATOR, "IS-1", ""))).build())
                .verdict())
        .isEqualTo(Verdict.MATCHES);
    assertThat(
            rule()
                .judge(loop.barrier(slot(Loops.part(PartKind.CABLE, "XC-9", "1.0"))).build())
                .verdict())
        .isEqualTo(Verdict.REFUSED);
  }

  @Test
  void aTransmitterTakesTheDriversPlace() {
    LoopView loop =
        loop(probe("1.0"), slot(cable("4.0")), Loops.part(PartKind.TRANSMITTER, "TX-1", "5.0"))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.MATCHES);
  }
}
