package loopwright.dynamic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.curve.Run;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Relations of a sine are exact; expected numbers here were worked out apart from the program with
 * a pocket calculator.
 */
class DynamicTest {

  @ParameterizedTest(name = "{0} µm pp at {1} mV/µm: {2} mV pp, {3} mV rms")
  @CsvSource({"50.8, 7.874015748031496, 400.0, 141.42", "100, 7.874, 787.40, 278.39"})
  void outputOfASine(double micrometres, double slope, double peakToPeak, double rms) {
    double volts = micrometres * slope / 1000;
    assertThat(volts * 1000).isCloseTo(peakToPeak, within(0.01));
    assertThat(Amplitude.RMS.fromPeakToPeak(volts * 1000)).isCloseTo(rms, within(0.01));
    assertThat(new DynamicReading(micrometres, volts, 60).sensitivity())
        .isCloseTo(slope, within(1e-12));
  }

  @ParameterizedTest(name = "{0} µm pp at {1} Hz: {2} g")
  @CsvSource({"100, 50, 0.503", "100, 100, 2.013", "254, 60, 1.841"})
  void peakAcceleration(double micrometres, double hertz, double gravities) {
    assertThat(new DynamicReading(micrometres, 1, hertz).peakGravities())
        .isCloseTo(gravities, within(0.001));
  }

  /** 50 Ω with 150 pF/m: 305 m give a corner of 69.6 kHz and 0.990 at 10 kHz, 150 m 141 kHz. */
  @Test
  void aFieldCableIsALowPassOfFirstOrder() {
    FieldCable cable = FieldCable.of(50, 150, 305);
    assertThat(cable.cornerHertz()).isCloseTo(69_577, within(10.0));
    assertThat(cable.ratio(10_000)).isCloseTo(0.9898, within(0.0001));
    assertThat(FieldCable.of(50, 150, 150).cornerHertz()).isCloseTo(141_470, within(10.0));
    assertThat(cable.decibels(cable.cornerHertz())).isCloseTo(-3.0103, within(1e-4));
    assertThat(cable.ratio(0)).isEqualTo(1);
    assertThatThrownBy(() -> FieldCable.of(0, 150, 305))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void decibelsOfAmplitudes() {
    assertThat(Decibels.of(0.5)).isCloseTo(-6.0206, within(1e-4));
    assertThat(Decibels.ratio(Decibels.of(0.91))).isCloseTo(0.91, within(1e-12));
    assertThatThrownBy(() -> Decibels.of(0)).isInstanceOf(IllegalArgumentException.class);
  }

  private static FrequencyResponse.Measured at(double hertz, double volts) {
    return new FrequencyResponse.Measured(
        new DynamicReading(100, volts, hertz), OptionalDouble.empty());
  }

  @Test
  void theLowestFrequencyIsTheReferenceInWhateverOrder() {
    FrequencyResponse response =
        FrequencyResponse.of(List.of(at(1000, 0.4), at(50, 0.8), at(200, 0.79)));
    assertThat(response.points()).extracting(p -> p.hertz()).containsExactly(50.0, 200.0, 1000.0);
    assertThat(response.points().get(0).decibels()).isZero();
    assertThat(response.points().get(2).decibels()).isCloseTo(-6.0206, within(1e-4));
    assertThat(response.worst(-3, 3).hertz()).isEqualTo(1000);
    assertThatThrownBy(() -> FrequencyResponse.of(List.of(at(50, 0.8))))
        .isInstanceOf(IllegalArgumentException.class);
  }

  static Curve line(double... volts) {
    List<CurveReading> readings = new ArrayList<>();
    for (int i = 0; i < volts.length; i++) {
      readings.add(
          CurveReading.of(
              Run.UP,
              Reported.read(Integer.toString(10 * (i + 1)), Unit.MIL).orElseThrow(),
              Reported.read(Double.toString(volts[i]), Unit.VOLT).orElseThrow()));
    }
    return new Curve(readings);
  }

  /** On −0.2 V/mil the slope is 200/25.4 mV/µm everywhere and −10 V stands at 50 mil. */
  @Test
  void theSlopeOfAStraightLineIsItsOwnEverywhere() {
    StaticCurve curve = StaticCurve.of(line(-2, -4, -6, -8, -10, -12, -14, -16, -18)).orElseThrow();
    assertThat(curve.gapAt(-10).getAsDouble()).isCloseTo(1270, within(1e-6));
    assertThat(curve.slopeAt(1270)).isCloseTo(200 / 25.4, within(1e-9));
    assertThat(curve.slopeAt(1300)).isCloseTo(200 / 25.4, within(1e-9));
    assertThat(curve.gapAt(-1)).as("beyond the readings").isEmpty();
    assertThat(StaticCurve.of(line(-2, -2, -4))).as("does not fall").isEmpty();
  }

  /** 7.9 ± 0.06 against 7.7 ± 0.08: √(0.06² + 0.08²) = 0.1, so two of them apart. */
  @Test
  void agreementIsCountedInCombinedUncertainties() {
    Agreement agreement = Agreement.of(7.9, 0.06, 7.7, 0.08);
    assertThat(agreement.combined()).isCloseTo(0.1, within(1e-12));
    assertThat(agreement.distance()).isCloseTo(2, within(1e-9));
    assertThat(Agreement.of(7.901, 0.06, 7.7, 0.08).agrees()).isFalse();
    assertThat(Agreement.of(7.899, 0.06, 7.7, 0.08).agrees()).isTrue();
    assertThat(Agreement.of(7.7, 0.06, 7.9, 0.08).distance()).isCloseTo(2, within(1e-9));
    assertThatThrownBy(() -> Agreement.of(7.9, 0, 7.7, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
