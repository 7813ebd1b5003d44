package loopwright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import org.eclipse.jetty.ee10.servlet.SessionHandler;
import org.eclipse.jetty.http.HttpCookie;

/** How the server underneath is set up. */
final class ServerSetup {
  private final WebSettings settings;

  ServerSetup(WebSettings settings) {
    this.settings = settings;
  }

  void apply(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.maxRequestSize = SizeLimit.OTHERS;
    config.http.prefer405over404 = true;
    config.http.defaultContentType = "text/html; charset=utf-8";
    config.jetty.host = settings.host();
    config.jetty.port = settings.port();
    config.jetty.multipartConfig.maxFileSize(SizeLimit.FILES >> 20, SizeUnit.MB);
    config.jetty.multipartConfig.maxTotalRequestSize(SizeLimit.FILES >> 20, SizeUnit.MB);
    config.jetty.multipartConfig.maxInMemoryFileSize(1, SizeUnit.MB);
    config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
    config.jetty.modifyServletContextHandler(handler -> handler.setSessionHandler(sessions()));
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
