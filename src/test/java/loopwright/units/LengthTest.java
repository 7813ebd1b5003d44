package loopwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LengthTest {

  @Test
  void feetAddUpExactly() {
    Length fifteenFeet = Length.of(Reported.read("15", Unit.FOOT).orElseThrow());
    assertThat(fifteenFeet.plus(fifteenFeet).plus(fifteenFeet))
        .isEqualTo(Length.ofMetres("13.716"));
  }

  @Test
  void equalityIgnoresHowItWasWritten() {
    assertThat(Length.ofMetres("4.50")).isEqualTo(Length.ofMetres("4.5"));
    assertThat(Length.ofMetres("0.00")).isEqualTo(Length.ZERO);
  }

  @Test
  void balancesShowTheirSign() {
    Length balance = Length.ofMetres("5.5").minus(Length.ofMetres("5"));
    assertThat(balance.signedMetres()).isEqualTo("+0.5 m");
    assertThat(balance.signedFeet()).isEqualTo("+1.6 ft");
    assertThat(Length.ZERO.minus(balance).signedMetres()).isEqualTo("−0.5 m");
    assertThat(Length.ZERO.signedMetres()).isEqualTo("0.0 m");
  }
}
