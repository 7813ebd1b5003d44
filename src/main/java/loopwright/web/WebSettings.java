package loopwright.web;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * How the server is reached.
 *
 * @param host the address it listens on; loopback unless told otherwise
 * @param port 0 lets the system choose a free one
 * @param idle a session that was not used for so long is signed out
 * @param keystore when present, the server speaks TLS only and cookies are marked secure
 */
public record WebSettings(String host, int port, Duration idle, Optional<Keystore> keystore) {

  /** A PKCS #12 or JKS file with the server's key and certificate. */
  public record Keystore(Path file, String password) {
    /** Without the password. */
    @Override
    public String toString() {
      return "Keystore[" + file + "]";
    }
  }

  public WebSettings {
    if (port < 0 || port > 65535) {
      throw new IllegalArgumentException("A port is a number from 0 to 65535, not " + port + ".");
    }
    if (idle.isNegative() || idle.isZero()) {
      throw new IllegalArgumentException("A session must be allowed some idle time.");
    }
  }

  /** On this machine only, signed out after eight idle hours. */
  public static WebSettings loopback(int port) {
    return new WebSettings("127.0.0.1", port, Duration.ofHours(8), Optional.empty());
  }

  public WebSettings on(String otherHost) {
    return new WebSettings(otherHost, port, idle, keystore);
  }

  public WebSettings idleFor(Duration time) {
    return new WebSettings(host, port, time, keystore);
  }

  public WebSettings with(Keystore tls) {
    return new WebSettings(host, port, idle, Optional.of(tls));
  }

  boolean secure() {
    return keystore.isPresent();
  }

  /** Cookies know no ports: two programs on one host would sign each other's people out. */
  String cookieName() {
    return port == 0 ? "loopwright" : "loopwright-" + port;
  }
}
