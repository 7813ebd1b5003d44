package loopwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitTest {

  /**
   * Exact unit facts: 1 in = 25.4 mm (international agreement, 1959); NIST SP 811:2008, appendix
   * B.8, for °F. The rest follows by arithmetic.
   */
  @ParameterizedTest(name = "{0} {1} is {2}")
  @CsvSource(
      textBlock =
          """
      1,    mil,    25.4
      90,   mil,    2286
      200,  mV/mil, 7.874015748031496
      7.87, mV/um,  7.87
      8,    mV/um,  8
      16.4042, ft,  5.00000016
      50,   Hz,     50
      3000, cpm,    50
      212,  degF,   100
      -40,  °F,     -40
      -8900, mV,    -8.9
      """)
  void convertsExactly(String amount, String unit, double canonical) {
    Reported reported = Reported.read(amount, Unit.named(unit).orElseThrow()).orElseThrow();
    assertThat(reported.canonical()).isEqualTo(canonical);
  }

  @ParameterizedTest(name = "{0} {1} is {2} {3}")
  @CsvSource(
      textBlock =
          """
      7.87, mV/µm, 199.898, mV/mil, 1e-12
      8,    mV/µm, 203.2,   mV/mil, 1e-12
      5,    m,     16.4042, ft,     1e-4
      9,    m,     29.5276, ft,     1e-4
      60,   Hz,    3600,    cpm,    1e-12
      """)
  void readsInTheOtherUnit(String amount, String unit, double other, String in, double tolerance) {
    double canonical = Unit.named(unit).orElseThrow().toCanonical(Double.parseDouble(amount));
    assertThat(Unit.named(in).orElseThrow().fromCanonical(canonical))
        .isCloseTo(other, within(tolerance));
  }

  @Property
  void whatWasTypedComesBackExactly(@ForAll("typed") String text, @ForAll Unit unit) {
    Reported reported = Reported.read(text, unit).orElseThrow();
    assertThat(reported.typed()).isEqualTo(text);
    assertThat(reported.toString()).isEqualTo(text + " " + unit.symbol());
  }

  @Property
  void everyUnitGoesThereAndBack(@ForAll("amounts") BigDecimal amount, @ForAll Unit unit) {
    double there = unit.toCanonical(amount).doubleValue();
    double back = unit.fromCanonical(there);
    double scale = Math.max(Math.abs(amount.doubleValue()), 40);
    assertThat(back).isCloseTo(amount.doubleValue(), within(4 * Math.ulp(scale)));
  }

  @Property
  void everyPrintedSymbolReadsBack(@ForAll Unit unit) {
    assertThat(Unit.named(unit.symbol())).contains(unit);
  }

  @Provide
  Arbitrary<String> typed() {
    return amounts()
        .map(BigDecimal::toPlainString)
        .flatMap(text -> Arbitraries.of(text, text.replace('.', ',')));
  }

  @Provide
  Arbitrary<BigDecimal> amounts() {
    return Arbitraries.bigDecimals()
        .between(new BigDecimal("-99999"), new BigDecimal("99999"))
        .ofScale(4);
  }
}
