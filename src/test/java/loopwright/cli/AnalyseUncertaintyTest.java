package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AnalyseUncertaintyTest {
  private static final String GOOD =
      "gap_mil,volts\n10,-1.93\n20,-3.97\n30,-6.02\n40,-8.03\n50,-10.01\n60,-12.00\n70,-13.98\n80,-15.93\n90,-17.84\n";

  @TempDir Path folder;

  private CliRun analyse(String options) throws IOException {
    Path file = folder.resolve("curve.csv");
    Files.writeString(file, GOOD, StandardCharsets.UTF_8);
    List<String> call = new ArrayList<>(List.of("analyse", file.toString()));
    call.addAll(List.of("--profile", "api670-2mm"));
    Arrays.stream(options.split(" +")).filter(o -> !o.isEmpty()).forEach(call::add);
    return CliRun.of(call.toArray(String[]::new));
  }

  private JsonNode json(String options) throws IOException {
    CliRun run = analyse(options + " --json");
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    return JsonMapper.builder().build().readTree(run.out());
  }

  @Test
  void addsItsFieldsAndChangesNoOther() throws IOException {
    JsonNode bare = json("");
    JsonNode full = json("--u-volts 0.01 --u-gap-um 2.54 --u-gap-scale 0.001 --rule guarded");
    for (Iterator<String> names = bare.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!name.equals("points")) {
        assertThat(full.get(name)).as(name).isEqualTo(bare.get(name));
      }
    }
    for (int i = 0; i < 9; i++) {
      ObjectNode point = (ObjectNode) full.get("points").get(i).deepCopy();
      assertThat(bare.get("points").get(i).has("isfDecision")).isFalse();
      point.remove(List.of("isfExpandedUncertainty", "isfConformityProbability", "isfDecision"));
      assertThat(point).isEqualTo(bare.get("points").get(i));
    }
    assertThat(full.get("coverageFactor").asDouble()).isCloseTo(1.95996398454, within(1e-9));
    assertThat(full.get("asfDecision").asText()).isEqualTo("conforms");
    assertThat(full.get("maxDslDecision").asText()).isEqualTo("conforms");
    assertThat(bare.has("coverageFactor")).isFalse();
  }

  /** By hand: √(2(10/254)² + 2(ISF·2.54/254)² + (ISF/1000)²). */
  @Test
  void pointsCarryTheirOwn() throws IOException {
    JsonNode points =
        json("--u-volts 0.01 --u-gap-um 2.54 --u-gap-scale 0.001 --rule guarded").get("points");
    JsonNode first = points.get(0);
    assertThat(first.get("isfExpandedUncertainty").isNull()).isTrue();
    assertThat(first.get("isfDecision").isNull()).isTrue();
    double isf = 205 / 25.4;
    double u =
        Math.sqrt(
            2 * Math.pow(10 / 254.0, 2)
                + 2 * Math.pow(isf * 2.54 / 254, 2)
                + Math.pow(isf / 1000, 2));
    JsonNode third = points.get(2);
    assertThat(third.get("isfExpandedUncertainty").asDouble())
        .isCloseTo(1.959963984540054 * u, within(1e-9));
    assertThat(third.get("isfDecision").asText()).isEqualTo("conforms, not proved");
    assertThat(third.get("isfConformityProbability").asDouble()).isBetween(0.9, 0.975);
    JsonNode simple = json("--u-volts 0.01 --u-gap-um 2.54 --u-gap-scale 0.001").get("points");
    assertThat(simple.get(2).get("isfDecision").asText()).isEqualTo("conforms");
  }

  @ParameterizedTest
  @CsvSource({
    "--u-volts -0.01 --u-gap-um 1 --u-gap-scale 0,       --u-volts, is negative",
    "--u-volts 0 --u-gap-um 0 --u-gap-scale 0,           All uncertainties are zero, at least one",
    "--u-volts abc --u-gap-um 1 --u-gap-scale 0,         --u-volts: 'abc', not a number",
    "--u-volts NaN --u-gap-um 1 --u-gap-scale 0,         'NaN', not a number",
    "--u-volts 0.01 --u-gap-um Infinity --u-gap-scale 0, 'Infinity', micrometres",
    "--u-volts 1e400 --u-gap-um 1 --u-gap-scale 0,       --u-volts, 10 mV is 0.01",
    "--u-volts 10 --u-gap-um 1 --u-gap-scale 0,          larger than, 10 mV is 0.01",
    "--u-volts 0.01 --u-gap-um 1 --u-gap-scale 5,        larger than, 0.1 % is 0.001",
    "--u-volts 0.01 --u-gap-um 1 --rule strict,          'strict', Say simple or guarded",
    "--rule guarded,                                     none was given, --u-volts",
  })
  void badValuesAreRefused(String options, String said, String alsoSaid) throws IOException {
    CliRun run = analyse(options + " --json");
    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(said).contains(alsoSaid).doesNotContain("Exception");
  }

  @ParameterizedTest
  @ValueSource(strings = {"--u-volts 0,01 --u-gap-um 1", "--u-gap-scale 0.001"})
  void whatIsLeftOutIsTold(String options) throws IOException {
    assertThat(json(options).get("uncertaintyRemarks").toString())
        .contains("was not given and counts as zero");
  }

  @Test
  void theTableReadsWell() throws IOException {
    CliRun run = analyse("--u-volts 0.01 --u-gap-um 2.54 --u-gap-scale 0.001 --rule guarded");
    assertThat(run.exit()).isZero();
    assertThat(run.out())
        .contains("Uncertainty (95 %, k = 1.960) and decision by the guarded rule")
        .contains("Budget of the average scale factor")
        .contains("This equipment cannot prove this tolerance")
        .contains("Biggest contributor: gap reading");
  }
}
