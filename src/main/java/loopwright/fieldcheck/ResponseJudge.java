package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.dynamic.FieldCable;
import loopwright.dynamic.FrequencyResponse;

/** What a frequency response says, and how much of it the field cable explains. */
final class ResponseJudge {
  /** From memory: 0 to 10 kHz within 3 dB is what drivers of the trade are specified for. */
  static final double USUAL_LOW = -3;

  static final double USUAL_HIGH = 3;
  private static final double USUAL_TO_HERTZ = 10_000;

  private ResponseJudge() {}

  static List<Said> judge(Entries entries) {
    List<Said> said = new ArrayList<>();
    Optional<FrequencyResponse> response = Sines.response(entries);
    response.ifPresent(r -> said.add(band(r, entries)));
    Optional<FieldCable> cable = Sines.cable(entries);
    response.ifPresent(r -> cable.ifPresent(c -> said.add(wiring(r, c))));
    return said;
  }

  static double low(Entries entries) {
    return entries.amount("band-low").orElse(USUAL_LOW);
  }

  static double high(Entries entries) {
    return entries.amount("band-high").orElse(USUAL_HIGH);
  }

  private static Said band(FrequencyResponse response, Entries entries) {
    boolean own = entries.amount("band-low").isPresent() || entries.amount("band-high").isPresent();
    FrequencyResponse judged = own ? response : upToUsual(response);
    FrequencyResponse.Point worst = judged.worst(low(entries), high(entries));
    double level = worst.decibels();
    return Said.judged(
        level >= low(entries) - 1e-9 && level <= high(entries) + 1e-9,
        "response",
        "Worst at %s: %s, where %s to %s are allowed."
            .formatted(
                Amounts.hertz(worst.hertz()),
                Amounts.number("%+.2f dB", level),
                Amounts.number("%.1f", low(entries)),
                Amounts.number("%.1f dB", high(entries))),
        own ? "the band typed with this record" : "within 3 dB up to 10 kHz; from memory");
  }

  /** Beyond 10 kHz nothing is promised; the two lowest frequencies always count. */
  private static FrequencyResponse upToUsual(FrequencyResponse response) {
    List<FrequencyResponse.Point> within =
        response.points().stream().filter(p -> p.hertz() <= USUAL_TO_HERTZ).toList();
    return within.size() < 2
        ? new FrequencyResponse(response.points().subList(0, 2))
        : new FrequencyResponse(within);
  }

  private static Said wiring(FrequencyResponse response, FieldCable cable) {
    FrequencyResponse.Point last = response.points().get(response.points().size() - 1);
    return Said.only(
        "field cable",
        ("It makes a low pass with its corner at %s kHz: of %s at %s it explains %s. f_c ="
                + " 1/(2π R C), |H| = 1/√(1 + (f/f_c)²), first order, textbook; the cable's own"
                + " resistance and the monitor's input are left out.")
            .formatted(
                Amounts.number("%.1f", cable.cornerHertz() / 1000),
                Amounts.number("%+.2f dB", last.decibels()),
                Amounts.hertz(last.hertz()),
                Amounts.number("%+.2f dB", cable.decibels(last.hertz()))));
  }
}
