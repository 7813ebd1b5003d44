package loopwright.web;

import io.javalin.config.JettyConfig;
import java.nio.file.Files;
import loopwright.problem.Refused;
import org.eclipse.jetty.http.HttpVersion;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;

/** Listening with the key and certificate of a keystore; nothing listens in the clear then. */
final class Tls {
  private Tls() {}

  static void listen(JettyConfig jetty, WebSettings settings, WebSettings.Keystore keystore) {
    SslContextFactory.Server keys = keys(keystore);
    jetty.addConnector((server, http) -> connector(server, http, settings, keys));
  }

  private static SslContextFactory.Server keys(WebSettings.Keystore keystore) {
    if (!Files.isReadable(keystore.file())) {
      throw new Refused(WebProblem.NO_KEYSTORE, keystore.file(), "there is no such file");
    }
    SslContextFactory.Server keys = new SslContextFactory.Server();
    keys.setKeyStorePath(keystore.file().toUri().toString());
    keys.setKeyStorePassword(keystore.password());
    try {
      keys.start();
    } catch (Exception unusable) {
      throw new Refused(
          WebProblem.NO_KEYSTORE, keystore.file(), String.valueOf(unusable.getMessage()));
    }
    return keys;
  }

  private static Connector connector(
      Server server, HttpConfiguration http, WebSettings settings, SslContextFactory.Server keys) {
    HttpConfiguration secure = new HttpConfiguration(http);
    // shops reach the server by address or short name, which a certificate may not list
    secure.addCustomizer(new SecureRequestCustomizer(false));
    ServerConnector connector =
        new ServerConnector(
            server,
            new SslConnectionFactory(keys, HttpVersion.HTTP_1_1.asString()),
            new HttpConnectionFactory(secure));
    connector.setHost(settings.host());
    connector.setPort(settings.port());
    return connector;
  }
}
