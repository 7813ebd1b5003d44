package loopwright.symptom;

import java.time.Instant;

/**
 * What the cause finder made most likely of a loop, kept by somebody.
 *
 * @param cause in words
 * @param percent probability that it had then
 * @param asked what was typed, as in the address of the page
 */
record Suspicion(
    long id,
    long point,
    String tag,
    String cause,
    int percent,
    String asked,
    String note,
    String who,
    Instant at) {

  String href() {
    return "/cause?" + asked;
  }

  String inWords() {
    return "%s, %s %%: %s".formatted(cause, percent, note);
  }
}
