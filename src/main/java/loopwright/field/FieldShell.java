package loopwright.field;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;

/**
 * The page that devices keep, with its service worker and manifest. It holds nothing of anybody:
 * everybody may have it, and it opens whether or not a sign-in still holds.
 */
final class FieldShell implements Pages {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String WORKER = "assets/field/worker.js";

  /** Kept on the device beside the page; fonts are asked for without a hash by the style sheet. */
  private static final List<String> KEPT =
      List.of(
          "loopwright.css",
          "loopwright.svg",
          "field/field.css",
          "field/verdict.js",
          "field/device.js",
          "field/drafts.js",
          "field/outbox.js",
          "field/show.js",
          "field/photos.js",
          "field/form.js",
          "field/sheet.js",
          "field/field.js",
          "field/icon-192.png");

  private static final List<String> FONTS =
      List.of(
          "plex-sans-latin-400",
          "plex-sans-latin-600",
          "plex-mono-latin-400",
          "plex-mono-latin-600");

  private final Page page;
  private final String worker;

  FieldShell(Page page) {
    this.page = page;
    this.worker = "self.KEPT = " + json(kept(page)) + ";\n" + resource(WORKER);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/field", Permission.ANYONE, this::show);
    routes.get("/field/worker.js", Permission.ANYONE, this::worker);
    routes.get("/field/app.webmanifest", Permission.ANYONE, this::manifest);
  }

  /** Below {@code /field/} alone: what stands beside it is not the worker's. */
  private void show(Context http) {
    if (http.path().endsWith("/")) {
      page.show(http, "field/app", Map.of());
    } else {
      page.go(http, "/field/");
    }
  }

  private static List<String> kept(Page page) {
    List<String> kept = new ArrayList<>(List.of("/field/"));
    KEPT.forEach(path -> kept.add(page.asset(path)));
    FONTS.forEach(font -> kept.add("/assets/fonts/" + font + ".woff2"));
    return kept;
  }

  private static String resource(String path) {
    try (InputStream in = FieldShell.class.getClassLoader().getResourceAsStream(path)) {
      return new String(Objects.requireNonNull(in, path).readAllBytes(), UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private void worker(Context http) {
    http.header("Cache-Control", "no-cache");
    http.contentType("text/javascript; charset=utf-8").result(worker);
  }

  private void manifest(Context http) {
    http.header("Cache-Control", "no-cache");
    http.contentType("application/manifest+json; charset=utf-8")
        .result(
            json(
                Map.of(
                    "name", "Loopwright in the field",
                    "short_name", "Loopwright",
                    "start_url", "/field/",
                    "scope", "/field/",
                    "display", "standalone",
                    "background_color", "#f7f5ef",
                    "theme_color", "#1f5a8a",
                    "icons",
                        List.of(
                            icon("field/icon-192.png", "192x192"),
                            icon("field/icon-512.png", "512x512")))));
  }

  private Map<String, String> icon(String path, String sizes) {
    return Map.of("src", page.asset(path), "sizes", sizes, "type", "image/png");
  }

  private static String json(Object content) {
    try {
      return JSON.writeValueAsString(content);
    } catch (JsonProcessingException cannotHappen) {
      throw new IllegalStateException(cannotHappen);
    }
  }
}
