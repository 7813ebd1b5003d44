package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.dynamic.Amplitude;
import loopwright.dynamic.DynamicReading;
import loopwright.dynamic.FieldCable;
import loopwright.dynamic.FrequencyResponse;

/** The dynamic readings among what was typed, peak to peak. */
final class Sines {
  private Sines() {}

  static Optional<DynamicReading> reading(Entries entries) {
    return reading(entries, 0, "displacement", "output", "frequency");
  }

  private static Optional<DynamicReading> reading(
      Entries entries, int row, String moved, String gave, String at) {
    Optional<Double> displacement = entries.amount(moved, row);
    Optional<Double> output = entries.amount(gave, row);
    Optional<Double> frequency = entries.amount(at, row);
    Optional<Amplitude> movedAs = Amplitude.named(entries.word("displacement-as"));
    Optional<Amplitude> gaveAs = Amplitude.named(entries.word("output-as"));
    if (displacement.isEmpty()
        || output.isEmpty()
        || frequency.isEmpty()
        || movedAs.isEmpty()
        || gaveAs.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new DynamicReading(
            movedAs.get().toPeakToPeak(displacement.get()),
            gaveAs.get().toPeakToPeak(output.get()),
            frequency.get()));
  }

  static Optional<FrequencyResponse> response(Entries entries) {
    List<FrequencyResponse.Measured> measured = new ArrayList<>();
    for (int row = 1; row <= entries.rows(); row++) {
      OptionalDouble phase =
          entries.amount("phase", row).map(OptionalDouble::of).orElse(OptionalDouble.empty());
      reading(entries, row, "moved", "gave", "at")
          .ifPresent(one -> measured.add(new FrequencyResponse.Measured(one, phase)));
    }
    return measured.size() < 2 ? Optional.empty() : Optional.of(FrequencyResponse.of(measured));
  }

  static Optional<FieldCable> cable(Entries entries) {
    Optional<Double> metres = entries.amount("cable").filter(length -> length > 0);
    Optional<Double> picofarads = entries.amount("capacitance").filter(each -> each > 0);
    double source = entries.amount("source").orElse(FieldCable.USUAL_OHMS);
    return metres.flatMap(length -> picofarads.map(each -> FieldCable.of(source, each, length)));
  }
}
