package loopwright.cli;

import java.io.PrintWriter;
import loopwright.problem.Refused;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/**
 * The root command. A command that refuses its input throws {@link Refused}: its sentence goes to
 * standard error and the exit code is {@link Exit#UNUSABLE}, as it is for a wrong call.
 */
@Command(
    name = "loopwright",
    description = "Matching rules and calibration evidence for proximity probe loops.",
    mixinStandardHelpOptions = true,
    versionProvider = Cli.Version.class,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      AnalyseCommand.class,
      CauseCommand.class,
      CheckCommand.class,
      ExchangesCommand.class,
      ServeCommand.class,
      DemoCommand.class,
      ImportCommand.class,
      GapRoundCommand.class,
      VerifyCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      CommandLine.HelpCommand.class
    })
public final class Cli {
  private Cli() {}

  /**
   * Runs one command line.
   *
   * @param out where results go
   * @param err where complaints and usage help after a wrong call go
   * @return the exit code, see {@link Exit}
   */
  public static int run(PrintWriter out, PrintWriter err, String... args) {
    return commandLine(out, err).execute(args);
  }

  private static CommandLine commandLine(PrintWriter out, PrintWriter err) {
    return new CommandLine(new Cli())
        .setOut(out)
        .setErr(err)
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
        .setExecutionExceptionHandler(Cli::explain);
  }

  private static int explain(Exception thrown, CommandLine command, CommandLine.ParseResult call) {
    if (thrown instanceof Refused refused) {
      command.getErr().println(refused.getMessage());
      return Exit.UNUSABLE;
    }
    command.getErr().println("The program failed; this is a defect, not a fault of your input:");
    thrown.printStackTrace(command.getErr());
    return Exit.FAILED;
  }

  /** The version that the jar's manifest carries. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Cli.class.getPackage().getImplementationVersion();
      return new String[] {"loopwright " + (version == null ? "(not packaged)" : version)};
    }
  }
}
