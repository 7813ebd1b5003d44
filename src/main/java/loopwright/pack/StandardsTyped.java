package loopwright.pack;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.calibration.ChosenStandards;
import loopwright.curve.CurveReading;
import loopwright.standard.Standard;

/**
 * The standards that a sheet names for one stage. What the register knows goes into the record
 * under the certificate of that day; any other name is asked back and then kept as typed.
 *
 * @param typed every name, as typed
 * @param chosen those that the register knows, and what is wrong with the others
 */
record StandardsTyped(List<String> typed, ChosenStandards chosen) {
  StandardsTyped {
    typed = List.copyOf(typed);
  }

  /**
   * @param day on which it was measured, on the site's calendar
   */
  static StandardsTyped read(
      FilledLoop loop, Column column, Optional<LocalDate> day, List<Standard> all) {
    List<String> typed =
        Stream.of(loop.text(Item.STANDARDS, "", column).split("[,;\n]"))
            .map(String::strip)
            .filter(name -> !name.isEmpty())
            .distinct()
            .toList();
    ChosenStandards chosen = ChosenStandards.named(typed, day, all);
    chosen
        .clashes()
        .forEach(
            clash ->
                loop.complain(loop.place(Item.STANDARDS, "", column), PackProblem.READING, clash));
    return new StandardsTyped(typed, chosen);
  }

  List<Long> certificates() {
    return chosen.certificates();
  }

  List<String> questions(List<CurveReading> readings) {
    List<String> questions = new ArrayList<>(chosen.questions(readings));
    chosen
        .unresolved()
        .forEach(
            (name, why) ->
                questions.add(
                    why
                        + " It would be kept as typed beside what came back, and no uncertainty stated"
                        + " with it. Keep it so?"));
    return questions;
  }

  /** In words, for what came of the return; empty when none is named. */
  Optional<String> told() {
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    String known =
        String.join(", ", chosen.used().stream().map(used -> used.standard().code()).toList());
    String unknown = String.join(", ", chosen.unresolved().keySet());
    return Optional.of(
        (known.isEmpty() ? "" : "Measured with " + known + ".")
            + (known.isEmpty() || unknown.isEmpty() ? "" : " ")
            + (unknown.isEmpty()
                ? ""
                : "Standards as typed, not in the register: " + unknown + "."));
  }
}
