package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loopwright.dynamic.FieldCable;
import loopwright.dynamic.FrequencyResponse;
import loopwright.dynamic.ResponseBand;

/** What a frequency response says, and how much of it the field cable explains. */
final class ResponseJudge {
  /** From memory: 0 to 10 kHz within 3 dB is what drivers of the trade are specified for. */
  static final double USUAL_LOW = -3;

  static final double USUAL_HIGH = 3;
  private static final double USUAL_TO_HERTZ = 10_000;

  private ResponseJudge() {}

  /**
   * @param allowed by the loop's profile; without it the band typed with the record counts, else
   *     the usual one
   */
  static List<Said> judge(Entries entries, Optional<Background.AllowedResponse> allowed) {
    List<Said> said = new ArrayList<>();
    Optional<FrequencyResponse> response = Sines.response(entries);
    response.ifPresent(r -> allowed.ifPresent(by -> said.addAll(byProfile(r, by))));
    response
        .filter(r -> allowed.isEmpty() || typed(entries))
        .ifPresent(r -> said.add(band(r, entries)));
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

  private static boolean typed(Entries entries) {
    return entries.amount("band-low").isPresent() || entries.amount("band-high").isPresent();
  }

  private static List<Said> byProfile(
      FrequencyResponse response, Background.AllowedResponse allowed) {
    List<Said> said = new ArrayList<>();
    ResponseBand band = allowed.band();
    String basis = "response band of profile " + allowed.name() + "; " + band.source();
    List<Placed> levels =
        response.points().stream()
            .map(p -> new Placed(p.hertz(), p.decibels(), band.level(p.hertz())))
            .toList();
    List<Placed> phases =
        response.points().stream()
            .flatMap(
                p ->
                    response.phaseShift(p).stream()
                        .mapToObj(shift -> new Placed(p.hertz(), shift, band.phase(p.hertz()))))
            .toList();
    Placed.worst(levels).ifPresent(worst -> said.add(worst.said("response", " dB", basis)));
    Placed.worst(phases).ifPresent(worst -> said.add(worst.said("phase", "°", basis)));
    if (phases.isEmpty() && band.stretches().stream().anyMatch(ResponseJudge::asksPhase)) {
      said.add(Said.only("phase", "The profile allows a band of phase; none was measured."));
    }
    long beyond = response.points().stream().filter(p -> !band.reaches(p.hertz())).count();
    if (beyond > 0) {
      said.add(
          Said.only(
              "response",
              "%s of %s frequencies lie outside the band's ranges and are not judged."
                  .formatted(beyond, response.points().size())));
    }
    return said;
  }

  private static boolean asksPhase(ResponseBand.Stretch stretch) {
    return stretch.lowPhase() != null || stretch.highPhase() != null;
  }

  /** A value at a frequency with what is allowed there. */
  private record Placed(double hertz, double value, ResponseBand.Allowed allowed) {
    /** The one farthest outside, or nearest to its limit; empty where nothing is limited. */
    static Optional<Placed> worst(List<Placed> all) {
      return all.stream()
          .filter(each -> each.allowed.isLimit())
          .max(Comparator.comparingDouble(each -> each.allowed.beyond(each.value)));
    }

    Said said(String about, String unit, String basis) {
      return Said.judged(
          allowed.holds(value),
          about,
          "Worst at %s: %s, where %s allowed; from the lowest frequency."
              .formatted(
                  Amounts.hertz(hertz), Amounts.number("%+.2f" + unit, value), inWords(unit)),
          basis);
    }

    private String inWords(String unit) {
      if (allowed.low() == Double.NEGATIVE_INFINITY) {
        return "up to " + Amounts.number("%+.1f" + unit, allowed.high()) + " is";
      }
      return allowed.high() == Double.POSITIVE_INFINITY
          ? Amounts.number("%+.1f" + unit, allowed.low()) + " and more is"
          : Amounts.number("%+.1f", allowed.low())
              + " to "
              + Amounts.number("%+.1f" + unit, allowed.high())
              + " is";
    }
  }

  private static Said band(FrequencyResponse response, Entries entries) {
    boolean own = typed(entries);
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
