package loopwright.calibration;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.curve.Run;
import loopwright.standard.Certificate;
import loopwright.standard.CertifiedRange;
import loopwright.standard.StandardKind;
import loopwright.standard.StandardUsed;
import loopwright.uncertainty.Distribution;
import loopwright.uncertainty.ErrorSource;
import loopwright.uncertainty.Quantity;
import loopwright.uncertainty.Spread;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * The sources of error of a curve, from the certificates of the equipment it was made with and from
 * its own two runs. Where readings lie in several ranges of a certificate the largest uncertainty
 * of these ranges counts for all of them.
 *
 * @param sources independent of one another; empty when nothing can be stated
 * @param missing why nothing can be stated; empty when something can
 * @param notes what has to be said beside the numbers
 */
record EquipmentErrors(List<ErrorSource> sources, String missing, List<String> notes) {
  /** Linear expansion of steel; textbook value, from memory. */
  private static final double STEEL_PER_KELVIN = 11.5e-6;

  /** ISO 1: lengths are said for 20 °C (from memory). */
  private static final double REFERENCE_CELSIUS = 20;

  private static final String NO_TEMPERATURE =
      "No temperature was written down: what it does to the micrometer is not in the budget.";

  EquipmentErrors {
    sources = List.copyOf(sources);
    notes = List.copyOf(notes);
  }

  /**
   * @param under temperature and run-out go into the budget where they were written down
   */
  static EquipmentErrors of(Curve curve, List<StandardUsed> used, Conditions under) {
    Optional<StandardUsed> voltmeter = ofKind(used, StandardKind.VOLTMETER);
    Optional<StandardUsed> micrometer = ofKind(used, StandardKind.MICROMETER);
    if (voltmeter.isEmpty() || micrometer.isEmpty()) {
      String none = voltmeter.isEmpty() ? "voltmeter" : "spindle micrometer";
      return missing("No uncertainty is stated: no " + none + " is named that it was made with.");
    }
    Optional<String> outside =
        outside(voltmeter.get(), curve, EquipmentErrors::magnitude, r -> r.output().toString())
            .or(
                () ->
                    outside(
                        micrometer.get(),
                        curve,
                        CurveReading::gapMicrometres,
                        r -> r.gap().toString()));
    return outside
        .map(EquipmentErrors::missing)
        .orElseGet(() -> stated(curve, voltmeter.get(), micrometer.get(), under));
  }

  private static EquipmentErrors stated(
      Curve curve, StandardUsed volts, StandardUsed gaps, Conditions under) {
    List<ErrorSource> sources = new ArrayList<>();
    sources.addAll(of(volts, Quantity.VOLTS, ranges(volts, curve, EquipmentErrors::magnitude)));
    sources.addAll(of(gaps, Quantity.GAP, ranges(gaps, curve, CurveReading::gapMicrometres)));
    List<String> notes = new ArrayList<>();
    Optional<ErrorSource> repeatability = repeatability(curve);
    repeatability.ifPresent(sources::add);
    if (repeatability.isEmpty()) {
      notes.add(
          "One run shows no repeatability: it is not in the budget. Read up and down to have it.");
    }
    under
        .celsius()
        .ifPresentOrElse(t -> sources.add(ofTemperature(t)), () -> notes.add(NO_TEMPERATURE));
    under
        .runOut()
        .map(Reported::canonical)
        .filter(micrometres -> micrometres > 0)
        .ifPresent(micrometres -> sources.add(ofRunOut(micrometres)));
    return new EquipmentErrors(sources, "", notes);
  }

  /**
   * The spindle of a micrometer is longer than at 20 °C by the same share at every gap. What is not
   * corrected for lies between nothing and that.
   */
  private static ErrorSource ofTemperature(double celsius) {
    double share = STEEL_PER_KELVIN * Math.abs(celsius - REFERENCE_CELSIUS);
    return new ErrorSource(
        "temperature of the micrometer",
        Quantity.GAP,
        Spread.SAME_SHARE,
        Distribution.RECTANGULAR,
        Distribution.RECTANGULAR.standardUncertainty(share),
        Double.POSITIVE_INFINITY);
  }

  /** Each gap is met somewhere on a cycle of that height. */
  private static ErrorSource ofRunOut(double micrometres) {
    return new ErrorSource(
        "run-out of the target",
        Quantity.GAP,
        Spread.EACH_READING,
        Distribution.ARCSINE,
        Distribution.ARCSINE.standardUncertainty(micrometres / 2),
        Double.POSITIVE_INFINITY);
  }

  private static EquipmentErrors missing(String why) {
    return new EquipmentErrors(List.of(), why, List.of());
  }

  private static Optional<StandardUsed> ofKind(List<StandardUsed> used, StandardKind kind) {
    return used.stream().filter(each -> each.standard().kind() == kind).findFirst();
  }

  static double magnitude(CurveReading reading) {
    return Math.abs(reading.volts());
  }

