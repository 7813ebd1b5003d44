package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnalyseCommandTest {
  private static final String GOOD =
      "gap_mil,volts\n10,-1.93\n20,-3.97\n30,-6.02\n40,-8.03\n50,-10.01\n60,-12.00\n70,-13.98\n80,-15.93\n90,-17.84\n";
  private static final String LONG =
      "gap_mil,volts\n10,-1.65\n20,-3.53\n30,-5.37\n40,-7.17\n50,-8.92\n60,-10.61\n70,-12.23\n80,-13.77\n90,-15.24\n";

  @TempDir Path folder;

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("curve.csv"), text, StandardCharsets.UTF_8);
  }

  private CliRun analyse(String text, String... more) throws IOException {
    List<String> call = new ArrayList<>(List.of("analyse", file(text).toString()));
    call.addAll(List.of("--profile", "api670-2mm"));
    call.addAll(List.of(more));
    return CliRun.of(call.toArray(String[]::new));
  }

  private static JsonNode json(CliRun run) throws IOException {
    return JsonMapper.builder()
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .build()
        .readTree(run.out());
  }

  @Test
  void aGoodCurveConforms() throws IOException {
    CliRun run = analyse(GOOD, "--json");
    assertThat(run.exit()).isZero();
    assertThat(run.err()).isEmpty();
    JsonNode curve = json(run);
    assertThat(curve.get("profile").asText()).isEqualTo("api670-2mm");
    assertThat(curve.get("verdict").asText()).isEqualTo("conforms");
    assertThat(curve.get("points")).hasSize(9);
    JsonNode first = curve.get("points").get(0);
    assertThat(first.get("gapMicrometres").asDouble()).isEqualTo(254);
    assertThat(first.get("volts").asDouble()).isEqualTo(-1.93);
    assertThat(first.get("isf").isNull()).isTrue();
    assertThat(first.get("deviationMicrometres").asDouble()).isCloseTo(0.635, within(1e-9));
    assertThat(first.get("run").asText()).isEqualTo("up");
    assertThat(curve.get("asf").asDouble()).isCloseTo(198.875 / 25.4, within(1e-12));
    assertThat(curve.get("leastSquaresSlope").asDouble())
        .isCloseTo(199.0166666666667 / 25.4, within(1e-12));
    assertThat(curve.get("leastSquaresSlopeStandardError").asDouble()).isPositive();
    assertThat(curve.get("maxDsl").asDouble()).isCloseTo(12.065, within(1e-9));
    assertThat(curve.get("linearRange").get("fromMicrometres").asDouble()).isEqualTo(254);
    assertThat(curve.get("linearRange").get("toMicrometres").asDouble()).isEqualTo(2286);
    assertThat(curve.get("midRangeGapMicrometres").asDouble()).isEqualTo(1270);
    assertThat(curve.get("midRangeVolts").asDouble()).isEqualTo(-10.01);
    assertThat(curve.get("isfTrend").asText()).isEqualTo("falls");
    assertThat(curve.get("findings").isArray()).isTrue();
  }

  @Test
  void aCurveThatDoesNotConformEndsWithOne() throws IOException {
    CliRun run = analyse(LONG, "--json");
    assertThat(run.exit()).isEqualTo(1);
    JsonNode curve = json(run);
    assertThat(curve.get("verdict").asText()).isEqualTo("does not conform");
    assertThat(curve.get("linearRange").isNull()).isTrue();
    assertThat(curve.get("findings")).hasSizeGreaterThan(2);
  }

  @Test
  void peopleGetATableWithUnits() throws IOException {
    CliRun run = analyse(LONG);
    assertThat(run.exit()).isEqualTo(1);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .startsWith("Does not conform to api670-2mm")
        .contains("ISF, mV/mil", "deviation, mil", "output, V", "190.0 mV/mil to 210.0 mV/mil")
        .contains("     90.00    -15.240          147.0          6.025")
        .contains("as with more cable than the driver is tuned for");
    assertThat(analyse(metric(GOOD)).out()).contains("ISF, mV/µm", "2286.0    -17.840");
  }

  private static String metric(String inch) {
    StringBuilder text = new StringBuilder("gap_um;volts\n");
    inch.lines()
        .skip(1)
        .map(line -> line.split(","))
        .forEach(
            cells ->
                text.append(Integer.parseInt(cells[0]) / 10 * 254)
                    .append(';')
                    .append(cells[1].replace('.', ','))
                    .append('\n'));
    return text.toString();
  }

  @Test
  void twoRunsAndMillivoltsInAnyOrder() throws IOException {
    StringBuilder text = new StringBuilder("run,millivolts,gap_um\n");
    for (int gap = 2250; gap >= 250; gap -= 250) {
      text.append("up,").append(-gap * 200 / 25.4).append(',').append(gap).append('\n');
      text.append("down,").append(-gap * 190 / 25.4).append(',').append(gap).append('\n');
    }
    CliRun run = analyse(text.toString(), "--json");
    JsonNode curve = json(run);
    assertThat(run.exit()).isEqualTo(1);
    assertThat(curve.get("points")).hasSize(18);
    assertThat(curve.get("points").get(9).get("run").asText()).isEqualTo("down");
    assertThat(curve.get("points").get(9).get("isf").isNull()).isTrue();
    assertThat(curve.get("asf").asDouble()).isCloseTo(190 / 25.4, within(1e-12));
    assertThat(curve.get("runs").get(0).get("verdict").asText()).isEqualTo("conforms");
    assertThat(curve.get("runs").get(1).get("isfVerdict").asText()).isEqualTo("conforms");
    assertThat(curve.get("runs").get(1).get("dslVerdict").asText()).isEqualTo("does not conform");
    assertThat(curve.get("hysteresisMicrometres").asDouble()).isCloseTo(112.5, within(1e-9));
  }

  @Test
  void positiveVoltsAreMagnitudesWithAFinding() throws IOException {
    JsonNode curve = json(analyse(GOOD.replace("-", ""), "--json"));
    assertThat(curve.get("verdict").asText()).isEqualTo("conforms");
    assertThat(curve.get("points").get(8).get("volts").asDouble()).isEqualTo(-17.84);
    assertThat(curve.get("findings").get(0).asText()).contains("magnitudes");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      two points        | gap_um,volts\\n250,-2\\n2250,-18                     | curve.csv, row 2: the up run has 2 readings
      text              | gap_um,volts\\n250,-2\\n500,-4\\n750,six             | curve.csv, row 4, column volts: 'six' is not a number
      empty cell        | gap_um,volts\\n250,-2\\n500,\\n750,-6                | curve.csv, row 3, column volts: the cell is empty
      repeated gap      | gap_um,volts\\n250,-2\\n250,-4\\n750,-6              | curve.csv, row 3, column gap_um: the gap 250 µm stands twice in the up run, first in row 2
      mixed signs       | gap_um,volts\\n250,-2\\n500,4\\n750,-6               | curve.csv, row 3, column volts: 4 V is positive
      impossible        | gap_um,millivolts\\n250,-2000\\n500,-31000\\n750,-6  | curve.csv, row 3, column millivolts: -31000 mV is more than a loop can give
      mil as µm         | gap_um,volts\\n10,-2\\n20,-4\\n30,-6\\n90,-18        | say mil, not µm
      wrong run         | gap_um,volts,run\\n250,-2,up\\n500,-4,upp\\n750,-6,up | curve.csv, row 3, column run: 'upp' is not a run
      unknown heading   | gap_um,volt\\n250,-2                                 | Did you mean 'volts'?
      no gap            | volts\\n-2                                           | Give either gap_um or gap_mil
      two gaps          | gap_um,gap_mil,volts\\n250,10,-2                     | say the same thing
      only headings     | gap_um,volts                                         | there are no readings
      """)
  void unusableFilesEndWithTwoAndNameThePlace(String name, String text, String message)
      throws IOException {
    for (String[] more : new String[][] {{}, {"--json"}}) {
      CliRun run = analyse(text.replace("\\n", "\n"), more);
      assertThat(run.exit()).isEqualTo(2);
      assertThat(run.out()).isEmpty();
      assertThat(run.err()).contains(message).contains("curve.csv");
    }
  }

  @Test
  void anUnknownProfileNamesTheNearest() throws IOException {
    CliRun run = CliRun.of("analyse", file(GOOD).toString(), "--profile", "API670-2m", "--json");
    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("no profile 'API670-2m'", "Did you mean 'api670-2mm'?");
  }

  @Test
  void wrongCallsAndMissingFilesEndWithTwo() throws IOException {
    assertThat(CliRun.of("analyse").exit()).isEqualTo(2);
    assertThat(CliRun.of("analyse", file(GOOD).toString()).err()).contains("--profile");
    CliRun missing = CliRun.of("analyse", "nowhere.csv", "--profile", "api670-2mm");
    assertThat(missing.exit()).isEqualTo(2);
    assertThat(missing.err()).contains("nowhere.csv");
    byte[] binary = {'P', 'K', 3, 4, 0};
    Path picture = Files.write(folder.resolve("picture.csv"), binary);
    CliRun run = CliRun.of("analyse", picture.toString(), "--profile", "api670-2mm");
    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.err()).contains("not a text file");
  }
}
