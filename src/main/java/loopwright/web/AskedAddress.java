package loopwright.web;

import io.javalin.http.Context;

/** Under which address somebody asked for a page. */
public final class AskedAddress {
  private AskedAddress() {}

  /** Scheme, host and port: {@code https://loops.example:8470}. */
  public static String of(Context http) {
    return http.scheme() + "://" + http.host();
  }
}
