package loopwright.exposure;

import java.util.List;

/**
 * A record whose verdict is another one without the error of a standard.
 *
 * @param calibration number of its row
 * @param point of its loop
 * @param told how it was touched and what it would say, sentence by sentence
 */
public record SecondThought(long calibration, long point, List<String> told) {
  public SecondThought {
    told = List.copyOf(told);
  }
}
