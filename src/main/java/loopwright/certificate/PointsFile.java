package loopwright.certificate;

import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.calibration.Evidence;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;

/**
 * The raw points of a calibration with what came of each, as CSV with decimal points. Numbers are
 * not rounded.
 */
final class PointsFile {
  static final String HEAD =
      "calibration,run,gap_typed,gap_unit,output_typed,output_unit,gap_um,volts,isf_mv_per_um,deviation_um\n";

  private PointsFile() {}

  static String csv(Evidence evidence) {
    StringBuilder out = new StringBuilder(HEAD);
    for (CurveReading reading : evidence.readings()) {
      out.append(evidence.record().number())
          .append(',')
          .append(reading.run().label())
          .append(',')
          .append(quoted(reading.gap().typed()))
          .append(',')
          .append(reading.gap().unit().symbol())
          .append(',')
          .append(quoted(reading.output().typed()))
          .append(',')
          .append(reading.output().unit().symbol())
          .append(',')
          .append(reading.gapMicrometres())
          .append(',')
          .append(reading.volts());
      Optional<CurvePoint> point = evidence.result().flatMap(r -> point(r, reading));
      out.append(',')
          .append(number(point.map(CurvePoint::isf).orElse(OptionalDouble.empty())))
          .append(',')
          .append(point.map(p -> Double.toString(p.deviationMicrometres())).orElse(""))
          .append('\n');
    }
    return out.toString();
  }

  private static Optional<CurvePoint> point(CurveResult result, CurveReading reading) {
    return result.points().stream().filter(p -> p.reading().equals(reading)).findFirst();
  }

  private static String number(OptionalDouble number) {
    return number.isPresent() ? Double.toString(number.getAsDouble()) : "";
  }

  /** As typed, which may hold a decimal comma. */
  private static String quoted(String typed) {
    return typed.contains(",") ? '"' + typed + '"' : typed;
  }
}
