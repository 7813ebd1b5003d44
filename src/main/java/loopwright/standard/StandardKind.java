package loopwright.standard;

import java.util.Arrays;
import java.util.List;
import loopwright.problem.Refused;
import loopwright.units.Unit;

/** What a piece of measuring equipment does in a calibration. */
public enum StandardKind {
  /** Measures the output. */
  VOLTMETER("voltmeter", List.of(Unit.VOLT, Unit.MILLIVOLT)),
  /** Sets the gap. */
  MICROMETER("spindle micrometer", List.of(Unit.MICROMETRE, Unit.MIL)),
  /** Recorded, but part of no budget: a thermometer for instance. */
  OTHER("other", List.of());

  private final String word;
  private final List<Unit> units;

  StandardKind(String word, List<Unit> units) {
    this.word = word;
    this.units = units;
  }

  /** As people say it. */
  public String word() {
    return word;
  }

  /** Units that its ranges may be given in; none where they play no part. */
  public List<Unit> units() {
    return units;
  }

  /**
   * @throws Refused if it is none
   */
  static StandardKind named(String word) {
    return Arrays.stream(values())
        .filter(kind -> kind.word.equals(word.strip()))
        .findFirst()
        .orElseThrow(() -> new Refused(StandardProblem.NO_KIND));
  }
}
