package loopwright.cli;

import java.util.Optional;
import loopwright.cause.CauseProblem;
import loopwright.cause.Typed;
import loopwright.problem.Refused;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What {@code cause} is told. Texts, so that a refusal can say what to write. */
final class CauseOptions {
  @Option(
      names = "--system-length",
      paramLabel = "M",
      description = "Total length the driver is tuned for, in m.")
  @Nullable String systemLength;

  @Option(
      names = "--baseline-gap-um",
      paramLabel = "G",
      description = "Gap that the probe was set to when the loop was right, in µm.")
  @Nullable String baselineGapUm;

  @Option(names = "--baseline-gap-mil", paramLabel = "G", description = "The same in mil.")
  @Nullable String baselineGapMil;

  @Option(
      names = "--baseline-volts",
      paramLabel = "V",
      description = "Output at that gap then, in V, negative.")
  @Nullable String baselineVolts;

  @Option(
      names = "--baseline-sensitivity",
      paramLabel = "S",
      description =
          "Sensitivity at that gap then, in mV/µm. A nominal one (7.874) is taken as stated, not"
              + " measured, and makes the answer less sure.")
  @Nullable String baselineSensitivity;

  @Option(
      names = "--baseline-sensitivity-mv-per-mil",
      paramLabel = "S",
      description = "The same in mV/mil.")
  @Nullable String baselineSensitivityMil;

  @Option(names = "--volts", paramLabel = "V", description = "Gap voltage now, in V, negative.")
  @Nullable String volts;

  @Option(
      names = "--sensitivity",
      paramLabel = "S",
      description =
          "Sensitivity now, in mV/µm: output pk-pk over a known vibration pk-pk, at the same gap and"
              + " the same place as the volts.")
  @Nullable String sensitivity;

  @Option(names = "--sensitivity-mv-per-mil", paramLabel = "S", description = "The same in mV/mil.")
  @Nullable String sensitivityMil;

  @Option(
      names = "--gap-um",
      paramLabel = "G",
      description = "Gap now in µm, if it is known by other means than the volts.")
  @Nullable String gapUm;

  @Option(names = "--gap-mil", paramLabel = "G", description = "The same in mil.")
  @Nullable String gapMil;

  @Option(
      names = "--sensitivity-gap-um",
      paramLabel = "G",
      description =
          "Gap in µm at which the sensitivity was taken, if that is known too: it must be the gap"
              + " of the volts.")
  @Nullable String sensitivityGapUm;

  @Option(names = "--sensitivity-gap-mil", paramLabel = "G", description = "The same in mil.")
  @Nullable String sensitivityGapMil;

  @Option(
      names = "--u-volts",
      paramLabel = "U",
      description = "Standard uncertainty of the volts, in V (0.05 if not given).")
  @Nullable String uVolts;

  @Option(
      names = "--u-sensitivity",
      paramLabel = "U",
      description =
          "Relative standard uncertainty of the sensitivity (0.015, which is 1.5 %%, if not given).")
  @Nullable String uSensitivity;

  @Option(
      names = "--lengths",
      paramLabel = "M,M…",
      description =
          "Total lengths that may be fitted, in m (the system length, ±0.5 and ±1.0 m if not given).")
  @Nullable String lengths;

  @Option(
      names = "--measured-at",
      paramLabel = "PLACE",
      description = "Where both were taken: driver (if not given), barrier, rack or monitor.")
  @Nullable String measuredAt;

  Typed systemLength() {
    return needed("--system-length", systemLength, Unit.METRE, "the total length in metres");
  }

  Optional<Typed> baselineGap() {
    return either(
        typed("--baseline-gap-um", baselineGapUm, Unit.MICROMETRE),
        typed("--baseline-gap-mil", baselineGapMil, Unit.MIL));
  }

  Optional<Typed> baselineVolts() {
    return typed("--baseline-volts", baselineVolts, Unit.VOLT);
  }

  Optional<Typed> baselineSensitivity() {
    return either(
        typed("--baseline-sensitivity", baselineSensitivity, Unit.MILLIVOLT_PER_MICROMETRE),
        typed("--baseline-sensitivity-mv-per-mil", baselineSensitivityMil, Unit.MILLIVOLT_PER_MIL));
  }

  Typed volts() {
    return needed("--volts", volts, Unit.VOLT, "the gap voltage now, for instance -9.0");
  }

  Typed sensitivity() {
    return either(
            typed("--sensitivity", sensitivity, Unit.MILLIVOLT_PER_MICROMETRE),
            typed("--sensitivity-mv-per-mil", sensitivityMil, Unit.MILLIVOLT_PER_MIL))
        .orElseThrow(
            () ->
                new Refused(
                    CauseProblem.SENSITIVITY_MISSING,
                    "--sensitivity",
                    "it in mV/µm, or --sensitivity-mv-per-mil"));
  }

  Optional<Typed> gap() {
    return either(typed("--gap-um", gapUm, Unit.MICROMETRE), typed("--gap-mil", gapMil, Unit.MIL));
  }

  Optional<Typed> sensitivityGap() {
    return either(
        typed("--sensitivity-gap-um", sensitivityGapUm, Unit.MICROMETRE),
        typed("--sensitivity-gap-mil", sensitivityGapMil, Unit.MIL));
  }

  Optional<Typed> uVolts() {
    return typed("--u-volts", uVolts, Unit.VOLT);
  }

  Optional<Typed> uSensitivity() {
    return typed("--u-sensitivity", uSensitivity, Unit.MILLIVOLT_PER_MICROMETRE);
  }

  Optional<Typed> measuredAt() {
    return typed("--measured-at", measuredAt, Unit.VOLT);
  }

  static Refused missing(String name, String remedy) {
    return new Refused(CauseProblem.MISSING, name, remedy);
  }

  private static Typed needed(String name, @Nullable String text, Unit unit, String remedy) {
    return typed(name, text, unit).orElseThrow(() -> missing(name, remedy));
  }

  private static Optional<Typed> typed(String name, @Nullable String text, Unit unit) {
    return Optional.ofNullable(text).map(given -> new Typed(name, given, unit));
  }

  private static Optional<Typed> either(Optional<Typed> one, Optional<Typed> other) {
    if (one.isPresent() && other.isPresent()) {
      throw new Refused(CauseProblem.BOTH_UNITS, one.get().name(), other.get().name());
    }
    return one.or(() -> other);
  }
}
