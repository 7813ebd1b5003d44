package loopwright.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * Style sheets, scripts and fonts, packed in the jar under {@code assets/}. Their addresses carry a
 * hash of the content, so that a browser may keep them for a year and still never shows an old one.
 */
final class Assets {
  private static final Pattern PATH =
      Pattern.compile("([a-z0-9-]+/)*[a-z0-9-]+(\\.[a-z0-9-]+)*\\.(css|js|woff2|svg|png|txt)");
  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "woff2", "font/woff2",
          "svg", "image/svg+xml",
          "png", "image/png",
          "txt", "text/plain; charset=utf-8");

  /** Files that come from libraries, by the name we serve them under. */
  private static final Map<String, String> FROM_LIBRARIES =
      Map.of("htmx.js", "META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js");

  private record Asset(byte[] bytes, String hash) {}

  private final Map<String, Optional<Asset>> read = new ConcurrentHashMap<>();

  public boolean has(String path) {
    return find(path).isPresent();
  }

  /** The address of an asset, hash included. */
  public String address(String path) {
    String hash = find(path).orElseThrow(() -> new IllegalArgumentException(path)).hash();
    return "/assets/" + path + "?v=" + hash;
  }

  void serve(Context http) {
    String path = http.pathParam("path");
    Asset asset = find(path).orElseThrow(NotFoundResponse::new);
    boolean exact = asset.hash().equals(http.queryParam("v")) || path.endsWith(".woff2");
    http.header(
        "Cache-Control", exact ? "public, max-age=31536000, immutable" : "public, max-age=300");
    http.header("ETag", '"' + asset.hash() + '"');
    http.contentType(TYPES.get(path.substring(path.lastIndexOf('.') + 1)));
    if (('"' + asset.hash() + '"').equals(http.header("If-None-Match"))) {
      http.status(304);
    } else {
      http.result(asset.bytes());
    }
  }

  private Optional<Asset> find(String path) {
    return PATH.matcher(path).matches()
        ? read.computeIfAbsent(path, Assets::load)
        : Optional.empty();
  }

  private static Optional<Asset> load(String path) {
    String resource = FROM_LIBRARIES.getOrDefault(path, "assets/" + path);
    try (InputStream in = Assets.class.getClassLoader().getResourceAsStream(resource)) {
      return in == null ? Optional.empty() : Optional.of(asset(in.readAllBytes()));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Asset asset(byte[] bytes) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return new Asset(bytes, HexFormat.of().formatHex(digest, 0, 6));
    } catch (NoSuchAlgorithmException everyJdkHasIt) {
      throw new IllegalStateException(everyJdkHasIt);
    }
  }
}
