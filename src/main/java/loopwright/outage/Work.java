package loopwright.outage;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A kind of work on a loop, with the steps that are printed until the shop writes its own. The
 * built-in steps are common practice, no source.
 */
public enum Work {
  VERIFY(
      "verify",
      "verify lengths and labels",
      "Read maker, model, serial and length on probe, cable and driver; write down what can't be read.",
      "Compare with the sheet. A serial that differs goes into the sheet as found.",
      "Look at connectors: clean, dry, tight, protected, none of them on earth."),
  AS_FOUND(
      "as-found",
      "as-found static",
      "Read the gap voltage at rest before anything is touched, and the supply at the driver.",
      "Take out the probe; keep it with its own cable and driver.",
      "Set the target of the right alloy; approach every gap from one side, to take out backlash.",
      "Read the voltage at every gap of the sheet; where there is time, down again as well."),
  DYNAMIC(
      "dynamic",
      "dynamic check",
      "Set a known displacement at a known frequency.",
      "Read the output at the driver and the value that the monitor shows.",
      "Compare both with the sheet."),
  EXCHANGE(
      "exchange",
      "exchange parts",
      "Compare the serial and the length of the new part with the sheet before fitting it.",
      "Fit it; route and tie the cable, protect the connector.",
      "Label the part that was taken out and bring it to the store or to quarantine."),
  SET_GAP(
      "set-gap",
      "set gap",
      "Shaft at rest in its resting position.",
      "Screw the probe in until the target voltage is read; the probe must not touch the shaft.",
      "Torque the lock nut and read the voltage again; it often moves while tightening."),
  AS_LEFT(
      "as-left",
      "as-left static",
      "Read the whole curve again with exactly the parts that stay fitted.",
      "Where nothing was touched, say so: then the as-found stands as the as-left.",
      "Read the gap voltage at rest as left."),
  RESTORE(
      "restore",
      "restore channel",
      "Compare the monitor's value at rest, scale factor, set points and OK limits with the sheet.",
      "Prove alert, danger and the loss of OK as the site's procedure says.",
      "Have the bypass taken off under the site's procedure; a second person proves it.");

  private final String word;
  private final String label;
  private final List<String> steps;

  Work(String word, String label, String... steps) {
    this.word = word;
    this.label = label;
    this.steps = List.of(steps);
  }

  /** As stored. */
  public String word() {
    return word;
  }

  /** As shown. */
  public String label() {
    return label;
  }

  /** What is printed until the shop writes its own. */
  public List<String> builtInSteps() {
    return steps;
  }

  /** What is usually done; an exchange only where something doesn't match. */
  static Set<Work> usual() {
    return EnumSet.of(VERIFY, AS_FOUND, SET_GAP, AS_LEFT, RESTORE);
  }

  /** The one of that word; empty if there is none. */
  public static Optional<Work> named(String word) {
    return Stream.of(values()).filter(work -> work.word.equals(word)).findFirst();
  }

  static Set<Work> read(String words) {
    Set<Work> works = EnumSet.noneOf(Work.class);
    Stream.of(words.split(",")).map(Work::named).flatMap(Optional::stream).forEach(works::add);
    return works;
  }

  static String write(Collection<Work> works) {
    return EnumSet.copyOf(works).stream().map(Work::word).collect(Collectors.joining(","));
  }
}
