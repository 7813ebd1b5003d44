package loopwright.calibration;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.curve.ToleranceProfile;

/**
 * A calibration about to be kept.
 *
 * @param with which parts it was taken, and where
 * @param measuredAt when
 * @param performedBy as they are called
 * @param targetAlloy of the target; may be empty
 * @param origin {@code entered} or {@code imported}
 * @param certificates of the reference standards it was made with
 */
public record NewCalibration(
    TakenWith with,
    Stage stage,
    Instant measuredAt,
    String performedBy,
    Zero zero,
    String targetAlloy,
    Outcome outcome,
    String origin,
    List<Long> certificates,
    Conditions conditions) {

  public NewCalibration {
    certificates = certificates.stream().sorted().toList();
  }

  /** One of what was fitted at a point. */
  public NewCalibration(
      long point,
      Stage stage,
      Instant measuredAt,
      String performedBy,
      Zero zero,
      String targetAlloy,
      Outcome outcome,
      String origin,
      List<Long> certificates,
      Conditions conditions) {
    this(
        new TakenWith.Fitted(point),
        stage,
        measuredAt,
        performedBy,
        zero,
        targetAlloy,
        outcome,
        origin,
        certificates,
        conditions);
  }

  /** The same of which nobody wrote down under what it was taken. */
  public NewCalibration(
      long point,
      Stage stage,
      Instant measuredAt,
      String performedBy,
      Zero zero,
      String targetAlloy,
      Outcome outcome,
      String origin,
      List<Long> certificates) {
    this(
        point,
        stage,
        measuredAt,
        performedBy,
        zero,
        targetAlloy,
        outcome,
        origin,
        certificates,
        Conditions.NOT_RECORDED);
  }

  /** The same that names no reference standard. */
  public NewCalibration(
      long point,
      Stage stage,
      Instant measuredAt,
      String performedBy,
      Zero zero,
      String targetAlloy,
      Outcome outcome,
      String origin) {
    this(point, stage, measuredAt, performedBy, zero, targetAlloy, outcome, origin, List.of());
  }

  /** The same of other parts. */
  public NewCalibration of(TakenWith parts) {
    return new NewCalibration(
        parts,
        stage,
        measuredAt,
        performedBy,
        zero,
        targetAlloy,
        outcome,
        origin,
        certificates,
        conditions);
  }

  /** What came out of it. */
  public sealed interface Outcome {}

  /**
   * A curve and the profile version it is judged by.
   *
   * @param profileVersion its number in the register
   */
  public record Measured(Curve curve, long profileVersion, ToleranceProfile profile)
      implements Outcome {}

  /**
   * There was none to take; that is a result too.
   *
   * @param readings what was read nevertheless, in the order given; may be empty
   */
  public record NoCurve(String reason, List<CurveReading> readings) implements Outcome {
    public NoCurve {
      readings = List.copyOf(readings);
    }

    public NoCurve(String reason) {
      this(reason, List.of());
    }
  }

  /** What was read, whatever came out of it. */
  public List<CurveReading> readings() {
    return measured()
        .map(measured -> measured.curve().readings())
        .or(() -> noCurve().map(NoCurve::readings))
        .orElse(List.of());
  }

  public Optional<NoCurve> noCurve() {
    return outcome instanceof NoCurve none ? Optional.of(none) : Optional.empty();
  }

  public Optional<Measured> measured() {
    return outcome instanceof Measured m ? Optional.of(m) : Optional.empty();
  }
}
