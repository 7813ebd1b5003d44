package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import loopwright.App;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.label.LabelBase;
import loopwright.people.People;
import loopwright.web.Role;
import loopwright.web.Web;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Serves an invented plant, to look around in. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = "Serves an invented plant whose faults wait to be found.")
final class DemoCommand implements Callable<Integer> {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      defaultValue = "demo-plant",
      description =
          "Folder for the demo's database. Default: ${DEFAULT-VALUE}. What is in it stays; delete"
              + " the folder to begin anew.")
  Path data = Path.of("demo-plant");

  @Mixin Serving serving = new Serving();

  @Spec CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    LabelBase labels = serving.labels(true);
    App app = App.open(new Place.Folder(data), Installation.Purpose.DEMO, InstantSource.system());
    app.fillDemo(
        () -> {
          out.println("Reading in the invented plant; only the first start takes this time.");
          out.flush();
        });
    List<People.Credentials> accounts = app.people().createDemoAccounts();
    accounts.stream()
        .map(People.Credentials::person)
        .filter(person -> person.role() == Role.PLANNER)
        .forEach(planner -> app.planDemo(planner.number()));
    String logins =
        accounts.stream().map(made -> made.person().login()).collect(Collectors.joining(", "));
    Web web = app.serve(serving.settings(), "Demo plant", labels);
    out.println("Loopwright's demo plant is open at " + web.address());
    out.println(
        "Sign in as one of " + logins + "; the password of each is: " + People.DEMO_PASSWORD);
    out.println(Serving.told(labels));
    Serving.untilStopped(web, app, out);
    return Exit.GOOD;
  }
}
