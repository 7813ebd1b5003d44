package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import loopwright.matching.Families;
import loopwright.matching.Judgement;
import loopwright.matching.RuleBook;
import loopwright.matching.Verdict;
import loopwright.matching.rules.StandardRules;
import loopwright.registerfile.FamiliesFile;
import loopwright.registerfile.JudgedLoop;
import loopwright.registerfile.Register;
import loopwright.sheet.Cells;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Judges the loops of a shop's register file, with nothing set up. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Judges the loops of a register kept as CSV, one row a loop.",
      "",
      "Needed headings: tag, probe_serial, probe_length_m, cable_serial, cable_length_m,"
          + " driver_serial, system_length_m. A length heading may end in _ft instead. Usual: family."
          + " Cable serial and length both empty mean that no cable is fitted.",
      "",
      "One line a finding, the worst first; a loop that matches has one line.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:every loop matches, though rules may not have been judged",
      "1:at least one loop is refused, unknown or needs attention",
      "2:the input can't be used; standard error names file, row, column and remedy"
    })
final class CheckCommand implements Callable<Integer> {

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Register files, taken as one.")
  private List<Path> files = List.of();

  @Option(
      names = "--families",
      paramLabel = "FILE",
      description = "List of families, CSV. Without it the rules about families are not judged.")
  private @Nullable Path familiesFile;

  @Option(names = "--json", description = "One JSON document instead of lines.")
  private boolean json;

  @Option(names = "--all", description = "Lines for findings that match or are not judged, too.")
  private boolean all;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec().commandLine().getOut();
    Complaints complaints = new Complaints();
    Families families =
        familiesFile == null
            ? Families.NOT_GIVEN
            : FamiliesFile.read(familiesFile, complaints).forRules();
    Register register = Register.read(files, families, complaints);
    if (!complaints.isEmpty()) {
      return complain(complaints);
    }
    RuleBook book = StandardRules.book();
    List<JudgedLoop> loops = register.judge(book);
    if (json) {
      Json.print(out, CheckDocument.of(loops, book));
    } else {
      CheckLines.print(out, loops, book, all);
    }
    return loops.stream().map(JudgedLoop::judgement).allMatch(CheckCommand::isFine)
        ? Exit.GOOD
        : Exit.FOUND_SOMETHING;
  }

  private static boolean isFine(Judgement judgement) {
    return !judgement.verdict().isWorseThan(Verdict.MATCHES);
  }

  private Integer complain(Complaints complaints) {
    PrintWriter err = spec().commandLine().getErr();
    complaints.kept().stream().map(Complaint::message).map(Cells::oneLine).forEach(err::println);
    int more = complaints.total() - complaints.kept().size();
    if (more > 0) {
      err.println("… and " + more + " more.");
    }
    err.println(
        "Nothing was judged: "
            + (complaints.total() == 1 ? "1 problem." : complaints.total() + " problems."));
    return Exit.UNUSABLE;
  }

  private CommandSpec spec() {
    return Objects.requireNonNull(spec);
  }
}
