package loopwright.scan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.ComponentId;
import loopwright.register.PartIdentity;
import org.junit.jupiter.api.Test;

class BenchTest {
  private static Component part(long number, PartKind kind) {
    return new Component(
        new ComponentId(number),
        ComponentDetails.of(kind, new PartIdentity("Harrow", "HX", kind.word() + number, "")),
        ComponentFacts.NOTHING_KNOWN,
        PartState.IN_STOCK,
        1);
  }

  private static final Component PROBE = part(1, PartKind.PROBE);
  private static final Component CABLE = part(2, PartKind.CABLE);
  private static final Component ADAPTER = part(3, PartKind.ADAPTER);
  private static final Component FEEDTHROUGH = part(4, PartKind.FEEDTHROUGH);
  private static final Component DRIVER = part(5, PartKind.DRIVER);

  @Test
  void eachKindGoesToItsPlace() {
    Bench bench = Bench.EMPTY.with(DRIVER).with(ADAPTER).with(PROBE).with(CABLE);
    assertThat(bench.parts()).containsExactly(PROBE, ADAPTER, CABLE, DRIVER);
    assertThat(bench.missing(false)).isEmpty();
  }

  @Test
  void everyOrderOfThePathIsThereOnceAsScannedFirst() {
    Bench bench = Bench.EMPTY.with(CABLE).with(ADAPTER).with(FEEDTHROUGH);
    assertThat(bench.orders())
        .hasSize(6)
        .doesNotHaveDuplicates()
        .first()
        .isEqualTo(List.of(CABLE, ADAPTER, FEEDTHROUGH));
    assertThat(Bench.EMPTY.orders()).containsExactly(List.of());
  }

  @Test
  void whatIsMissingIsNamed() {
    assertThat(Bench.EMPTY.missing(false))
        .containsExactly(Bench.Place.PROBE, Bench.Place.PATH, Bench.Place.DRIVER);
    assertThat(Bench.EMPTY.with(PROBE).missing(true)).containsExactly(Bench.Place.DRIVER);
  }

  @Test
  void aSecondDriverAndABarrierAreRefused() {
    Bench bench = Bench.EMPTY.with(DRIVER);
    assertThatThrownBy(() -> bench.with(part(9, PartKind.TRANSMITTER)))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("driver5 is here already");
    assertThatThrownBy(() -> bench.with(part(9, PartKind.BARRIER)))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("behind the driver");
  }
}
