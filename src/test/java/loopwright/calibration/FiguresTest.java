package loopwright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import loopwright.web.UnitsShown;
import org.junit.jupiter.api.Test;

/** 200 mV/mil is 200/25.4 mV/µm and 1 mil is 25.4 µm, exactly (inch of 1959). */
class FiguresTest {
  private static final double SLOPE = 200 / 25.4;
  private final Figures metric = new Figures(UnitsShown.METRIC);
  private final Figures mil = new Figures(UnitsShown.MIL);

  @Test
  void theReadersUnitComesFirst() {
    assertThat(metric.slopeBoth(SLOPE)).isEqualTo("7.874 mV/µm (200.0 mV/mil)");
    assertThat(mil.slopeBoth(SLOPE)).isEqualTo("200.0 mV/mil (7.874 mV/µm)");
    assertThat(metric.deviationBoth(-25.4)).isEqualTo("−25.4 µm (−1.00 mil)");
    assertThat(mil.deviationBoth(-25.4)).isEqualTo("−1.00 mil (−25.4 µm)");
    assertThat(metric.gaps(254, 2286)).isEqualTo("254 to 2286 µm (10.0 to 90.0 mil)");
    assertThat(mil.gap(1270)).isEqualTo("50.0 mil (1270 µm)");
    assertThat(mil.deviation(12.7)).isEqualTo("0.50 mil");
    assertThat(mil.deviationNumber(12.7)).isEqualTo("+0.50");
  }

  @Test
  void anErrorThatRoundsAwayIsNotCalledNothing() {
    assertThat(metric.error(1e-9)).isEqualTo("below 0.001 mV/µm");
    assertThat(mil.error(1e-9)).isEqualTo("below 0.01 mV/mil");
    assertThat(metric.error(0.0123)).isEqualTo("0.012 mV/µm");
  }

  @Test
  void theMachinesLocaleIsNoMatter() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(metric.slope(SLOPE)).isEqualTo("7.874 mV/µm");
      assertThat(Figures.percent(-6)).isEqualTo("−6.0 %");
      assertThat(Figures.volts(-10.02)).isEqualTo("−10.02 V");
    } finally {
      Locale.setDefault(before);
    }
  }
}
