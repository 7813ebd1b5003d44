package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import loopwright.cause.Baseline;
import loopwright.cause.CauseDocument;
import loopwright.cause.CauseFinder;
import loopwright.cause.Diagnosis;
import loopwright.cause.FittedLengths;
import loopwright.cause.GivenBaseline;
import loopwright.cause.GivenCurve;
import loopwright.cause.Observation;
import loopwright.cause.Situation;
import loopwright.cause.TappingPoint;
import loopwright.cause.Typed;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveFile;
import loopwright.curve.Remark;
import loopwright.problem.Refused;
import loopwright.sheet.CsvReader;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Tells the likely cause of two numbers that aren't right, without any database. */
@Command(
    name = "cause",
    description = {
      "Tell what is wrong with a loop from its gap voltage and its sensitivity.",
      "",
      "Take both at the same gap, at the same place and with the same meter: the volts at rest, the"
          + " sensitivity as output pk-pk over a known vibration (a wobble plate, for instance) or"
          + " from two gaps a known turn apart. The baseline is what the loop gave when it was right,"
          + " its last good as-left record.",
      ""
    },
    footer = {"", "Exit code: 0 answered, 2 a value is missing or can't be meant."},
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class CauseCommand implements Callable<Integer> {
  private static final int MOST_MEGABYTES = 5;

  @Mixin CauseOptions given = new CauseOptions();

  @Option(
      names = "--baseline-curve",
      paramLabel = "FILE",
      description =
          "The last good curve as CSV, as for analyse, instead of baseline volts and sensitivity;"
              + " the baseline gap then says where the probe was set.")
  @Nullable Path baselineCurve;

  @Option(
      names = "--curve",
      paramLabel = "FILE",
      description = "A curve of the loop as it is now, as CSV: it tells a length from a moved gap.")
  @Nullable Path presentCurve;

  @Option(names = "--json", description = "Print one JSON document and nothing else.")
  boolean json;

  @Spec CommandSpec spec = CommandSpec.create();

  private final List<String> remarks = new ArrayList<>();

  @Override
  public Integer call() {
    Length system = given.systemLength().systemLength();
    FittedLengths lengths =
        given.lengths == null
            ? FittedLengths.usual(system)
            : FittedLengths.read("--lengths", given.lengths, system);
    Typed volts = given.volts();
    Typed sensitivity = given.sensitivity();
    Baseline baseline = baseline();
    GivenBaseline.refuseMixedUnits(baseline, volts.volts(), sensitivity);
    Observation seen = seen(volts, sensitivity);
    given.sensitivityGap().ifPresent(gap -> refuseTwoGaps(baseline, seen, gap));
    Diagnosis diagnosis = CauseFinder.find(Situation.of(system, lengths.metres(), baseline, seen));
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      Json.print(out, CauseDocument.of(diagnosis, lengths, remarks));
    } else {
      new CauseReport(out, diagnosis, lengths).print(remarks);
    }
    return Exit.GOOD;
  }

  /** The gap of a sensitivity is checked as a number even where that of the volts isn't known. */
  private static void refuseTwoGaps(Baseline baseline, Observation seen, Typed ofSensitivity) {
    double gap = seen.gapMicrometres().orElse(ofSensitivity.gapMicrometres());
    GivenBaseline.refuseTwoGaps(baseline, gap, ofSensitivity);
  }

  private Observation seen(Typed volts, Typed sensitivity) {
    return new Observation(
        volts.volts(),
        sensitivity.sensitivity(),
        given.uVolts().map(Typed::voltsUncertainty).orElse(Observation.USUAL_VOLTS),
        given.uSensitivity().map(Typed::relativeUncertainty).orElse(Observation.USUAL_SENSITIVITY),
        given
            .gap()
            .map(gap -> OptionalDouble.of(gap.gapMicrometres()))
            .orElse(OptionalDouble.empty()),
        Optional.ofNullable(presentCurve).map(file -> curve("--curve", file).present()),
        given.measuredAt().map(Typed::place).orElse(TappingPoint.DRIVER));
  }

  private Baseline baseline() {
    Optional<Typed> gap = given.baselineGap();
    Optional<Typed> volts = given.baselineVolts();
    Optional<Typed> sensitivity = given.baselineSensitivity();
    if (baselineCurve == null) {
      return GivenBaseline.line(
          gap.orElseThrow(() -> missing("--baseline-gap-um", "it, or --baseline-gap-mil")),
          volts.orElseThrow(() -> missing("--baseline-volts", "the volts at the baseline gap")),
          sensitivity.orElseThrow(
              () -> missing("--baseline-sensitivity", "it, or --baseline-sensitivity-mv-per-mil")));
    }
    sensitivity.ifPresent(Typed::sensitivity);
    Baseline baseline = GivenBaseline.curve(curve("--baseline-curve", baselineCurve), gap, volts);
    volts.flatMap(typed -> GivenBaseline.contradiction(baseline, typed)).ifPresent(remarks::add);
    return baseline;
  }

  private static Refused missing(String name, String what) {
    return CauseOptions.missing(name, what + "; or a last good curve with --baseline-curve");
  }

  private GivenCurve curve(String option, Path file) {
    CurveFile curveFile = CurveFile.of(new CsvReader(MOST_MEGABYTES).read(file));
    CurveCheck check = CurveCheck.of(curveFile.entry());
    if (check.curve().isEmpty()) {
      Remark first = check.complaints().get(0);
      throw new Refused(CliProblem.UNFIT_CURVE, option, curveFile.place(first));
    }
    check.questions().stream().map(curveFile::place).forEach(remarks::add);
    return GivenCurve.of(option + " " + file.getFileName(), check.curve().get());
  }
}
