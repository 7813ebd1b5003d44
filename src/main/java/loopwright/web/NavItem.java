package loopwright.web;

/**
 * One entry of the navigation.
 *
 * @param key what a page names as {@code here} to have this entry marked
 * @param needs who sees it
 */
public record NavItem(String path, String label, String key, Permission needs) {
  public NavItem(String path, String label, String key) {
    this(path, label, key, Permission.READ);
  }
}
