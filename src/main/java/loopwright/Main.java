package loopwright;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import loopwright.cli.Cli;

/** Program entry: hands the arguments to the command line and ends with its exit code. */
public final class Main {
  private Main() {}

  /**
   * Text goes out as UTF-8 whatever the machine's own encoding is, so that µ and − arrive. Ends the
   * process with the command's exit code: a command that serves must not return before it is done.
   */
  public static void main(String[] args) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int exit = Cli.run(out, err, args);
    out.flush();
    err.flush();
    System.exit(exit);
  }
}
