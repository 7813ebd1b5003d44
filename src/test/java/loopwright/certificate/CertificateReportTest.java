package loopwright.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Conditions;
import loopwright.calibration.Evidence;
import loopwright.calibration.Setup;
import loopwright.calibration.Stage;
import loopwright.curve.BuiltInProfiles;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Run;
import loopwright.register.ProfileTerms;
import loopwright.register.TemperatureRange;
import loopwright.register.ToleranceProfiles;
import loopwright.signing.Signature;
import loopwright.uncertainty.CurveUncertainty;
import loopwright.uncertainty.DecisionRule;
import loopwright.uncertainty.Distribution;
import loopwright.uncertainty.ErrorSource;
import loopwright.uncertainty.Quantity;
import loopwright.uncertainty.Spread;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every number that a certificate prints about results is worked out again from the raw points by
 * {@link SecondOpinion}; then the PDF is read back and must hold every word of the report.
 */
class CertificateReportTest {
  private static final double SLOPE = 200 / 25.4;
  private static final String[] UP = {
    "-2.013", "-4.021", "-6.037", "-8.052", "-10.061", "-12.083", "-14.101", "-16.124", "-18.150"
  };
  private static final String[] DOWN = {
    "-2.020", "-4.030", "-6.044", "-8.060", "-10.070", "-12.090", "-14.109", "-16.130", "-18.150"
  };
  private static final double REPEATABILITY = 0.0053;

  private static List<ErrorSource> sources() {
    return List.of(
        ErrorSource.known("DVM-1: certificate", Quantity.VOLTS, Spread.EACH_READING, 0.004),
        ErrorSource.known("MIC-1: certificate", Quantity.GAP, Spread.EACH_READING, 0.9),
        ErrorSource.known("MIC-1: scale", Quantity.GAP, Spread.SAME_SHARE, 0.0012),
        new ErrorSource(
            "MIC-1: resolution",
            Quantity.GAP,
            Spread.EACH_READING,
            Distribution.RECTANGULAR,
            0.5 / Math.sqrt(3),
            Double.POSITIVE_INFINITY),
        new ErrorSource(
            "repeatability, up and down",
            Quantity.VOLTS,
            Spread.EACH_READING,
            Distribution.NORMAL,
            REPEATABILITY,
            9));
  }

  private static List<SecondOpinion.Source> again() {
    double known = Double.POSITIVE_INFINITY;
    return List.of(
        new SecondOpinion.Source("DVM-1: certificate", false, false, 0.004, known),
        new SecondOpinion.Source("MIC-1: certificate", true, false, 0.9, known),
        new SecondOpinion.Source("MIC-1: scale", true, true, 0.0012, known),
        new SecondOpinion.Source("MIC-1: resolution", true, false, 0.5 / Math.sqrt(3), known),
        new SecondOpinion.Source("repeatability, up and down", false, false, REPEATABILITY, 9));
  }

  private static List<CurveReading> readings(Run run, String... volts) {
    List<CurveReading> readings = new ArrayList<>();
    for (String typed : volts) {
      readings.add(
          CurveReading.of(
              run,
              Reported.read(Integer.toString(10 * (readings.size() + 1)), Unit.MIL).orElseThrow(),
              Reported.read(typed, Unit.VOLT).orElseThrow()));
    }
    return readings;
  }

  private static CertificateReport.Subject subject(Stage stage, String number, boolean signed) {
    return subject(stage, number, signed, "70", Optional.empty());
  }

