package loopwright.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceProfileTest {

  @ParameterizedTest(name = "{0}: {6}")
  @CsvSource(
      textBlock =
          """
      # profile,          ISF mV/mil from, to,  DSL mil, ISF mV/µm from, to,     source
      api670-2mm,         190,             210, 1,       7.480,          8.268,  'API Std 670 4th and 5th ed., from memory'
      api670-2mm-outside, 180,             220, 3,       7.087,          8.661,  'API Std 670 4th and 5th ed., from memory'
      2mm-200-long,       187,             213, 1.5,     7.362,          8.386,  'common practice, no source'
      4mm-100,            90,              110, 4,       3.543,          4.331,  'common practice, no source'
      12mm-20,            18,              22,  12,      0.709,          0.866,  'common practice, no source'
      """)
  void limits(
      String code,
      double low,
      double high,
      double dsl,
      double lowUm,
      double highUm,
      String source) {
    ToleranceProfile profile = BuiltInProfiles.named(code).orElseThrow();
    assertThat(profile.isfLowest() * 25.4).isCloseTo(low, within(1e-9));
    assertThat(profile.isfHighest() * 25.4).isCloseTo(high, within(1e-9));
    assertThat(profile.isfLowest()).isCloseTo(lowUm, within(1e-3));
    assertThat(profile.isfHighest()).isCloseTo(highUm, within(1e-3));
    assertThat(profile.dslLimitMicrometres()).isCloseTo(dsl * 25.4, within(1e-9));
    assertThat(source).contains(profile.source().contains("API") ? "API" : profile.source());
  }

  @Test
  void theApiProfileDeclaresItsSlopeExactly() {
    assertThat(Curves.API.nominal()).hasToString("200 mV/mil");
    assertThat(Curves.API.slope()).isEqualTo(7.874015748031496);
    assertThat(Curves.API.grids())
        .map(Grid::toString)
        .containsExactly("250 to 2250 µm by 250", "10 to 90 mil by 10");
  }

  @Test
  void limitsAreInclusiveWithinAHairOnly() {
    assertThat(Curves.API.isfConforms(Curves.API.isfHighest() * (1 + 0.9e-9))).isTrue();
    assertThat(Curves.API.isfConforms(Curves.API.isfHighest() * (1 + 1.1e-9))).isFalse();
    assertThat(Curves.API.isfConforms(Curves.API.isfLowest() * (1 - 0.9e-9))).isTrue();
    assertThat(Curves.API.isfConforms(Curves.API.isfLowest() * (1 - 1.1e-9))).isFalse();
    assertThat(Curves.API.dslConforms(-25.4 * (1 + 0.9e-9))).isTrue();
    assertThat(Curves.API.dslConforms(25.4 * (1 + 1.1e-9))).isFalse();
  }

  @Test
  void everyGridIsNineReadingsOrMoreAndEveryCodeItsOwn() {
    Set<String> codes = Set.copyOf(BuiltInProfiles.codes());
    assertThat(codes).hasSameSizeAs(BuiltInProfiles.all());
    for (ToleranceProfile profile : BuiltInProfiles.all()) {
      assertThat(profile.grids().stream().map(Grid::unit).collect(Collectors.toSet()))
          .containsExactlyInAnyOrder(Unit.MICROMETRE, Unit.MIL);
      profile.grids().forEach(grid -> assertThat(grid.positions()).hasSizeGreaterThan(8));
    }
  }

  @Test
  void positionsOfTheInchGrid() {
    assertThat(Curves.API.grids().get(1).positions())
        .map(BigDecimal::intValueExact)
        .isEqualTo(List.of(10, 20, 30, 40, 50, 60, 70, 80, 90));
  }

  @Test
  void gridsThatAreNoneAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Grid.of(Unit.MICROMETRE, "250", "2240", "250"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Grid.of(Unit.MICROMETRE, "250", "250", "250"));
    assertThatIllegalArgumentException().isThrownBy(() -> Grid.of(Unit.METRE, "0", "2", "1"));
  }
}
