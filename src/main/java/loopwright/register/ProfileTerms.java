package loopwright.register;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import loopwright.dynamic.ResponseBand;
import loopwright.uncertainty.DecisionRule;
import loopwright.units.Numbers;

/**
 * How a profile's version decides beside its limits.
 *
 * @param rule in the face of uncertainty
 * @param reviewAsked whether a second person reviews what was signed
 * @param temperatures at which its limits hold; empty where it says nothing of it
 * @param response allowed frequency response; empty where it says nothing of it
 */
public record ProfileTerms(
    DecisionRule rule,
    boolean reviewAsked,
    Optional<TemperatureRange> temperatures,
    Optional<ResponseBand> response) {
  /** Inside the limits conforms, and nobody reviews. */
  public static final ProfileTerms SIMPLE = new ProfileTerms(DecisionRule.simple(), false);

  /** From memory of the trade, with up to 305 m of field cable; no document names it for us. */
  private static final ResponseBand USUAL_RESPONSE =
      new ResponseBand(
          "trade data, from memory",
          List.of(
              new ResponseBand.Stretch(
                  BigDecimal.ZERO,
                  BigDecimal.valueOf(10_000),
                  BigDecimal.valueOf(-3),
                  null,
                  null,
                  null)));

  /** Of limits that hold at any temperature, without a band for frequency responses. */
  public ProfileTerms(DecisionRule rule, boolean reviewAsked) {
    this(rule, reviewAsked, Optional.empty(), Optional.empty());
  }

  /**
   * What goes with a profile that comes with the program. The temperatures after API Std 670, 4th
   * and 5th edition, are from memory: testing range 0 to 45 °C, operating range of probe and cable
   * −35 to 120 °C.
   */
  static ProfileTerms builtIn(String code) {
    Optional<TemperatureRange> temperatures =
        switch (code) {
          case "api670-2mm" -> Optional.of(range(0, 45));
          case "api670-2mm-outside" -> Optional.of(range(-35, 120));
          default -> Optional.empty();
        };
    return new ProfileTerms(
        DecisionRule.simple(), false, temperatures, Optional.of(USUAL_RESPONSE));
  }

  private static TemperatureRange range(int from, int to) {
    return new TemperatureRange(BigDecimal.valueOf(from), BigDecimal.valueOf(to));
  }

  /** The rule in a sentence. */
  public String ruleInWords() {
    return switch (rule.kind()) {
      case SIMPLE -> "simple acceptance: inside the limits conforms";
      case GUARDED -> "guarded: the limits are drawn in by the expanded uncertainty U";
      case RISK_LIMIT ->
          "risk limit: proved when the probability of a false decision is at most "
              + percent(rule.riskLimit())
              + " %";
    };
  }

  static String percent(double share) {
    return Numbers.plain(BigDecimal.valueOf(share).movePointRight(2));
  }
}
