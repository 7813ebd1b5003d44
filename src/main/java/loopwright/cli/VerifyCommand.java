package loopwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import loopwright.db.Database;
import loopwright.journal.Disagreement;
import loopwright.journal.Verdict;
import loopwright.journal.Verification;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Compares the tables with the journal. */
@Command(
    name = "verify",
    mixinStandardHelpOptions = true,
    description = {
      "Recomputes the journal and compares every table with it.",
      "",
      "Names the first entry, row and column that disagree. Note the last hash elsewhere: a journal"
          + " that was rewritten as a whole shows only against a hash kept outside. Passwords are not"
          + " part of the journal and not compared.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:journal and tables agree",
      "1:they don't; the first disagreement is named",
      "2:the data can't be read: none there, in use, or of another version"
    })
final class VerifyCommand implements Callable<Integer> {

  @Mixin private DataFolder data = new DataFolder();

  @Option(names = "--json", description = "One JSON document instead of lines.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  /** As printed. */
  record Document(
      String verdict,
      long entries,
      long changes,
      long rows,
      String headHash,
      @Nullable Disagreement disagreement) {

    static Document of(Verdict verdict) {
      return new Document(
          verdict.agrees() ? "agrees" : "disagrees",
          verdict.entries(),
          verdict.changes(),
          verdict.rows(),
          verdict.headHash(),
          verdict.disagreement());
    }
  }

  @Override
  public Integer call() {
    PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
    Verdict verdict;
    try (Database database = data.open()) {
      verdict = Verification.of(database);
    }
    if (json) {
      Json.print(out, Document.of(verdict));
    } else {
      lines(verdict).forEach(out::println);
    }
    return verdict.agrees() ? Exit.GOOD : Exit.FOUND_SOMETHING;
  }

  private static List<String> lines(Verdict verdict) {
    if (verdict.disagreement() != null) {
      return List.of("Disagrees. " + verdict.disagreement().sentence());
    }
    return List.of(
        "Agrees: %s entries of %s changes, %s rows."
            .formatted(verdict.entries(), verdict.changes(), verdict.rows()),
        "Last entry: " + verdict.entries() + ", hash " + verdict.headHash());
  }
}
