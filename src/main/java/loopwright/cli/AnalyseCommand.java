package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import loopwright.calibration.CurveDocument;
import loopwright.curve.BuiltInProfiles;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveFile;
import loopwright.curve.CurveResult;
import loopwright.curve.Remark;
import loopwright.curve.ToleranceProfile;
import loopwright.curve.Verdict;
import loopwright.problem.Refused;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Headings;
import loopwright.uncertainty.CurveUncertainty;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Judges a curve from a file by a built-in profile, without any database. */
@Command(
    name = "analyse",
    description = {
      "Judge a calibration curve: incremental scale factor, deviation from the straight line,"
          + " linear range.",
      "",
      "The file is CSV with the columns gap_um or gap_mil, volts or millivolts, and if need be"
          + " run (up or down). Readings of a run may come in any order; they are shown by rising"
          + " gap.",
    },
    footer = {"", "Exit code: 0 conforms, 1 does not conform, 2 the file or the call is unusable."},
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class AnalyseCommand implements Callable<Integer> {
  private static final int MOST_MEGABYTES = 5;

  @Parameters(paramLabel = "CURVE.csv", description = "The readings.")
  Path file = Path.of("");

  @Option(
      names = "--profile",
      required = true,
      paramLabel = "NAME",
      description = "Tolerance profile: ${COMPLETION-CANDIDATES}.",
      completionCandidates = Codes.class)
  String profile = "";

  @Option(names = "--json", description = "Print one JSON document and nothing else.")
  boolean json;

  @Mixin UncertaintyOptions equipment = new UncertaintyOptions();

  @Spec CommandSpec spec = CommandSpec.create();

  /** The names of the profiles, for the help text. */
  static final class Codes implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return BuiltInProfiles.codes().iterator();
    }
  }

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    ToleranceProfile judgedBy = profile();
    equipment.refuseUnfit();
    CurveFile curveFile = CurveFile.of(new CsvReader(MOST_MEGABYTES).read(file));
    CurveCheck check = CurveCheck.of(curveFile.entry(), judgedBy);
    if (check.curve().isEmpty()) {
      complain(check.complaints(), curveFile);
      return Exit.UNUSABLE;
    }
    Curve curve = check.curve().get();
    CurveResult result = CurveAnalysis.of(curve, judgedBy);
    List<String> asked = check.questions().stream().map(Remark::sentenceWithRow).toList();
    Optional<CurveUncertainty> uncertainty =
        equipment.areGiven()
            ? Optional.of(
                CurveUncertainty.of(result, equipment.sources(), equipment.decisionRule()))
            : Optional.empty();
    if (json) {
      Json.print(out, CurveDocument.of(result, asked, uncertainty, remarks(uncertainty)));
    } else {
      new CurveReport(out, result, curve.gapUnit()).print(asked);
      uncertainty.ifPresent(
          known -> new UncertaintyReport(out, known, curve.gapUnit()).print(remarks(uncertainty)));
    }
    return result.verdict() == Verdict.CONFORMS ? Exit.GOOD : Exit.FOUND_SOMETHING;
  }

  private List<String> remarks(Optional<CurveUncertainty> uncertainty) {
    return uncertainty.stream()
        .flatMap(known -> Stream.concat(known.remarks().stream(), equipment.omissions().stream()))
        .toList();
  }

  private ToleranceProfile profile() {
    return BuiltInProfiles.named(profile)
        .orElseThrow(
            () ->
                new Refused(
                    CliProblem.UNKNOWN_PROFILE,
                    profile,
                    Headings.nearest(profile.toLowerCase(Locale.ROOT), BuiltInProfiles.codes()),
                    String.join(", ", BuiltInProfiles.codes())));
  }

  private void complain(List<Remark> complaints, CurveFile curveFile) {
    PrintWriter err = spec.commandLine().getErr();
    complaints.forEach(remark -> err.println(curveFile.place(remark)));
  }
}
