package loopwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import loopwright.label.LabelBase;
import loopwright.problem.Refused;
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
      description =
          "Password of the keystore; better given in LOOPWRIGHT_KEYSTORE_PASSWORD or in a file.")
  String keystorePassword = "";

  @Option(
      names = "--keystore-password-file",
      paramLabel = "FILE",
      description = "File whose first line is the keystore's password.")
  @Nullable Path keystorePasswordFile;

  @Option(
      names = "--base-address",
      paramLabel = "URL",
      description =
          "Address under which this register will be found for years to come, such as"
              + " https://loops.example; printed labels lead there.")
  @Nullable String baseAddress;

  @Option(
      names = "--former-address",
      paramLabel = "URL",
      description =
          "Address that labels were printed with before; may be given several times. Such labels"
              + " are read like those of today.")
  List<String> formerAddresses = List.of();

  /**
   * Where labels lead to.
   *
   * @param trying whether the address a page is asked under is good enough
   */
  LabelBase labels(boolean trying) {
    return new LabelBase(Optional.ofNullable(baseAddress), formerAddresses, trying);
  }

  /** In words, for the start. */
  static String told(LabelBase labels) {
    return labels
        .address()
        .map(address -> "Labels lead to " + address + "/c/…")
        .orElse(
            labels.trying()
                ? "Labels lead to whatever address you open the pages under; a site's register is"
                    + " given --base-address."
                : "No --base-address is given: labels can't be printed until it is.");
  }

  WebSettings settings() {
    Optional<WebSettings.Keystore> tls =
        Optional.ofNullable(keystore).map(file -> new WebSettings.Keystore(file, password()));
    return new WebSettings(host, port, Duration.ofHours(8), tls);
  }

  private String password() {
    if (keystorePasswordFile != null) {
      return firstLine(keystorePasswordFile);
    }
    String fromEnvironment = System.getenv("LOOPWRIGHT_KEYSTORE_PASSWORD");
    return keystorePassword.isEmpty() && fromEnvironment != null
        ? fromEnvironment
        : keystorePassword;
  }

  private static String firstLine(Path file) {
    try (Stream<String> lines = Files.lines(file)) {
      return lines.findFirst().orElse("");
    } catch (IOException | UncheckedIOException unreadable) {
      Refused refused = new Refused(CliProblem.NO_PASSWORD_FILE, file);
      refused.initCause(unreadable);
      throw refused;
    }
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
