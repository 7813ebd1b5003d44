package loopwright.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.uncertainty.DecisionRule;
import loopwright.uncertainty.ErrorSource;
import loopwright.uncertainty.Quantity;
import loopwright.uncertainty.Spread;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/**
 * What {@code analyse} is told about the equipment. Texts, so that a refusal can say what to write.
 */
final class UncertaintyOptions {
  private static final String VOLTS = "--u-volts";
  private static final String GAP = "--u-gap-um";
  private static final String SCALE = "--u-gap-scale";
  private static final double MOST_VOLTS = 2;
  private static final double MOST_MICROMETRES = 500;
  private static final double MOST_SHARE = 0.5;

  @Option(
      names = VOLTS,
      paramLabel = "V",
      description = "Standard uncertainty of each voltage by itself, in V.")
  @Nullable String volts;

  @Option(
      names = GAP,
      paramLabel = "G",
      description = "Standard uncertainty of each gap by itself, in µm.")
  @Nullable String gap;

  @Option(
      names = SCALE,
      paramLabel = "R",
      description =
          "Standard uncertainty of the micrometer's scale, the same relative error in all gaps:"
              + " 0.001 is 0.1 %%.")
  @Nullable String scale;

  @Option(
      names = "--rule",
      paramLabel = "RULE",
      description =
          "How decisions are made with these uncertainties: simple (inside the limits conforms,"
              + " default) or guarded (limits drawn in by the expanded uncertainty).")
  @Nullable String rule;

  /** Were any uncertainties given? */
  boolean areGiven() {
    return volts != null || gap != null || scale != null;
  }

  /**
   * The sources of error; one not given counts as none.
   *
   * @throws Refused when a value can't be one, all are zero, or a rule stands alone
   */
  List<ErrorSource> sources() {
    double u = value(VOLTS, volts, MOST_VOLTS, "volts: 10 mV is 0.01");
    double g = value(GAP, gap, MOST_MICROMETRES, "micrometres: 0.1 mil is 2.54");
    double r = value(SCALE, scale, MOST_SHARE, "a share of the gap: 0.1 % is 0.001");
    if (u == 0 && g == 0 && r == 0) {
      throw new Refused(CliProblem.NO_UNCERTAINTY);
    }
    return List.of(
        ErrorSource.known("voltage reading", Quantity.VOLTS, Spread.EACH_READING, u),
        ErrorSource.known("gap reading", Quantity.GAP, Spread.EACH_READING, g),
        ErrorSource.known("gap scale", Quantity.GAP, Spread.SAME_SHARE, r));
  }

  /** What was left out, in sentences. */
  List<String> omissions() {
    List<String> sentences = new ArrayList<>();
    note(sentences, VOLTS, volts);
    note(sentences, GAP, gap);
    note(sentences, SCALE, scale);
    return sentences;
  }

  private static void note(List<String> sentences, String option, @Nullable String given) {
    if (given == null) {
      sentences.add(option + " was not given and counts as zero.");
    }
  }

  /**
   * @throws Refused when it is not a rule, or stands without uncertainties
   */
  DecisionRule decisionRule() {
    String name = rule == null ? "simple" : rule.strip().toLowerCase(Locale.ROOT);
    return switch (name) {
      case "simple" -> DecisionRule.simple();
      case "guarded" -> DecisionRule.guarded();
      default -> throw new Refused(CliProblem.UNKNOWN_RULE, name);
    };
  }

  /** Refuses what can't be used, before any file is read. */
  void refuseUnfit() {
    if (rule != null && !areGiven()) {
      throw new Refused(CliProblem.LONE_RULE);
    }
    decisionRule();
    if (areGiven()) {
      sources();
    }
  }

  private static double value(String option, @Nullable String text, double most, String remedy) {
    if (text == null) {
      return 0;
    }
    Optional<BigDecimal> number = Numbers.read(text);
    if (number.isEmpty()) {
      throw new Refused(CliProblem.NOT_AN_UNCERTAINTY, option, text, remedy);
    }
    double value = number.get().doubleValue();
    if (value < 0) {
      throw new Refused(CliProblem.NEGATIVE_UNCERTAINTY, option, text);
    }
    if (value > most) {
      throw new Refused(CliProblem.LARGE_UNCERTAINTY, option, text, remedy);
    }
    return value;
  }
}
