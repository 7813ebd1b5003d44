package loopwright.testing;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;

/**
 * Somebody at the program's pages without a browser: keeps cookies, doesn't follow redirects, and
 * puts the token of the last page seen into what it posts.
 */
public final class Visitor {
  /** An answer, readable as a page. */
  public record Answer(HttpResponse<String> http) {
    public int status() {
      return http.statusCode();
    }

    public String body() {
      return http.body();
    }

    public Document page() {
      return Jsoup.parse(http.body());
    }

    public String header(String name) {
      return http.headers().firstValue(name).orElse("");
    }

    /** Where a redirect leads; empty when it is none. */
    public String location() {
      return header("Location");
    }
  }

  private final URI address;
  private final CookieManager cookies = new CookieManager();
  private final HttpClient client = HttpClient.newBuilder().cookieHandler(cookies).build();
  private String token = "";

  public Visitor(URI address) {
    this.address = address;
  }

  /** A visitor already signed in as one of {@link KnownPeople}, by the role's word. */
  public static Visitor signedIn(URI address, String login) {
    Visitor visitor = new Visitor(address);
    Answer answer = visitor.signIn(login, KnownPeople.PASSWORD);
    if (answer.status() != 303) {
      throw new AssertionError("sign-in as " + login + " gave " + answer.status());
    }
    visitor.get("/password");
    return visitor;
  }

  public Answer signIn(String login, String password) {
    get("/sign-in");
    return post("/sign-in", "login", login, "password", password);
  }

  public Answer get(String path, String... headers) {
    return send(request(path, headers).GET());
  }

  /** Posts a form as one of our own pages would: token, origin and fields (name, value, …). */
  public Answer post(String path, String... fields) {
    List<String> all = new ArrayList<>(List.of("csrf", token));
    all.addAll(List.of(fields));
    return postBare(path, all.toArray(String[]::new), "Origin", origin());
  }

  /** Posts a form as one of our own pages would, for an answer that is no text. */
  public HttpResponse<byte[]> download(String path, String... fields) {
    List<String> all = new ArrayList<>(List.of("csrf", token));
    all.addAll(List.of(fields));
    HttpRequest.Builder request =
        request(path, "Origin", origin())
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(encoded(all.toArray(String[]::new))));
    try {
      return client.send(request.build(), BodyHandlers.ofByteArray());
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  /** The body of an answer that is no text. */
  public byte[] bytes(String path) {
    return fetch(path).body();
  }

  /** An answer that is no text. */
  public HttpResponse<byte[]> fetch(String path) {
    try {
      return client.send(request(path).GET().build(), BodyHandlers.ofByteArray());
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  /** Posts exactly those fields and headers. */
  public Answer postBare(String path, String[] fields, String... headers) {
    return send(
        request(path, headers)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(encoded(fields))));
  }

  public Answer send(HttpRequest.Builder request) {
    try {
      Answer answer = new Answer(client.send(request.build(), BodyHandlers.ofString(UTF_8)));
      String seen = answer.page().select("input[name=csrf]").attr("value");
      token = seen.isEmpty() ? token : seen;
      return answer;
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  public HttpRequest.Builder request(String path, String... headers) {
    HttpRequest.Builder request = HttpRequest.newBuilder(address.resolve(path));
    return headers.length == 0 ? request : request.headers(headers);
  }

  public String token() {
    return token;
  }

  public String origin() {
    return address.toString().replaceAll("/$", "");
  }

  /** Loses the cookies, as when the session ran out. */
  public void loseSession() {
    cookies.getCookieStore().removeAll();
  }

  private static String encoded(String... fields) {
    StringBuilder body = new StringBuilder();
    for (int i = 0; i < fields.length; i += 2) {
      body.append(i == 0 ? "" : "&")
          .append(URLEncoder.encode(fields[i], UTF_8))
          .append('=')
          .append(URLEncoder.encode(fields[i + 1], UTF_8));
    }
    return body.toString();
  }
}
