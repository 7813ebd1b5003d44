package loopwright.web;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import io.javalin.json.JavalinJackson;
import java.time.Duration;
import org.eclipse.jetty.ee10.servlet.SessionHandler;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.eclipse.jetty.util.component.LifeCycle;

/** How the server underneath is set up. */
final class ServerSetup {
  /** How long requests under way are waited for at the end. */
  private static final Duration GRACE = Duration.ofSeconds(5);

  /** How long a connection on which nothing is asked may still stand at the end. */
  private static final Duration IDLE_AT_STOP = Duration.ofMillis(100);

  private final WebSettings settings;

  ServerSetup(WebSettings settings) {
    this.settings = settings;
  }

  void apply(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.jsonMapper(new JavalinJackson().updateMapper(ServerSetup::writePlainly));
    config.http.maxRequestSize = SizeLimit.OTHERS;
    config.http.prefer405over404 = true;
    config.http.defaultContentType = "text/html; charset=utf-8";
    config.jetty.host = settings.host();
    config.jetty.port = settings.port();
    config.jetty.multipartConfig.maxFileSize(SizeLimit.FILES >> 20, SizeUnit.MB);
    config.jetty.multipartConfig.maxTotalRequestSize(SizeLimit.FILES >> 20, SizeUnit.MB);
    config.jetty.multipartConfig.maxInMemoryFileSize(1, SizeUnit.MB);
    config.jetty.modifyServer(ServerSetup::stopGracefully);
    config.jetty.modifyServer(server -> server.setErrorHandler(new BareErrors()));
    settings.keystore().ifPresent(keystore -> Tls.listen(config.jetty, settings, keystore));
    config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
    config.jetty.modifyServletContextHandler(handler -> handler.setSessionHandler(sessions()));
  }

  /** 4 m is 4, never 4E+0: as the command line writes it. */
  private static void writePlainly(ObjectMapper json) {
    json.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
  }

  private static void stopGracefully(Server server) {
    server.setHandler(new GracefulHandler());
    server.setStopTimeout(GRACE.toMillis());
    server.addEventListener(
        new LifeCycle.Listener() {
          @Override
          public void lifeCycleStarted(LifeCycle started) {
            closeIdleSoon(server);
          }
        });
  }

  /** A browser holds connections open without asking anything; a stop needn't wait for them. */
  private static void closeIdleSoon(Server server) {
    for (Connector connector : server.getConnectors()) {
      if (connector instanceof AbstractConnector listening) {
        listening.setShutdownIdleTimeout(IDLE_AT_STOP.toMillis());
      }
    }
  }

  private SessionHandler sessions() {
    SessionHandler sessions = new SessionHandler();
    sessions.setSessionCookie(settings.cookieName());
    sessions.setHttpOnly(true);
    sessions.setSameSite(HttpCookie.SameSite.STRICT);
    sessions.setSecureCookies(settings.secure());
    sessions.setSessionPath("/");
    sessions.setUsingUriParameters(false);
    sessions.setMaxInactiveInterval(Math.toIntExact(settings.idle().toSeconds()));
    return sessions;
  }
}
