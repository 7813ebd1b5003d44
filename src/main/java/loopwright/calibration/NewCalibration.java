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
 * @param point at which it was taken
 * @param measuredAt when
 * @param performedBy as they are called
 * @param targetAlloy of the target; may be empty
 * @param origin {@code entered} or {@code imported}
 * @param certificates of the reference standards it was made with
 */
public record NewCalibration(
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

  public NewCalibration {
    certificates = certificates.stream().sorted().toList();
  }

  /** One that names no reference standard. */
  public NewCalibration(
      long point,
      Stage stage,
      Instant measuredAt,
      String performedBy,
      Zero zero,
      String targetAlloy,
      Outcome outcome,
      String origin) {
    this(
        point,
        stage,
        measuredAt,
        performedBy,
        zero,
        targetAlloy,
        outcome,
        origin,
        List.of(),
        Conditions.NOT_RECORDED);
  }

  /** One of which nobody wrote down under what it was taken. */
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

  NewCalibration madeWith(List<Long> standards) {
    return new NewCalibration(
        point,
        stage,
        measuredAt,
        performedBy,
        zero,
        targetAlloy,
        outcome,
        origin,
        standards,
        conditions);
  }

  NewCalibration under(Conditions under) {
    return new NewCalibration(
        point,
        stage,
        measuredAt,
        performedBy,
        zero,
        targetAlloy,
        outcome,
        origin,
        certificates,
        under);
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
