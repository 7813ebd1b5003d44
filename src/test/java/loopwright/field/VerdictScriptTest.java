package loopwright.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import loopwright.curve.BuiltInProfiles;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Grid;
import loopwright.curve.Run;
import loopwright.curve.ShiftRule;
import loopwright.curve.ToleranceProfile;
import loopwright.curve.Verdict;
import loopwright.problem.Refused;
import loopwright.testing.Browser;
import loopwright.testing.DemoSite;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * The script that judges on the device, run in a browser, against the program's own analysis:
 * synthetic curves over every profile, both grids, one and two runs, bent, steep, flat, saturated,
 * with gaps left out, set beside the grid and read between it.
 */
class VerdictScriptTest {
  @RegisterExtension static final Browser browser = new Browser();

  private static final int CURVES_PER_GRID = 40;

  private record Fixture(ToleranceProfile profile, Unit unit, Curve curve) {}

  @Test
  @SuppressWarnings("unchecked")
  void theScriptSaysWhatTheProgramSays() {
    List<Fixture> fixtures = fixtures();
    browser.driver().get(DemoSite.toLookAt().address().resolve("/field/").toString());
    List<Map<String, Object>> said =
        (List<Map<String, Object>>)
            browser
                .driver()
                .executeScript(
                    "return arguments[0].map(one => LoopVerdict.analyse(one.profile, one.readings))",
                    fixtures.stream().map(VerdictScriptTest::asked).toList());
    int[] seen = new int[4];
    for (int i = 0; i < fixtures.size(); i++) {
      Optional<CurveResult> result = judged(fixtures.get(i));
      agree(fixtures.get(i), result, said.get(i));
      seen[kind(result)]++;
    }
    assertThat(seen).as("conforming, failing, incomplete, outside the range").doesNotContain(0);
  }

  private static int kind(Optional<CurveResult> result) {
    if (result.isEmpty()) {
      return 3;
    }
    if (!result.get().worse().complete()) {
      return 2;
    }
    return result.get().verdict() == Verdict.CONFORMS ? 0 : 1;
  }

  private static Optional<CurveResult> judged(Fixture fixture) {
    try {
      return Optional.of(CurveAnalysis.of(fixture.curve(), fixture.profile()));
    } catch (Refused outside) {
      return Optional.empty();
    }
  }

  @SuppressWarnings("unchecked")
  private static void agree(
      Fixture fixture, Optional<CurveResult> result, Map<String, Object> said) {
    String name = fixture.toString();
    List<Map<String, Object>> runs = (List<Map<String, Object>>) said.get("runs");
    if (result.isEmpty()) {
      assertThat(runs).as(name).isEmpty();
      return;
    }
    CurveResult own = result.get();
    assertThat(runs).as(name).hasSameSizeAs(own.runs());
    assertThat(said.get("verdict")).as(name).isEqualTo(own.verdict().label());
    assertThat(said.get("isfVerdict")).as(name).isEqualTo(own.isfVerdict().label());
    assertThat(said.get("dslVerdict")).as(name).isEqualTo(own.dslVerdict().label());
    assertThat(said.get("complete")).as(name).isEqualTo(own.worse().complete());
    close(name, said.get("maxDsl"), own.maxDsl());
    close(name, said.get("asf"), own.asf());
    if (own.worstIsfPercent().isPresent()) {
      close(name, said.get("worstIsfPercent"), own.worstIsfPercent().getAsDouble());
    } else {
      assertThat(said.get("worstIsfPercent")).as(name).isNull();
    }
    for (int i = 0; i < runs.size(); i++) {
      assertThat(runs.get(i).get("verdict")).isEqualTo(own.runs().get(i).verdict().label());
      List<Map<String, Object>> steps = (List<Map<String, Object>>) runs.get(i).get("steps");
      assertThat(steps).as(name).hasSameSizeAs(own.runs().get(i).judgedIncrements());
      for (int step = 0; step < steps.size(); step++) {
        close(
            name, steps.get(step).get("isf"), own.runs().get(i).judgedIncrements().get(step).isf());
        assertThat(steps.get(step).get("conforms"))
            .as(name)
            .isEqualTo(own.runs().get(i).judgedIncrements().get(step).conforms());
      }
    }
  }

  private static void close(String name, Object said, double own) {
    assertThat(((Number) said).doubleValue())
        .as(name)
        .isCloseTo(own, within(1e-9 * Math.max(1, Math.abs(own))));
  }