  private static CertificateReport.Subject subject(
      Stage stage,
      String number,
      boolean signed,
      String fahrenheit,
      Optional<TemperatureRange> range) {
    Curve curve =
        new Curve(
            Stream.concat(readings(Run.UP, UP).stream(), readings(Run.DOWN, DOWN).stream())
                .toList());
    ToleranceProfiles.Stored judgedBy =
        new ToleranceProfiles.Stored(
            1,
            BuiltInProfiles.named("api670-2mm").orElseThrow(),
            new ProfileTerms(DecisionRule.guarded(), true, range, Optional.empty()));
    CurveResult result = CurveAnalysis.of(curve, judgedBy.profile());
    Evidence evidence =
        new Evidence(
            record(stage, number),
            curve.readings(),
            Optional.of(judgedBy),
            Optional.of(curve),
            Optional.of(result),
            Optional.of(CurveUncertainty.of(result, sources(), DecisionRule.guarded())),
            "",
            List.of(),
            List.of(),
            "ab".repeat(32),
            Optional.empty(),
            new Conditions(
                Reported.read(fahrenheit, Unit.FAHRENHEIT),
                Reported.read("5", Unit.MICROMETRE),
                "CP-7, edition 3"));
    List<Signature> signatures =
        signed
            ? List.of(
                new Signature(
                    1, "technician", 1, "T. Echnician", Instant.EPOCH, 1, "examined", "ab", ""))
            : List.of();
    return new CertificateReport.Subject(
        evidence, List.of("probe P-1", "driver D-1"), ", Blower, T-100", signatures);
  }

  private static Calibrated record(Stage stage, String number) {
    return new Calibrated(
        1,
        number,
        "probe:1/driver:2#1",
        Setup.FITTED,
        1L,
        "V-1",
        stage,
        Instant.parse("2026-02-20T08:00:00Z"),
        "T. Echnician",
        "mechanical touch",
        "4140",
        "conforms",
        null,
        "1",
        1L,
        new Calibrated.Numbers(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            null),
        List.of(),
        "entered",
        "T. Echnician",
        Instant.parse("2026-02-20T09:00:00Z"),
        "outage");
  }

  private static final CertificateReport.Origin ORIGIN =
      new CertificateReport.Origin(
          Optional.of("https://loops.example/calibrations/C-1"), "printed 2026-03-01 by A. Body");

  private static Report report() {
    return new CertificateReport(ZoneId.of("UTC"), Unit.MICROMETRE)
        .single(subject(Stage.AS_FOUND, "C-1", true), ORIGIN);
  }

  private static double[] numbers(String... typed) {
    return Arrays.stream(typed).mapToDouble(Double::parseDouble).toArray();
  }

  private static SecondOpinion second(String... volts) {
    double[] gaps = new double[volts.length];
    Arrays.setAll(gaps, i -> 254.0 * (i + 1));
    return new SecondOpinion(gaps, numbers(volts), SLOPE, again());
  }

  /** The run that uses up more of its tightest limit: ±5 % or 25.4 µm. */
  private static SecondOpinion worse() {
    return use(second(UP)) >= use(second(DOWN)) ? second(UP) : second(DOWN);
  }

  private static double use(SecondOpinion run) {
    double isf = 0;
    for (int i = 1; i < 9; i++) {
      isf =
          Math.max(isf, Math.abs(SecondOpinion.isf(run.gaps(), run.volts(), i) / SLOPE - 1) / 0.05);
    }
    return Math.max(isf, run.largestDeviation(run.gaps(), run.volts()) / 25.4);
  }

  private static String f(String pattern, double number) {
    return String.format(Locale.ROOT, pattern, number).replace('-', '−');
  }

  private static String slope(double s) {
    return f("%.4f", s) + " mV/µm (" + f("%.2f", s * 25.4) + " mV/mil)";
  }

  private static String gap(double um) {
    return f("%.2f", um) + " µm (" + f("%.3f", um / 25.4) + " mil)";
  }

  private static String three(double number) {
    return new BigDecimal(number).round(new MathContext(3)).toPlainString();
  }

  private static <T> List<T> all(Report report, Class<T> kind) {
    return report.sections().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  @Test
  void everyReadingIsRecomputed() {
    List<List<String>> expected = new ArrayList<>();
    expected.addAll(rows("up", UP));
    expected.addAll(rows("down", DOWN));
    assertThat(all(report(), Report.Table.class).get(0).rows()).isEqualTo(expected);
  }

  private static List<List<String>> rows(String name, String... volts) {
    SecondOpinion run = second(volts);
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < volts.length; i++) {
      double isf = i == 0 ? 0 : SecondOpinion.isf(run.gaps(), run.volts(), i);
      double deviation = run.deviations()[i];
      rows.add(
          List.of(
              name,
              10 * (i + 1) + " mil",
              f("%.2f", run.gaps()[i]),
              f("%.3f", run.gaps()[i] / 25.4),
              volts[i] + " V",
              i == 0 ? "" : f("%.4f", isf),
              i == 0 ? "" : f("%.2f", isf * 25.4),
              i == 0 ? "" : f("%.4f", run.statedIsf(i).expanded()),
              i == 0 ? "" : f("%.2f", run.statedIsf(i).expanded() * 25.4),
              f("%+.2f", deviation),
              f("%+.3f", deviation / 25.4),
              i == 0 ? "–; within" : "conforms; within"));
    }
    return rows;
  }

