package loopwright.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import loopwright.problem.Refused;
import loopwright.testing.KnownPeople;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WebTest {
  private static final InstantSource CLOCK = InstantSource.fixed(Instant.EPOCH);

  private static Web start(WebSettings settings, Pages... pages) {
    return Web.start(settings, SamplePages.PAGE, new KnownPeople(), CLOCK, List.of(pages));
  }

  @Test
  void aPortInUseIsRefusedInWords() {
    try (Web first = start(WebSettings.loopback(0))) {
      assertThatThrownBy(() -> start(WebSettings.loopback(first.port())))
          .isInstanceOf(Refused.class)
          .hasMessageContaining("127.0.0.1, port " + first.port())
          .hasMessageContaining("choose another port");
    }
  }

  @Test
  void aRequestUnderWayIsFinishedBeforeTheEnd() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch go = new CountDownLatch(1);
    Pages slow =
        routes ->
            routes.get(
                "/slow",
                Permission.ANYONE,
                http -> {
                  begun.countDown();
                  go.await(10, TimeUnit.SECONDS);
                  http.result("finished");
                });
    Web web = start(WebSettings.loopback(0), slow);
    CompletableFuture<HttpResponse<String>> answer =
        HttpClient.newHttpClient()
            .sendAsync(
                HttpRequest.newBuilder(web.address().resolve("/slow")).build(),
                BodyHandlers.ofString());
    begun.await(10, TimeUnit.SECONDS);
    CompletableFuture<Void> closing = CompletableFuture.runAsync(web::close);
    waitUntilNobodyElseIsServed(web.address().resolve("/health"));
    go.countDown();
    assertThat(answer.get(10, TimeUnit.SECONDS).body()).isEqualTo("finished");
    closing.get(10, TimeUnit.SECONDS);
  }

  private static void waitUntilNobodyElseIsServed(URI address) {
    for (int i = 0; i < 500; i++) {
      try (Socket there = new Socket(address.getHost(), address.getPort())) {
        there.setSoTimeout(1000);
        there.getOutputStream().write("GET /health HTTP/1.0\r\n\r\n".getBytes(UTF_8));
        String answer = new String(there.getInputStream().readAllBytes(), UTF_8);
        if (!answer.startsWith("HTTP/1.1 200")) {
          return;
        }
      } catch (IOException refused) {
        return;
      }
    }
    throw new AssertionError("still serving " + address);
  }

  @Test
  void withAKeystoreOnlyTlsIsSpokenAndCookiesAreSecure(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("keys.p12");
    makeKeystore(file);
    WebSettings settings =
        WebSettings.loopback(0).with(new WebSettings.Keystore(file, "a test password"));
    try (Web web = start(settings, new SamplePages())) {
      assertThat(web.address().getScheme()).isEqualTo("https");
      HttpClient client = HttpClient.newBuilder().sslContext(trusting(file)).build();
      HttpResponse<String> answer =
          client.send(
              HttpRequest.newBuilder(web.address().resolve("/sign-in")).build(),
              BodyHandlers.ofString());
      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(answer.headers().firstValue("Set-Cookie").orElse("")).contains("Secure");
      assertThat(answer.headers().firstValue("Strict-Transport-Security")).isPresent();
    }
  }

  @Test
  void aKeystoreThatCannotBeUsedIsRefusedInWords(@TempDir Path folder) throws Exception {
    Path none = folder.resolve("none.p12");
    assertThatThrownBy(() -> start(tls(none))).hasMessageContaining("there is no such file");
    Path text = Files.writeString(folder.resolve("text.p12"), "not a keystore");
    assertThatThrownBy(() -> start(tls(text)))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("can't be used as a keystore");
  }

  private static WebSettings tls(Path file) {
    return WebSettings.loopback(0).with(new WebSettings.Keystore(file, "secret"));
  }

  @Test
  void aKeystoresPasswordIsNotPrinted() {
    assertThat(tls(Path.of("keys.p12")).toString()).doesNotContain("secret");
  }

  private static void makeKeystore(Path file) throws Exception {
    Path keytool = Path.of(System.getProperty("java.home"), "bin", "keytool");
    Process made =
        new ProcessBuilder(
                keytool.toString(),
                "-genkeypair",
                "-alias",
                "test",
                "-keyalg",
                "EC",
                "-dname",
                "CN=test",
                "-ext",
                "san=ip:127.0.0.1",
                "-storepass",
                "a test password",
                "-keystore",
                file.toString(),
                "-storetype",
                "PKCS12")
            .redirectErrorStream(true)
            .start();
    String said = new String(made.getInputStream().readAllBytes(), UTF_8);
    assertThat(made.waitFor()).as(said).isZero();
  }

  private static SSLContext trusting(Path file) throws Exception {
    KeyStore keys = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(file)) {
      keys.load(in, "a test password".toCharArray());
    }
    KeyStore trusted = KeyStore.getInstance("PKCS12");
    trusted.load(null, null);
    trusted.setCertificateEntry("test", keys.getCertificate("test"));
    TrustManagerFactory trust =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    trust.init(trusted);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, trust.getTrustManagers(), new SecureRandom());
    return context;
  }
}
