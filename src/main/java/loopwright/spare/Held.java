package loopwright.spare;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A part put aside.
 *
 * @param reservation number of it
 * @param label serial or shop number of the part
 * @param words kind and length
 * @param verdict of the loop with this part in it, when it was put aside
 * @param proof what the rules said then, one finding a line
 */
record Held(
    long reservation,
    long outage,
    long point,
    String tag,
    String slot,
    long component,
    String label,
    String words,
    String store,
    String bin,
    String verdict,
    String proof,
    String who) {

  /** {@code Store 2, 14}; says so where nobody knows. */
  String where() {
    String shelf =
        Stream.of(store, bin).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "));
    return shelf.isEmpty() ? "place not recorded" : shelf;
  }
}