  @Test
  void everyResultIsRecomputed() {
    assertThat(told(report(), 1)).isEqualTo(results());
  }

  private static List<String> told(Report report, int which) {
    return all(report, Report.Facts.class).get(which).facts().stream()
        .map(fact -> fact.name() + ": " + fact.text())
        .toList();
  }

  private static List<String> results() {
    SecondOpinion run = worse();
    SimpleRegression line = SecondOpinion.regression(run.gaps(), run.volts());
    double worst = 0;
    for (int i = 1; i < 9; i++) {
      double percent = 100 * (SecondOpinion.isf(run.gaps(), run.volts(), i) / SLOPE - 1);
      worst = Math.abs(percent) > Math.abs(worst) ? percent : worst;
    }
    double apart = 0;
    for (int i = 0; i < 9; i++) {
      apart = Math.max(apart, Math.abs(numbers(UP)[i] - numbers(DOWN)[i]) * 1000 / SLOPE);
    }
    return List.of(
        "Average scale factor: " + slope(SecondOpinion.asf(run.gaps(), run.volts())),
        "Least-squares slope: "
            + slope(line.getSlope())
            + ", standard error "
            + three(line.getSlopeStdErr())
            + " mV/µm ("
            + three(line.getSlopeStdErr() * 25.4)
            + " mV/mil)",
        "Worst ISF: " + f("%+.2f %%", worst) + " of nominal",
        "Largest DSL: " + gap(run.largestDeviation(run.gaps(), run.volts())),
        "Up to down: " + gap(apart),
        "Linear range: " + gap(254) + " to " + gap(2286),
        "Mid-range gap: " + gap(1270) + ", " + f("%.3f", run.volts()[4]) + " V there (guidance)");
  }

  @Test
  void everyStatementIsRecomputed() {
    assertThat(all(report(), Report.Table.class).get(1).rows()).isEqualTo(statements());
  }

  private static List<List<String>> statements() {
    SecondOpinion run = worse();
    double low = SLOPE * 0.95;
    double high = SLOPE * 1.05;
    SecondOpinion.Stated least = run.statedIsf(1);
    for (int i = 2; i < 9; i++) {
      SecondOpinion.Stated isf = run.statedIsf(i);
      least = isf.probability(low, high) < least.probability(low, high) ? isf : least;
    }
    String limits =
        "%s to %s mV/µm (190.00 to 210.00 mV/mil)".formatted(f("%.4f", low), f("%.4f", high));
    return List.of(
        stated("ISF, least sure", least, true, limits, least.probability(low, high)),
        stated("ASF", run.statedAsf(), true, limits, run.statedAsf().probability(low, high)),
        stated(
            "DSL",
            run.statedDsl(),
            false,
            "at most " + gap(25.4),
            run.statedDsl().probability(Double.NEGATIVE_INFINITY, 25.4)));
  }

  private static List<String> stated(
      String name, SecondOpinion.Stated stated, boolean slope, String limits, double p) {
    return List.of(
        name,
        slope ? slope(stated.value()) : gap(stated.value()),
        slope ? slope(stated.expanded()) : gap(stated.expanded()),
        f("%.2f", stated.k()),
        limits,
        p > 0.9995 ? "above 0.999" : f("%.3f", p),
        "conforms");
  }

  @Test
  void everyBudgetIsRecomputed() {
    List<Report.Table> tables = all(report(), Report.Table.class);
    assertThat(tables).hasSize(4);
    assertThat(numbersOf(tables.get(2))).isEqualTo(budget(worse().statedAsf()));
    assertThat(numbersOf(tables.get(3))).isEqualTo(budget(worse().statedDsl()));
  }

