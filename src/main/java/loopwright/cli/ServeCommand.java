package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.concurrent.Callable;
import loopwright.App;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.label.LabelBase;
import loopwright.web.Web;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Serves the pages of a site's register. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description = "Serves the register's pages until it is stopped.")
final class ServeCommand implements Callable<Integer> {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      required = true,
      description = "Folder with the database; made if there is none.")
  Path data = Path.of("data");

  @Mixin Serving serving = new Serving();

  @Spec CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    LabelBase labels = serving.labels(false);
    App app = App.open(new Place.Folder(data), Installation.Purpose.SITE, InstantSource.system());
    app.people()
        .createAdministrator()
        .ifPresent(
            made ->
                out.println(
                    "First start: sign in as %s with the one-time password %s and choose your own."
                        .formatted(made.person().login(), made.password())));
    Web web = app.serve(serving.settings(), "", labels);
    out.println("Loopwright serves " + data + " at " + web.address());
    out.println(Serving.told(labels));
    Serving.untilStopped(web, app, out);
    return Exit.GOOD;
  }
}