  private static Map<String, Object> asked(Fixture fixture) {
    PackState.Limits limits = PackState.limits(fixture.profile());
    Map<String, Object> profile = new LinkedHashMap<>();
    profile.put("slope", limits.slope());
    profile.put("isfLowest", limits.isfLowest());
    profile.put("isfHighest", limits.isfHighest());
    profile.put("dslLimit", limits.dslLimit());
    profile.put("shiftRule", limits.shiftRule());
    profile.put("unit", fixture.unit().symbol());
    profile.put(
        "grids",
        limits.grids().stream()
            .map(
                grid ->
                    Map.of(
                        "unit", grid.unit(),
                        "from", grid.from(),
                        "to", grid.to(),
                        "step", grid.step()))
            .toList());
    return Map.of(
        "profile",
        profile,
        "readings",
        fixture.curve().readings().stream()
            .map(
                reading ->
                    Map.of(
                        "um", reading.gapMicrometres(),
                        "text", reading.output().typed(),
                        "down", reading.run() == Run.DOWN))
            .toList());
  }

  private static List<Fixture> fixtures() {
    List<ToleranceProfile> profiles = new ArrayList<>(BuiltInProfiles.all());
    profiles.add(withMeanRule(profiles.get(0)));
    Random chance = new Random(20261127);
    List<Fixture> fixtures = new ArrayList<>();
    for (ToleranceProfile profile : profiles) {
      for (Grid grid : profile.grids()) {
        for (int n = 0; n < CURVES_PER_GRID; n++) {
          fixtures.add(fixture(profile, grid, n, chance));
        }
      }
    }
    return fixtures;
  }

  private static ToleranceProfile withMeanRule(ToleranceProfile profile) {
    return new ToleranceProfile(
        "mean",
        "mean",
        1,
        "test",
        "",
        profile.nominal(),
        profile.isfTolerancePercent(),
        profile.dslLimit(),
        ShiftRule.MEAN,
        profile.grids());
  }

  /** The first of each grid is a plain line; then they get worse in several ways. */
  private static Fixture fixture(ToleranceProfile profile, Grid grid, int n, Random chance) {
    double slope =
        profile.slope() * (1 + (n < 8 ? 0.01 : 0.15) * chance.nextGaussian() * (n > 0 ? 1 : 0));
    double bend = n % 3 == 1 ? 0.05 * chance.nextGaussian() : 0;
    double noise = n % 4 == 2 ? 0.02 : 0.001;
    double rail = n % 5 == 4 ? -8 - 10 * chance.nextDouble() : -29;
    List<CurveReading> readings = new ArrayList<>();
    for (Run run : n % 6 == 5 ? Run.values() : new Run[] {Run.UP}) {
      for (String gap : gaps(grid, n, chance)) {
        double um = grid.unit().toCanonical(new BigDecimal(gap)).doubleValue();
        double along =
            (um - grid.fromMicrometres()) / (grid.toMicrometres() - grid.fromMicrometres());
        double volts =
            -0.5
                - slope * um / 1000 * (1 + bend * along)
                + noise * chance.nextGaussian() * (n > 0 ? 1 : 0);
        String typed =
            BigDecimal.valueOf(Math.min(-0.01, Math.max(volts, rail)))
                .setScale(n % 2 == 0 ? 3 : 2, RoundingMode.HALF_UP)
                .toPlainString();
        readings.add(
            CurveReading.of(
                run,
                Reported.read(gap, grid.unit()).orElseThrow(),
                Reported.read(typed, Unit.VOLT).orElseThrow()));
      }
    }
    return new Fixture(profile, grid.unit(), new Curve(readings));
  }

  /** As a micrometer is set: some left out, some beside the grid, some between and beyond. */
  private static List<String> gaps(Grid grid, int n, Random chance) {
    List<BigDecimal> all = new ArrayList<>(grid.positions());
    if (n % 7 == 3) {
      all.remove(1 + chance.nextInt(all.size() - 2));
    }
    if (n % 7 == 4) {
      all.add(1, all.get(0).add(grid.step().multiply(new BigDecimal("0.4"))));
      all.add(all.get(all.size() - 1).add(grid.step()));
    }
    if (n % 7 == 5) {
      BigDecimal off = grid.step().multiply(new BigDecimal("0.03"));
      all.replaceAll(gap -> chance.nextBoolean() ? gap.add(off) : gap);
    }
    if (n % 7 == 6 && n > 20) {
      all = new ArrayList<>(all.subList(0, Math.min(all.size(), 2 + chance.nextInt(4))));
      if (n > 30) {
        all.replaceAll(gap -> gap.multiply(BigDecimal.valueOf(50)));
      }
    }
    while (all.size() < Curve.FEWEST) {
      all.add(all.get(all.size() - 1).add(grid.step()));
    }
    return all.stream().map(BigDecimal::toPlainString).distinct().toList();
  }
}
