package loopwright.testing;

import java.net.URI;
import loopwright.App;
import loopwright.db.Installation;
import loopwright.db.Place;
import loopwright.label.LabelBase;
import loopwright.people.People;
import loopwright.web.Role;
import loopwright.web.Web;
import loopwright.web.WebSettings;

/** The invented plant over a database in memory, served as {@code demo} serves it. */
public final class DemoSite implements AutoCloseable {
  public static final String NOW = "2026-11-25T09:00:00Z";

  private static DemoSite toLookAt;

  private final Place place = MigratedMemory.place("demo");
  private final App app = App.open(place, Installation.Purpose.DEMO, new TestClock(NOW));
  private final Web web;

  public DemoSite() {
    app.fillDemo(() -> {});
    app.people().createDemoAccounts().stream()
        .map(People.Credentials::person)
        .filter(person -> person.role() == Role.PLANNER)
        .forEach(planner -> app.planDemo(planner.number()));
    web = app.serve(WebSettings.loopback(0), "Demo plant", LabelBase.FOR_TRYING);
  }

  /**
   * One for all tests that only look: nobody may change it, and it closes with the machine that
   * runs the tests.
   */
  public static synchronized DemoSite toLookAt() {
    if (toLookAt == null) {
      DemoSite made = new DemoSite();
      Runtime.getRuntime().addShutdownHook(new Thread(made::close));
      toLookAt = made;
    }
    return toLookAt;
  }

  public App app() {
    return app;
  }

  /** Where its database is. */
  public Place place() {
    return place;
  }

  public URI address() {
    return web.address();
  }

  @Override
  public void close() {
    web.close();
    app.close();
  }
}
