package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CauseCommandTest {
  private static final String BASELINE =
      "--baseline-gap-um 1270 --baseline-volts -9.0 --baseline-sensitivity 7.953";
  private static final String FIVE = "cause --system-length 5.0 " + BASELINE;
  private static final String LENGTHS = " --lengths 4.0,4.5,5.0,5.5,6.0";

  @TempDir static Path folder;

  private static CliRun run(String line) {
    return CliRun.of(line.strip().split("\\s+"));
  }

  private static JsonNode json(String line) throws IOException {
    CliRun run = run(line + " --json");
    assertThat(run.exit()).as(run.err()).isEqualTo(Exit.GOOD);
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  private static List<String> names(JsonNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void theDocumentHasItsFields() throws IOException {
    JsonNode document = json(FIVE + " --volts -7.9 --sensitivity 6.968" + LENGTHS);
    assertThat(names(document))
        .contains(
            "causes",
            "lengthProbabilities",
            "lengthFactor",
            "lengthFactorStandardUncertainty",
            "impliedLengthMetres",
            "impliedLengthInterval95",
            "gapMicrometres",
            "gapMicrometresStandardUncertainty",
            "nextMeasurement",
            "warnings");
    JsonNode first = document.get("causes").get(0);
    assertThat(names(first))
        .containsExactly(
            "cause",
            "probability",
            "fittedLengthMetres",
            "regapped",
            "explanation",
            "predictedVolts",
            "predictedSensitivity");
    assertThat(first.get("cause").asText()).isEqualTo("over length");
    assertThat(first.get("fittedLengthMetres").isNumber()).isTrue();
    assertThat(first.get("fittedLengthMetres").asDouble()).isEqualTo(5.5);
    assertThat(first.get("regapped").isBoolean()).isTrue();
    assertThat(document.get("nextMeasurement").asText()).startsWith("Read the markings");
    assertThat(document.get("impliedLengthInterval95")).hasSize(2);
    assertThat(document.get("lengthFactor").asDouble()).isCloseTo(0.89, within(0.02));
    assertThat(document.get("warnings").isArray()).isTrue();
  }

  @Test
  void aDriverOfAnotherLengthHasNoFittedLength() throws IOException {
    JsonNode document = json(FIVE + " --volts -7.9 --sensitivity 6.968");
    document
        .get("causes")
        .forEach(
            cause -> {
              if (cause.get("cause").asText().equals("driver of another system length")) {
                assertThat(cause.get("fittedLengthMetres").isNull()).isTrue();
              }
            });
    assertThat(document.get("causes").findValuesAsText("cause"))
        .contains("driver of another system length", "wet or dirty connector");
  }

  @Test
  void lengthsComeBackAsTheyWereTyped() throws IOException {
    JsonNode document = json(FIVE + " --volts -9 --sensitivity 7.9 --lengths 6.0,5,5.50,4.500");
    assertThat(names(document.get("lengthProbabilities")))
        .containsExactly("6.0", "5", "5.50", "4.500");
  }

  /** The same loop in µm and in mil. */
  @Test
  void theUnitsDontMatter() throws IOException {
    JsonNode metric = json(FIVE + " --volts -9.0 --sensitivity 6.692913385826772 --gap-um 1422.4");
    JsonNode inch =
        json(
            "cause --system-length 5.0 --baseline-gap-mil 50 --baseline-volts -9.0"
                + " --baseline-sensitivity-mv-per-mil 202.0062 --volts -9.0"
                + " --sensitivity-mv-per-mil 170 --gap-mil 56");
    for (int i = 0; i < metric.get("causes").size(); i++) {
      JsonNode one = metric.get("causes").get(i);
      JsonNode other = inch.get("causes").get(i);
      assertThat(other.get("cause")).isEqualTo(one.get("cause"));
      assertThat(other.get("probability").asDouble())
          .isCloseTo(one.get("probability").asDouble(), within(1e-6));
    }
    assertThat(inch.get("impliedLengthMetres").asDouble())
        .isCloseTo(metric.get("impliedLengthMetres").asDouble(), within(1e-6));
  }

  private static final String OWN_MIL =
      "cause --system-length 5.0 --baseline-gap-mil 50 --baseline-volts -9.0"
          + " --baseline-sensitivity-mv-per-mil 202";
  private static final String STATED = FIVE.replace("7.953", "7.874015748");

  private static double width(JsonNode document) {
    JsonNode interval = document.get("impliedLengthInterval95");
    return interval.get(1).asDouble() - interval.get(0).asDouble();
  }

  /**
   * What the trade expects of a 200 mV/mil loop on a 5.0 m driver, −9 V at 50 mil (common practice,
   * no source), in both systems of units: volts and mV/mil, 5.5 m fitted or not, probe moved or
   * not.
   */
  @ParameterizedTest
  @CsvSource({
    "-7.9, 177, over length, 5.5, false",
    "-9.0, 170, over length, 5.5, true",
    "-7.9, 202, gap moved, 5.0, false",
    "-9.0, 202, healthy, 5.0, false"
  })
  void theCheckValuesComeOut(
      double volts, double perMil, String cause, String length, boolean regapped)
      throws IOException {
    String metric = " --volts " + volts + " --sensitivity " + perMil / 25.4 + LENGTHS;
    JsonNode own = json(FIVE + metric);
    JsonNode inch =
        json(OWN_MIL + " --volts " + volts + " --sensitivity-mv-per-mil " + perMil + LENGTHS);
    for (JsonNode document : List.of(own, inch)) {
      JsonNode first = document.get("causes").get(0);
      assertThat(first.get("cause").asText()).isEqualTo(cause);
      assertThat(first.get("regapped").asBoolean()).isEqualTo(regapped);
      assertThat(first.get("fittedLengthMetres").asText()).isEqualTo(length);
      document
          .get("lengthProbabilities")
          .fields()
          .forEachRemaining(
              each ->
                  assertThat(each.getValue().asDouble())
                      .isLessThanOrEqualTo(
                          document.get("lengthProbabilities").get(length).asDouble()));
      assertThat(Double.parseDouble(length))
          .isBetween(
              document.get("impliedLengthInterval95").get(0).asDouble(),
              document.get("impliedLengthInterval95").get(1).asDouble());
      assertThat(names(document.get("lengthProbabilities")))
          .containsExactly("4.0", "4.5", "5.0", "5.5", "6.0");
    }
    assertThat(inch.get("causes").get(0).get("probability").asDouble())
        .isCloseTo(own.get("causes").get(0).get("probability").asDouble(), within(0.01));
    if (cause.equals("over length")) {
      JsonNode stated = json(STATED + metric);
      assertThat(stated.get("causes").get(0).get("cause").asText()).isEqualTo(cause);
      assertThat(stated.get("causes").get(0).get("regapped").asBoolean()).isEqualTo(regapped);
      assertThat(width(stated)).isGreaterThan(width(own));
    }
    assertThat(run(FIVE + metric).out()).startsWith("Likeliest: " + cause);
  }

  @Test
  void aGapKnownByOtherMeansSettlesMuch() throws IOException {
    JsonNode document = json(FIVE + " --volts -9.0 --sensitivity 6.693 --gap-um 1420");
    assertThat(document.get("gapMicrometres").asDouble()).isCloseTo(1420, within(15.0));
    assertThat(document.get("causes").get(0).get("regapped").asBoolean()).isTrue();
  }

  @Test
  void aMonitorReadingBringsInItsSetting() throws IOException {
    String measured = FIVE + " --volts -9.0 --sensitivity 3.98 --measured-at ";
    assertThat(json(measured + "monitor").get("causes").get(0).get("cause").asText())
        .isEqualTo("monitor set to another scale factor");
    assertThat(json(measured + "driver").get("causes").findValuesAsText("cause"))
        .doesNotContain("monitor set to another scale factor");
  }

  @Test
  void theTextSaysWhatToDoAndWhatToMind() {
    CliRun run = run(FIVE + " --volts -9.0 --sensitivity 6.693");
    assertThat(run.exit()).isEqualTo(Exit.GOOD);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .startsWith("Likeliest: over length, 5.5 m fitted, probe moved afterwards (")
        .contains("prove the length, clean and dry the connector")
        .contains("Don't move the probe before that")
        .contains("leave it unprotected")
        .doesNotContain("NaN");
  }

  private static String curve(double... volts) {
    StringBuilder text = new StringBuilder("gap_mil,volts\n");
    for (int i = 0; i < volts.length; i++) {
      text.append(10 * (i + 1)).append(',').append(volts[i]).append('\n');
    }
    return text.toString();
  }

  /** Synthetic: a straight loop, and the same with about half a metre too much. */
  @Test
  void curvesAreTaken() throws IOException {
    Path was = file("was.csv", curve(-1, -3, -5, -7, -9, -11, -13, -15, -17));
    Path is = file("is.csv", curve(-.9, -2.66, -4.42, -6.17, -7.9, -9.6, -11.3, -12.95, -14.6));
    String line = "cause --system-length 5.0 --baseline-curve " + was + " --baseline-gap-mil 50";
    String numbers = " --volts -7.9 --sensitivity-mv-per-mil 172";
    JsonNode without = json(line + numbers);
    JsonNode with = json(line + numbers + " --curve " + is);
    assertThat(without.get("causes").get(0).get("cause").asText()).isEqualTo("over length");
    assertThat(with.get("causes").get(0).get("cause").asText()).isEqualTo("over length");
    assertThat(with.get("lengthFactorStandardUncertainty").asDouble())
        .isLessThan(without.get("lengthFactorStandardUncertainty").asDouble());
    assertThat(json(line.replace(" --baseline-gap-mil 50", "") + numbers)).isEqualTo(without);
  }

  /** 2 % of a travel of 1132 µm are 22.6 µm. */
  @Test
  void oneGapForBothChangesNothing() throws IOException {
    String numbers = FIVE + " --volts -7.9 --sensitivity 6.968";
    assertThat(json(numbers + " --sensitivity-gap-um 900")).isEqualTo(json(numbers));
    assertThat(json(numbers + " --gap-um 1270 --sensitivity-gap-um 1292"))
        .isEqualTo(json(numbers + " --gap-um 1270"));
    CliRun apart = run(numbers + " --gap-um 1270 --sensitivity-gap-um 1293");
    assertThat(apart.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(apart.err()).contains("take the sensitivity again");
  }

  @Test
  void numbersThatDontLieOnThePresentCurveAreAskedAbout() throws IOException {
    Path was = file("right.csv", curve(-1, -3, -5, -7, -9, -11, -13, -15, -17));
    JsonNode document =
        json(FIVE + " --volts -9.0 --sensitivity 6.5 --curve " + was + " --baseline-curve " + was);
    assertThat(document.get("warnings").toString()).contains("taken at the same gap");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--volts -7.9 | --sensitivity is missing. Gap voltage alone",
        "--sensitivity 6.9 | --volts is missing. Give",
        "--volts 7.9 --sensitivity 6.9 | --volts: 7.9 V is positive",
        "--volts -7900 --sensitivity 6.9 | If these are millivolts",
        "--volts -26 --sensitivity 6.9 | --volts: -26 V is more than a supply",
        "--volts abc --sensitivity 6.9 | --volts: \"abc\" is not a number",
        "--volts -7.9 --sensitivity 0 | --sensitivity: 0 is not above zero",
        "--volts -7.9 --sensitivity -6.9 | --sensitivity: -6.9 is not above zero",
        "--volts -7.9 --sensitivity 200 | If it is in mV/mil",
        "--volts -7.9 --sensitivity-mv-per-mil 7.1 | mixed up",
        "--volts -7.9 --sensitivity 6.9 --sensitivity-mv-per-mil 177 | Give one of them",
        "--volts -7.9 --sensitivity NaN | is not a number",
        "--volts -7.9 --sensitivity 6.9 --sensitivity-gap-um x | --sensitivity-gap-um: \"x\" is not",
        "--volts -7.9 --sensitivity 6.9 --gap-um 1270 --sensitivity-gap-um 1300 | at the gap of the volts",
        "--volts -7.9 --sensitivity 6.9 --gap-mil 50 --sensitivity-gap-mil 48.7 | --sensitivity-gap-mil",
        "--volts -7.9 --sensitivity 6.9 --gap-um 0 | --gap-um: 0 µm is no gap",
        "--volts -7.9 --sensitivity 6.9 --gap-mil 99999 | --gap-mil: 99999 mil is no gap",
        "--volts -7.9 --sensitivity 6.9 --u-volts 0 | --u-volts: 0 is not above zero",
        "--volts -7.9 --sensitivity 6.9 --u-volts 50 | --u-volts: 50 is larger",
        "--volts -7.9 --sensitivity 6.9 --u-sensitivity 1.5 | 1.5 % is 0.015",
        "--volts -7.9 --sensitivity 6.9 --lengths 5.0,x | --lengths: \"x\" is not a number",
        "--volts -7.9 --sensitivity 6.9 --lengths 5.0,-1 | --lengths: -1 m is no total length",
        "--volts -7.9 --sensitivity 6.9 --lengths 5.0,,6.0 | --lengths: \"\" is not a number",
        "--volts -7.9 --sensitivity 6.9 --lengths 5.0,9.0 | beyond the model",
        "--volts -7.9 --sensitivity 6.9 --lengths 5.0,5.5,5.50 | stands twice",
        "--volts -7.9 --sensitivity 6.9 --measured-at home | Say driver, barrier, rack, monitor",
        "--volts -7.9 --sensitivity 6.9 --curve nowhere.csv | nowhere.csv",
        "--volts -7.9 --sensitivity 6.9 --baseline-curve nowhere.csv | nowhere.csv"
      })
  void whatCantBeMeantIsAskedBack(String measured, String message) {
    CliRun run = run(FIVE + " " + measured);
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--baseline-gap-um 1270 --baseline-volts -9.0 --baseline-sensitivity 7.9 | --system-length",
        "--system-length 400 --baseline-gap-um 1270 | --system-length: 400 m is no total length",
        "--system-length -5 --baseline-gap-um 1270 | --system-length: -5 m is no total length",
        "--system-length 5 --baseline-volts -9 --baseline-sensitivity 7.9 | --baseline-gap-um is missing",
        "--system-length 5 --baseline-gap-um 1270 --baseline-sensitivity 7.9 | --baseline-volts is missing",
        "--system-length 5 --baseline-gap-um 1270 --baseline-volts -9 | --baseline-sensitivity is missing",
        "--system-length 5 --baseline-gap-um 50 --baseline-volts -9 --baseline-sensitivity 7.9 | Check the units",
        "--system-length 5 --baseline-gap-um 1270 --baseline-volts -9 --baseline-sensitivity 0.31 | Check the units",
        "--system-length 5 --baseline-gap-um 1270 --baseline-volts 0 --baseline-sensitivity 7.9 | no output of a healthy loop",
        "--system-length 5 --baseline-gap-um 1270 --baseline-gap-mil 50 | Give one of them"
      })
  void aBaselineIsAskedBackToo(String baseline, String message) {
    CliRun run = run("cause " + baseline + " --volts -7.9 --sensitivity 6.9");
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(message);
  }

  @Test
  void aCurveThatCantBeABaselineIsRefused() throws IOException {
    Path turning = file("turning.csv", curve(-1, -3, -5, -4.9, -9, -11));
    Path words = file("words.csv", "gap_um,volts\n250,x\n500,-3\n750,-5\n");
    Path other = file("other.csv", "height,weight\n1,2\n");
    Path binary = Files.write(folder.resolve("binary.csv"), new byte[] {0, 1, 2, (byte) 0xff});
    String line = FIVE + " --volts -7.9 --sensitivity 6.9 --baseline-curve ";
    for (Path file : List.of(turning, words, other, binary)) {
      CliRun run = run(line + file);
      assertThat(run.exit()).as(file.toString()).isEqualTo(Exit.UNUSABLE);
      assertThat(run.out()).isEmpty();
      assertThat(run.err()).contains(file.getFileName().toString());
    }
    assertThat(run(line + turning).err()).contains("doesn't fall");
    assertThat(run(line + words).err()).contains("--baseline-curve").contains("row 2");
  }

  @Test
  void aGapOffTheCurveIsRefused() throws IOException {
    Path was = file("short.csv", curve(-1, -3, -5));
    CliRun run =
        run(
            "cause --system-length 5 --volts -7.9 --sensitivity 6.9 --baseline-gap-um 1270"
                + " --baseline-curve "
                + was);
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("lies outside");
  }

  /** Odd but possible: an answer with numbers in it, never a crash. */
  @ParameterizedTest
  @CsvSource({
    "--volts 0 --sensitivity 0.001",
    "--volts -24 --sensitivity 39",
    "--volts -0.7 --sensitivity 1e-300",
    "--volts -9 --sensitivity 7.9 --u-volts 1e-300 --u-sensitivity 1e-300",
    "--volts -9 --sensitivity 7.9 --u-volts 2 --u-sensitivity 0.3",
    "--volts -9 --sensitivity 7.9 --gap-um 59999",
    "--volts -9 --sensitivity 7.9 --lengths 4,5;5;5,5",
    "--volts -9 --sensitivity 7.9 --lengths 5.5"
  })
  void oddNumbersGetAnAnswer(String measured) throws IOException {
    for (String system : List.of("0.5", "5", "50")) {
      String line = FIVE.replace("5.0", system) + " " + measured;
      if (measured.contains("--lengths") && !system.equals("5")) {
        continue;
      }
      JsonNode document = json(line);
      assertThat(document.toString()).doesNotContain("NaN").doesNotContain("Infinity");
      assertThat(document.get("causes").get(0).get("probability").asDouble()).isBetween(0.05, 1.0);
    }
    assertThat(run(FIVE + " " + measured).out()).doesNotContain("NaN");
  }

  @Test
  void aFolderIsNoCurve() {
    CliRun run = run(FIVE + " --volts -9 --sensitivity 7.9 --curve " + folder);
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
  }

  @Test
  void aSystemOfOneMetreHasNoHalfMetreToTell() throws IOException {
    JsonNode document =
        json("cause --system-length 1 " + BASELINE + " --volts -9 --sensitivity 7.9");
    assertThat(names(document.get("lengthProbabilities"))).containsExactly("1.0");
  }
}
