package loopwright.cli;

import java.io.PrintWriter;
import java.time.InstantSource;
import java.util.Objects;
import java.util.concurrent.Callable;
import loopwright.App;
import loopwright.exchange.Proposal;
import loopwright.remedy.ExchangeLines;
import loopwright.remedy.ExchangesDocument;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says which exchanges put loops back into balance. */
@Command(
    name = "exchanges",
    mixinStandardHelpOptions = true,
    description = {
      "Says which exchanges of parts put loops back into length balance.",
      "",
      "One kind of part and one family at a time: most loops right, then least work. Also which loops"
          + " the stock makes whole, and which lengths are short.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:every loop whose lengths are known is in balance",
      "1:at least one is not",
      "2:the data can't be read, or there is no such train"
    })
final class ExchangesCommand implements Callable<Integer> {

  @Mixin private DataFolder data = new DataFolder();

  @Option(
      names = "--train",
      paramLabel = "CODE",
      description = "Only loops of this train. Default: the whole plant.")
  private @Nullable String train;

  @Option(names = "--json", description = "One JSON document instead of lines.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
    Proposal proposal;
    try (App app = App.openExisting(data.place(), InstantSource.system())) {
      proposal = app.propose(train);
    }
    if (json) {
      Json.print(out, ExchangesDocument.of(proposal));
    } else {
      ExchangeLines.of(proposal).forEach(out::println);
    }
    return proposal.outOfBalance() == 0 ? Exit.GOOD : Exit.FOUND_SOMETHING;
  }
}
