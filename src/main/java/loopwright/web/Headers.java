package loopwright.web;

import io.javalin.http.Context;

/** Headers of every answer: what a browser must not do with our pages. */
final class Headers {
  /** Nothing from elsewhere, nothing inline: a text that slips through unescaped stays text. */
  static final String CONTENT_POLICY =
      String.join(
          "; ",
          "default-src 'none'",
          "script-src 'self'",
          "style-src 'self'",
          "img-src 'self' data:",
          "font-src 'self'",
          "connect-src 'self'",
          "worker-src 'self'",
          "manifest-src 'self'",
          "form-action 'self'",
          "frame-ancestors 'none'",
          "base-uri 'none'");

  private final boolean secure;

  Headers(boolean secure) {
    this.secure = secure;
  }

  void set(Context http) {
    http.header("Content-Security-Policy", CONTENT_POLICY);
    http.header("X-Content-Type-Options", "nosniff");
    http.header("Referrer-Policy", "same-origin");
    http.header("Cross-Origin-Opener-Policy", "same-origin");
    http.header("Cross-Origin-Resource-Policy", "same-origin");
    http.header("Permissions-Policy", "camera=(), geolocation=(), microphone=()");
    http.header("Cache-Control", "no-store");
    if (secure) {
      http.header("Strict-Transport-Security", "max-age=31536000");
    }
  }
}