  /** Without the column of words about distributions. */
  private static List<List<String>> numbersOf(Report.Table table) {
    return table.rows().stream()
        .map(row -> Stream.concat(row.stream().limit(1), row.stream().skip(2)).toList())
        .toList();
  }

  private static List<List<String>> budget(SecondOpinion.Stated stated) {
    List<List<String>> rows = new ArrayList<>();
    List<SecondOpinion.Source> sources = again();
    for (int i = 0; i < sources.size(); i++) {
      SecondOpinion.Source source = sources.get(i);
      double part = stated.contributions()[i];
      String unit = source.share() ? "1" : source.inGap() ? "µm" : "V";
      rows.add(
          List.of(
              source.name(),
              three(source.u()) + " " + unit,
              three(part / source.u()),
              three(part),
              f("%.0f %%", 100 * part * part / (stated.u() * stated.u())),
              Double.isInfinite(source.degrees()) ? "infinite" : f("%.0f", source.degrees())));
    }
    String degrees = stated.degrees() > 9999 ? "infinite" : f("%.0f", Math.floor(stated.degrees()));
    rows.add(List.of("combined", "", "", three(stated.u()), "", degrees));
    rows.add(
        List.of(
            "expanded, k = " + f("%.2f", stated.k()), "", "", three(stated.expanded()), "", ""));
    return rows;
  }

  /** 113 °F is 45 °C and still inside; the verdict never stands without what it holds for. */
  @ParameterizedTest
  @CsvSource({"113, Result: conforms (pass)", "114, at a temperature the limits are not for"})
  void aTemperatureOutsideTheProfileStandsInTheVerdict(String fahrenheit, String heading) {
    TemperatureRange range = new TemperatureRange(BigDecimal.ZERO, BigDecimal.valueOf(45));
    Report report =
        new CertificateReport(ZoneId.of("UTC"), Unit.MICROMETRE)
            .single(subject(Stage.AS_FOUND, "C-1", true, fahrenheit, Optional.of(range)), ORIGIN);
    assertThat(all(report, Report.Heading.class).get(0).text()).endsWith(heading);
    boolean outside = fahrenheit.equals("114");
    assertThat(told(report, 0).stream().anyMatch(line -> line.startsWith("Limits: Taken at 114")))
        .isEqualTo(outside);
  }

  private static final Pattern NUMBER = Pattern.compile("[+−]?\\d+(?:\\.\\d+)?");

