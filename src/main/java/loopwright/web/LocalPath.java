package loopwright.web;

import org.jspecify.annotations.Nullable;

/** Where to go after sign-in: a path of this program, never another site. */
final class LocalPath {
  static final String FIRST_PAGE = "/";

  private LocalPath() {}

  /** The path itself when it is one of ours and fit to return to; the first page otherwise. */
  static String orFirstPage(@Nullable String path) {
    return path != null && isLocal(path) && !isSigning(path) ? path : FIRST_PAGE;
  }

  private static boolean isLocal(String path) {
    // browsers read a backslash as a slash, and drop tabs and line breaks before they look
    return path.startsWith("/")
        && !path.startsWith("//")
        && path.indexOf('\\') < 0
        && path.chars().noneMatch(Character::isISOControl);
  }

  private static boolean isSigning(String path) {
    return path.startsWith("/sign-in") || path.startsWith("/sign-out");
  }
}
