package loopwright.testing;

import java.net.URI;
import java.util.function.Function;
import loopwright.App;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Installation;
import loopwright.db.Tx;
import loopwright.people.People;
import loopwright.people.QuickAccounts;
import loopwright.web.Web;
import loopwright.web.WebSettings;

/** The whole program over an empty database in memory, with one account for each role. */
public final class RunningApp implements AutoCloseable {
  public static final String NOW = "2026-03-01T10:15:30Z";

  public final TestClock clock = new TestClock(NOW);
  private final App app = App.open(MigratedMemory.place("app"), Installation.Purpose.DEMO, clock);
  private Web web;
  private int port;

  public RunningApp() {
    QuickAccounts.create(app.database());
    web = app.serve(WebSettings.loopback(0), "Test Marsh");
  }

  public Database database() {
    return app.database();
  }

  /** Writes as the program itself. */
  public <R> R write(Function<Tx, R> work) {
    return database().write(Act.ofProgram("test", "a world to look at"), work);
  }

  /** Somebody signed in, by the role's word. */
  public Visitor as(String role) {
    Visitor visitor = new Visitor(web.address());
    Visitor.Answer answer = visitor.signIn(role, People.DEMO_PASSWORD);
    if (answer.status() != 303) {
      throw new AssertionError("sign-in as " + role + " gave " + answer.status());
    }
    visitor.get("/password");
    return visitor;
  }

  public URI address() {
    return web.address();
  }

  /** Stops serving, as when the machine goes down; the database stays. */
  public void stop() {
    port = web.port();
    web.close();
  }

  /** Serves again at the same address; nobody is signed in any more. */
  public void startAgain() {
    web = app.serve(WebSettings.loopback(port), "Test Marsh");
  }

  @Override
  public void close() {
    web.close();
    app.close();
  }
}
