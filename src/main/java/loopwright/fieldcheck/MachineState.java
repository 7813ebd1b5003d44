package loopwright.fieldcheck;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What the rotor did while something was read; readings of different states don't compare. */
public enum MachineState {
  REST("rest", "at rest"),
  /** On the barring gear or in slow roll. */
  TURNING("turning", "turning slowly"),
  RUNNING("running", "running");

  private final String word;
  private final String label;

  MachineState(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** As kept and as files write it. */
  public String word() {
    return word;
  }

  /** As pages say it. */
  public String label() {
    return label;
  }

  public static Optional<MachineState> named(String word) {
    String plain = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(state -> state.word.equals(plain) || state.label.equals(plain))
        .findFirst();
  }

  static MachineState ofWord(String word) {
    return named(word).orElseThrow(() -> new IllegalStateException("no state " + word));
  }
}