  private static Optional<String> outside(
      StandardUsed used,
      Curve curve,
      ToDoubleFunction<CurveReading> magnitude,
      Function<CurveReading, String> typed) {
    return curve.readings().stream()
        .filter(r -> used.certificate().rangeOf(magnitude.applyAsDouble(r)).isEmpty())
        .findFirst()
        .map(
            r ->
                "No uncertainty is stated: %s lies outside every range of the certificate of %s."
                    .formatted(typed.apply(r), used.standard().code()));
  }

  private static List<CertifiedRange> ranges(
      StandardUsed used, Curve curve, ToDoubleFunction<CurveReading> magnitude) {
    return curve.readings().stream()
        .flatMap(r -> used.certificate().rangeOf(magnitude.applyAsDouble(r)).stream())
        .distinct()
        .toList();
  }

  private static List<ErrorSource> of(
      StandardUsed used, Quantity quantity, List<CertifiedRange> ranges) {
    String code = used.standard().code();
    double k = used.certificate().coverageFactor().doubleValue();
    List<ErrorSource> sources = new ArrayList<>();
    sources.add(
        ErrorSource.known(
            code + ": certificate",
            quantity,
            Spread.EACH_READING,
            most(ranges, range -> range.uncertainty().canonical()) / k));
    double scale = most(ranges, EquipmentErrors::share);
    if (scale > 0) {
      sources.add(ErrorSource.known(code + ": scale", quantity, Spread.SAME_SHARE, scale / k));
    }
    double step = most(ranges, r -> r.resolution().map(Reported::canonical).orElse(0.0));
    if (step > 0) {
      sources.add(
          new ErrorSource(
              code + ": resolution",
              quantity,
              Spread.EACH_READING,
              Distribution.RECTANGULAR,
              Distribution.RECTANGULAR.standardUncertainty(step / 2),
              Double.POSITIVE_INFINITY));
    }
    return sources;
  }

  private static double share(CertifiedRange range) {
    return range.scalePercent().map(s -> s.amount().movePointLeft(2).doubleValue()).orElse(0.0);
  }

  private static double most(
      List<CertifiedRange> ranges, ToDoubleFunction<CertifiedRange> uncertainty) {
    return ranges.stream().mapToDouble(uncertainty).max().orElse(0);
  }

  /**
   * Standard deviation of one voltage reading, pooled over the pairs read at one gap going up and
   * coming down: s² = Σd²/(2n), with n degrees of freedom. What the two runs differ by in common
   * (hysteresis) is in it. Empty where no gap was read twice.
   *
   * @see "JCGM 100:2008, 4.2.4 (pooled estimate of variance)"
   */
  static Optional<ErrorSource> repeatability(Curve curve) {
    Map<Double, Double> up = new HashMap<>();
    curve.of(Run.UP).forEach(r -> up.put(r.gapMicrometres(), r.volts()));
    double[] differences =
        curve.of(Run.DOWN).stream()
            .filter(r -> up.containsKey(r.gapMicrometres()))
            .mapToDouble(r -> r.volts() - up.getOrDefault(r.gapMicrometres(), 0.0))
            .toArray();
    if (differences.length == 0) {
      return Optional.empty();
    }
    double squares = Arrays.stream(differences).map(d -> d * d).sum();
    return Optional.of(
        new ErrorSource(
            "repeatability, up and down",
            Quantity.VOLTS,
            Spread.EACH_READING,
            Distribution.NORMAL,
            Math.sqrt(squares / (2 * differences.length)),
            differences.length));
  }

  /** Whether any range used gives a correction. */
  static boolean corrects(Curve curve, List<StandardUsed> used) {
    return !corrected(curve, used).equals(curve);
  }

  /** The curve with the corrections of the certificates added to its readings. */
  static Curve corrected(Curve curve, List<StandardUsed> used) {
    return new Curve(curve.readings().stream().map(reading -> corrected(reading, used)).toList());
  }

  private static CurveReading corrected(CurveReading reading, List<StandardUsed> used) {
    Reported gap = reading.gap();
    Reported output = reading.output();
    for (StandardUsed each : used) {
      Certificate certificate = each.certificate();
      if (each.standard().kind() == StandardKind.MICROMETER) {
        gap = plus(gap, certificate.rangeOf(reading.gapMicrometres()));
      } else if (each.standard().kind() == StandardKind.VOLTMETER) {
        output = plus(output, certificate.rangeOf(magnitude(reading)));
      }
    }
    return CurveReading.of(reading.run(), gap, output);
  }

  /** A correction counts for the magnitude. */
  private static Reported plus(Reported value, Optional<CertifiedRange> range) {
    BigDecimal canonical =
        range
            .map(r -> r.unit().toCanonical(r.correction().amount()))
            .filter(c -> c.signum() != 0)
            .orElse(null);
    if (canonical == null) {
      return value;
    }
    Unit unit = value.unit();
    BigDecimal by = unit.fromCanonical(canonical);
    BigDecimal magnitude = value.amount().abs().add(by).max(BigDecimal.ZERO);
    BigDecimal sum = value.amount().signum() < 0 ? magnitude.negate() : magnitude;
    return new Reported(sum.toPlainString(), unit, sum);
  }
}
