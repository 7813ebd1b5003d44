package loopwright.calibration;

import java.util.Arrays;
import java.util.Optional;

/** Where gap zero was taken. */
public enum Zero {
  MECHANICAL_TOUCH("mechanical touch"),
  /** Set by a voltage: absolute gaps are not claimed. */
  ELECTRICAL("electrical zero"),
  NOT_RECORDED("not recorded");

  private final String word;

  Zero(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  public static Optional<Zero> named(String word) {
    return Arrays.stream(values()).filter(zero -> zero.word.equals(word)).findFirst();
  }
}
