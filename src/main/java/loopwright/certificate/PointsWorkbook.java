package loopwright.certificate;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Evidence;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.uncertainty.RunUncertainty;
import loopwright.uncertainty.Statement;
import loopwright.units.Reported;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Raw points and results of a calibration as a workbook; numbers are not rounded. */
final class PointsWorkbook {
  private static final List<String> POINTS =
      List.of(
          "run",
          "gap as typed",
          "unit",
          "output as typed",
          "unit",
          "gap, µm",
          "output, V",
          "ISF, mV/µm",
          "deviation, µm");

  private PointsWorkbook() {}

  static byte[] xlsx(Evidence evidence) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Workbook workbook = new Workbook(bytes, "Loopwright", "1.0")) {
      points(workbook.newWorksheet("Points"), evidence);
      results(workbook.newWorksheet("Results"), evidence);
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
    return bytes.toByteArray();
  }

  private static void points(Worksheet sheet, Evidence evidence) {
    for (int column = 0; column < POINTS.size(); column++) {
      sheet.value(0, column, POINTS.get(column));
    }
    int row = 0;
    for (CurveReading reading : evidence.readings()) {
      row++;
      sheet.value(row, 0, reading.run().label());
      sheet.value(row, 1, reading.gap().typed());
      sheet.value(row, 2, reading.gap().unit().symbol());
      sheet.value(row, 3, reading.output().typed());
      sheet.value(row, 4, reading.output().unit().symbol());
      sheet.value(row, 5, reading.gapMicrometres());
      sheet.value(row, 6, reading.volts());
      worked(sheet, row, evidence, reading);
    }
    sheet.freezePane(0, 1);
  }

  private static void worked(Worksheet sheet, int row, Evidence evidence, CurveReading reading) {
    Optional<CurvePoint> point =
        evidence
            .result()
            .flatMap(r -> r.points().stream().filter(p -> p.reading().equals(reading)).findFirst());
    point.ifPresent(
        p -> {
          if (p.isf().isPresent()) {
            sheet.value(row, 7, p.isf().getAsDouble());
          }
          sheet.value(row, 8, p.deviationMicrometres());
        });
  }

  private static void results(Worksheet sheet, Evidence evidence) {
    Calibrated c = evidence.record();
    Rows rows = new Rows(sheet);
    rows.text("calibration", c.number());
    rows.text("at", c.place());
    rows.text("stage", c.stage().word());
    rows.text("taken, UTC", c.measuredAt().toString());
    rows.text("by", c.performedBy());
    rows.text("temperature at the probe", typed(evidence.conditions().temperature()));
    rows.text("run-out of the target, pk-pk", typed(evidence.conditions().runOut()));
    rows.text("procedure", evidence.conditions().procedure());
    rows.text("outcome", c.outcome());
    rows.text("SHA-256", evidence.hash());
    evidence.result().ifPresent(result -> results(rows, result));
    evidence.uncertainty().ifPresent(u -> stated(rows, u.worse()));
    if (!evidence.missing().isEmpty()) {
      rows.text("uncertainty", evidence.missing());
    }
  }

  private static String typed(Optional<Reported> condition) {
    return condition.map(Reported::toString).orElse("not recorded");
  }

  private static void results(Rows rows, CurveResult result) {
    rows.text("profile", result.profile().code() + ", version " + result.profile().version());
    rows.number("ASF, mV/µm", result.asf());
    rows.number("least-squares slope, mV/µm", result.leastSquaresSlope());
    rows.number("its standard error, mV/µm", result.leastSquaresSlopeStandardError());
    result.worstIsfPercent().ifPresent(p -> rows.number("worst ISF, % of nominal", p));
    rows.number("largest DSL, µm", result.maxDsl());
    rows.number("mid-range gap, µm", result.midRangeGapMicrometres());
  }

  private static void stated(Rows rows, RunUncertainty run) {
    stated(rows, "ASF", run.asf());
    stated(rows, "DSL", run.maxDsl());
  }

  private static void stated(Rows rows, String name, Statement statement) {
    rows.number(
        "U(" + name + "), 95 %, " + statement.budget().unit(),
        statement.budget().expandedUncertainty());
    rows.number("probability that " + name + " conforms", statement.conformityProbability());
    rows.text("decision about " + name, statement.decision().label());
  }

  /** Names in the first column, what they are in the second. */
  private static final class Rows {
    private final Worksheet sheet;
    private int row;

    Rows(Worksheet sheet) {
      this.sheet = sheet;
    }

    void text(String name, String text) {
      sheet.value(row, 0, name);
      sheet.value(row, 1, text);
      row++;
    }

    void number(String name, double number) {
      sheet.value(row, 0, name);
      sheet.value(row, 1, number);
      row++;
    }
  }
}
