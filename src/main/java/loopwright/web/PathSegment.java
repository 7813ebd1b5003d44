package loopwright.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Texts of people, such as tags, as one segment of an address. */
public final class PathSegment {
  private PathSegment() {}

  /** Whatever is in it, it stays one segment and reads back as it was. */
  public static String of(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }
}
