package loopwright.web;

import io.javalin.http.Context;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A form that came when nobody was signed in any more, or from a page of an earlier session. What
 * was typed is carried through sign-in, shown, and sent on only when the person says so.
 *
 * @param path where it was sent to
 * @param lostFile whether a file came with it, which can't be carried
 */
record HeldForm(String path, List<Field> fields, boolean lostFile) {
  record Field(String name, String value) {}

  private static final String CARRIED_PATH = "held-path";
  private static final String CARRIED_FIELD = "held.";
  private static final String CARRIED_FILE = "held-file";

  /** The form just sent; empty when it is none, holds nothing typed, or may be another site's. */
  static Optional<HeldForm> sent(Context http) {
    boolean form = http.isFormUrlencoded() || http.isMultipartFormData();
    if (!form || !fromOurPages(http)) {
      return Optional.empty();
    }
    List<Field> fields = fields(http, "");
    return http.isMultipartFormData() && fields.stream().allMatch(field -> field.value.isBlank())
        ? Optional.empty()
        : Optional.of(new HeldForm(Page.pathWithQuery(http), fields, hasFile(http)));
  }

  private static boolean hasFile(Context http) {
    return http.isMultipartFormData()
        && http.uploadedFiles().stream().anyMatch(file -> file.size() > 0);
  }

  /** The form which the sign-in page carried on. */
  static Optional<HeldForm> carried(Context http) {
    String path = http.formParam(CARRIED_PATH);
    return path != null && path.equals(LocalPath.orFirstPage(path))
        ? Optional.of(
            new HeldForm(path, fields(http, CARRIED_FIELD), http.formParam(CARRIED_FILE) != null))
        : Optional.empty();
  }

  /** As the sign-in page carries it on: every name marked, the path beside. */
  List<Field> marked() {
    List<Field> marked = new ArrayList<>();
    marked.add(new Field(CARRIED_PATH, path));
    if (lostFile) {
      marked.add(new Field(CARRIED_FILE, "lost"));
    }
    fields.forEach(field -> marked.add(new Field(CARRIED_FIELD + field.name, field.value)));
    return marked;
  }

  private static List<Field> fields(Context http, String mark) {
    List<Field> fields = new ArrayList<>();
    for (Map.Entry<String, List<String>> entry : http.formParamMap().entrySet()) {
      String name = entry.getKey();
      if (name.startsWith(mark) && isKept(name)) {
        String plain = name.substring(mark.length());
        entry.getValue().forEach(value -> fields.add(new Field(plain, value)));
      }
    }
    return fields;
  }

  private static boolean isKept(String name) {
    return !name.equals(Gate.TOKEN_FIELD) && !name.toLowerCase(Locale.ROOT).contains("password");
  }

  /** Whether the browser says that one of our own pages sent this. */
  private static boolean fromOurPages(Context http) {
    String site = http.header("Sec-Fetch-Site");
    return site == null ? sameHost(http) : site.equals("same-origin");
  }

  private static boolean sameHost(Context http) {
    return Optional.ofNullable(http.header("Origin"))
        .map(HeldForm::authority)
        .filter(authority -> authority.equals(http.host()))
        .isPresent();
  }

  private static @Nullable String authority(String origin) {
    try {
      return URI.create(origin).getRawAuthority();
    } catch (IllegalArgumentException unreadable) {
      return null;
    }
  }
}
