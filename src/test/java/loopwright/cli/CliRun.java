package loopwright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/** What one command line printed and how it ended. */
record CliRun(int exit, String out, String err) {

  static CliRun of(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int exit = Cli.run(new PrintWriter(out), new PrintWriter(err), args);
    return new CliRun(exit, out.toString(), err.toString());
  }
}
