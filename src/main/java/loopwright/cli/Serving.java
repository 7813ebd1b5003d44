package loopwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import loopwright.web.WebSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/**
 * What {@code serve} and {@code demo} have in common: where to listen, and running until stopped.
 */
final class Serving {
  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "8470",
      description = "Port to listen on; 0 takes a free one. Default: ${DEFAULT-VALUE}.")
  int port;

  @Option(
      names = "--host",
      paramLabel = "H",
      defaultValue = "127.0.0.1",
      description =
          "Address to listen on. Default: ${DEFAULT-VALUE}, which only this machine reaches. Anything"
              + " else wants TLS in front or --keystore.")
  String host = "127.0.0.1";

  @Option(
      names = "--keystore",
      paramLabel = "FILE",
      description = "PKCS #12 or JKS file with key and certificate: serve TLS only.")
  @Nullable Path keystore;

  @Option(
      names = "--keystore-password",
      paramLabel = "TEXT",
      description = "Password of the keystore; better given in LOOPWRIGHT_KEYSTORE_PASSWORD.")
  String keystorePassword = "";

  WebSettings settings() {
    Optional<WebSettings.Keystore> tls =
        Optional.ofNullable(keystore).map(file -> new WebSettings.Keystore(file, password()));
    return new WebSettings(host, port, Duration.ofHours(8), tls);
  }

  private String password() {
    String fromEnvironment = System.getenv("LOOPWRIGHT_KEYSTORE_PASSWORD");
    return keystorePassword.isEmpty() && fromEnvironment != null
        ? fromEnvironment
        : keystorePassword;
  }

  /**
   * Runs until the process is asked to end; then closes in order: pages first, then the database.
   */
  static void untilStopped(AutoCloseable web, AutoCloseable app, PrintWriter out)
      throws InterruptedException {
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  close(web, out);
                  close(app, out);
                  stopped.countDown();
                },
                "loopwright-stop"));
    out.println("Stop it with Ctrl-C.");
    out.flush();
    stopped.await();
  }

  private static void close(AutoCloseable open, PrintWriter out) {
    try {
      open.close();
    } catch (Exception failed) {
      out.println("It did not close cleanly: " + failed.getMessage());
      out.flush();
    }
  }
}