  private static Set<String> numbersIn(Stream<String> texts) {
    return texts
        .flatMap(text -> NUMBER.matcher(text).results().map(MatchResult::group))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The sentence about up and down, of a curve typed in mil. */
  private static String hysteresis() {
    double most = 0;
    double at = 0;
    for (int i = 0; i < 9; i++) {
      double apart = Math.abs(numbers(UP)[i] - numbers(DOWN)[i]) * 1000;
      if (apart > most) {
        most = apart;
        at = 10 * (i + 1);
      }
    }
    return f("%.0f", most)
        + " "
        + new BigDecimal(most / SLOPE / 25.4)
            .setScale(2, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString()
        + " "
        + f("%.0f", at);
  }

  /**
   * Whatever number stands on the paper is one that was typed, one of the profile or of a cited
   * document, or one worked out here again: none comes from elsewhere.
   */
  @Test
  void everyNumberPrintedIsAccountedFor() {
    Report pair =
        new CertificateReport(ZoneId.of("UTC"), Unit.MIL)
            .pair(
                subject(Stage.AS_FOUND, "C-1", true), subject(Stage.AS_LEFT, "C-2", true), ORIGIN);
    List<String> again = new ArrayList<>(results());
    again.addAll(List.of(hysteresis(), "K 1.96 95 % JCGM 100:2008 106:2012", "C-1 C-2 P-1 D-1"));
    Stream.of(rows("up", UP), rows("down", DOWN), statements())
        .forEach(table -> table.forEach(again::addAll));
    Stream.of(budget(worse().statedAsf()), budget(worse().statedDsl()))
        .forEach(table -> table.forEach(again::addAll));
    double celsius = (70 - 32) / 1.8;
    again.add("2026-02-20 08:00 V-1 T-100 4140 A-1 1970-01-01 00:00 DVM-1 MIC-1");
    again.add("70 °F " + f("%.1f", celsius) + " °C, 5 µm " + three(5 / 25.4) + " mil CP-7 3");
    again.add("2 mm at 200 mV/mil, 0 to 45 °C, version 1, API Std 670, 4th 2000 5th 2014 ±5 25.4");
    again.add("analysis version " + CurveAnalysis.ANALYSIS_VERSION + " SHA-256");
    Set<String> unaccounted =
        numbersIn(pair.sections().stream().flatMap(CertificateReportTest::words));
    unaccounted.removeAll(numbersIn(again.stream()));
    assertThat(unaccounted).isEmpty();
    assertThat(told(pair, 1)).as("of the as found").isEqualTo(results());
    assertThat(told(pair, 3)).as("of the as left").isEqualTo(results());
    List<List<String>> compared = all(pair, Report.Table.class).get(0).rows();
    assertThat(compared.stream().skip(2).map(row -> row.get(0) + ": " + row.get(1)))
        .isEqualTo(results());
    assertThat(compared.stream().skip(2).map(row -> row.get(0) + ": " + row.get(2)))
        .isEqualTo(results());
  }

  private static Stream<String> words(Report.Section section) {
    if (section instanceof Report.Heading heading) {
      return Stream.of(heading.text());
    }
    if (section instanceof Report.Words words) {
      return words.sentences().stream();
    }
    if (section instanceof Report.Facts facts) {
      return facts.facts().stream().flatMap(fact -> Stream.of(fact.name(), fact.text()));
    }
    if (section instanceof Report.Table table) {
      return Stream.concat(
          table.columns().stream().map(Report.Column::title),
          table.rows().stream().flatMap(List::stream));
    }
    return Stream.empty();
  }

  private static String bare(String text) {
    return text.replaceAll("\\s+", "");
  }

  private static void holdsEverything(Report report, PDDocument pdf) throws IOException {
    List<TextPosition> outside = new ArrayList<>();
    PDFTextStripper reader =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition text) {
            boolean inside =
                text.getXDirAdj() >= 40
                    && text.getXDirAdj() + text.getWidthDirAdj() <= 596 - 40
                    && text.getYDirAdj() >= 30
                    && text.getYDirAdj() <= 842 - 30;
            if (!inside) {
              outside.add(text);
            }
            super.processTextPosition(text);
          }
        };
    String all = bare(reader.getText(pdf));
    assertThat(outside).as("nothing is cut at the edges").isEmpty();
    List<String> missing =
        report.sections().stream()
            .flatMap(CertificateReportTest::words)
            .flatMap(text -> Arrays.stream(text.split("\\s+")))
            .filter(word -> !all.contains(word))
            .toList();
    assertThat(missing).isEmpty();
    assertThat(all).contains(bare("page 1 of " + pdf.getNumberOfPages()), "Endofthedocument.");
  }

  @Test
  void thePdfHoldsAllOfItWithItsFontsAndProperties() throws IOException {
    Report report = report();
    byte[] bytes = CertificateDocument.pdf(report, Instant.parse("2026-03-01T10:00:00Z"));
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      holdsEverything(report, pdf);
      assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo("Calibration certificate C-1");
      for (PDPage page : pdf.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
        }
        assertThat(page.getResources().getXObjectNames()).as("no picture made of dots").isEmpty();
      }
    }
  }

  @Test
  void foundAndLeftStandSideBySide() throws IOException {
    Report report =
        new CertificateReport(ZoneId.of("UTC"), Unit.MIL)
            .pair(
                subject(Stage.AS_FOUND, "C-1", true), subject(Stage.AS_LEFT, "C-2", false), ORIGIN);
    assertThat(report.title()).isEqualTo("Calibration record, not signed");
    assertThat(all(report, Report.TwoPictures.class)).hasSize(1);
    Report.Table comparison = all(report, Report.Table.class).get(0);
    assertThat(comparison.columns().stream().map(Report.Column::title).collect(Collectors.toList()))
        .containsExactly("", "As found, C-1", "As left, C-2");
    byte[] bytes = CertificateDocument.pdf(report, Instant.EPOCH);
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      holdsEverything(report, pdf);
    }
  }
}
