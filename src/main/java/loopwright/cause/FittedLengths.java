package loopwright.cause;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.Numbers;

/**
 * Total lengths that may be fitted, kept as they were typed.
 *
 * @param typed texts, in the order given
 * @param metres their numbers
 */
public record FittedLengths(List<String> typed, List<BigDecimal> metres) {
  private static final BigDecimal REACH = BigDecimal.valueOf(LengthLaw.REACH);
  private static final BigDecimal STEP = new BigDecimal("0.5");
  private static final int STEPS = 2;
  private static final BigDecimal LONGEST = new BigDecimal(100);

  public FittedLengths {
    typed = List.copyOf(typed);
    metres = List.copyOf(metres);
  }

  /** The system length, half a metre and a metre to either side, as far as the model reaches. */
  public static FittedLengths usual(Length system) {
    List<BigDecimal> metres =
        IntStream.rangeClosed(-STEPS, STEPS)
            .mapToObj(step -> system.metres().add(STEP.multiply(BigDecimal.valueOf(step))))
            .filter(length -> isWithinReach(length, system))
            .map(FittedLengths::oneDecimal)
            .toList();
    return new FittedLengths(metres.stream().map(BigDecimal::toPlainString).toList(), metres);
  }

  private static BigDecimal oneDecimal(BigDecimal length) {
    BigDecimal plain = length.stripTrailingZeros();
    return plain.scale() < 1 ? plain.setScale(1, RoundingMode.UNNECESSARY) : plain;
  }

  /**
   * Reads lengths in metres, separated by commas, or by semicolons where commas are decimal.
   *
   * @param name of the option or field
   */
  public static FittedLengths read(String name, String text, Length system) {
    List<String> typed =
        Arrays.stream(text.split(text.contains(";") ? ";" : ",", -1)).map(String::strip).toList();
    List<BigDecimal> metres = new ArrayList<>();
    for (String each : typed) {
      metres.add(length(name, each, system, metres));
    }
    return new FittedLengths(typed, metres);
  }

  private static BigDecimal length(
      String name, String text, Length system, List<BigDecimal> before) {
    Optional<BigDecimal> number = Numbers.read(text);
    if (number.isEmpty()) {
      throw new Refused(
          CauseProblem.NOT_A_NUMBER,
          name,
          text,
          "total lengths in metres with commas between, for instance 4.5,5.0,5.5");
    }
    BigDecimal metres = number.get();
    if (metres.signum() <= 0 || metres.compareTo(LONGEST) > 0) {
      throw new Refused(CauseProblem.IMPOSSIBLE_LENGTH, name, text, "above 0", LONGEST);
    }
    if (!isWithinReach(metres, system)) {
      throw new Refused(
          CauseProblem.LENGTH_BEYOND,
          name,
          text,
          system.inMetres(),
          new Length(system.metres().multiply(BigDecimal.ONE.subtract(REACH))),
          new Length(system.metres().multiply(BigDecimal.ONE.add(REACH))));
    }
    if (before.stream().anyMatch(other -> other.compareTo(metres) == 0)) {
      throw new Refused(CauseProblem.REPEATED_LENGTH, name, text);
    }
    return metres;
  }

  private static boolean isWithinReach(BigDecimal metres, Length system) {
    BigDecimal most = system.metres().multiply(REACH);
    return metres.subtract(system.metres()).abs().compareTo(most) <= 0;
  }
}
