package loopwright.web;

import io.javalin.Javalin;
import io.javalin.util.JavalinException;
import java.net.URI;
import java.time.InstantSource;
import java.util.List;
import loopwright.problem.Refused;

/** The running web server. */
public final class Web implements AutoCloseable {
  private final WebSettings settings;
  private final Javalin javalin;

  private Web(WebSettings settings, Javalin javalin) {
    this.settings = settings;
    this.javalin = javalin;
  }

  /**
   * Starts serving.
   *
   * @param clock for the waiting time after wrong passwords
   * @throws Refused when nothing can listen there, or the keystore can't be used
   */
  public static Web start(
      WebSettings settings, Page page, Accounts accounts, InstantSource clock, List<Pages> pages) {
    Javalin javalin =
        Javalin.create(
            config -> {
              new ServerSetup(settings).apply(config);
              new Guards(settings, page, accounts, clock).mount(config.routes);
              Routes routes = new Routes(config.routes);
              pages.forEach(feature -> feature.mount(routes));
            });
    return new Web(settings, started(javalin, settings));
  }

  private static Javalin started(Javalin javalin, WebSettings settings) {
    try {
      return javalin.start();
    } catch (JavalinException notStarted) {
      javalin.stop();
      Throwable cause = notStarted.getCause() == null ? notStarted : notStarted.getCause();
      throw new Refused(
          WebProblem.CANNOT_LISTEN,
          settings.host(),
          settings.port(),
          String.valueOf(cause.getMessage()));
    }
  }

  /** The port it listens on, also when the settings left the choice to the system. */
  public int port() {
    return javalin.port();
  }

  /** Where a browser finds the first page. */
  public URI address() {
    String host = settings.host().equals("0.0.0.0") ? "localhost" : settings.host();
    return URI.create("%s://%s:%s/".formatted(settings.secure() ? "https" : "http", host, port()));
  }

  /** Lets running requests finish, then stops. */
  @Override
  public void close() {
    javalin.stop();
  }
}
