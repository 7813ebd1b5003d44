package loopwright.pack;

import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What names a pack wherever its cells travel: which register, which outage, which revision, and
 * the beginning of its hash. Stands in every row, so that a cut-out part of a sheet is still known.
 *
 * @param register first eight characters of the database's identity
 * @param hash first eight characters of the revision's
 */
record Identity(String register, long outage, int revision, String hash) {
  private static final Pattern SHAPE =
      Pattern.compile("WP-([0-9a-f]{8})-O(\\d{1,15})-R(\\d{1,6})-([0-9a-f]{8})");

  static Identity of(UUID register, Revision revision) {
    return new Identity(
        register.toString().substring(0, 8),
        revision.outage(),
        revision.number(),
        revision.hash().substring(0, 8));
  }

  static Optional<Identity> read(String text) {
    Matcher matcher = SHAPE.matcher(text.strip());
    return matcher.matches()
        ? Optional.of(
            new Identity(
                matcher.group(1),
                Long.parseLong(matcher.group(2)),
                Integer.parseInt(matcher.group(3)),
                matcher.group(4)))
        : Optional.empty();
  }

  @Override
  public String toString() {
    return "WP-" + register + "-O" + outage + "-R" + revision + "-" + hash;
  }
}
