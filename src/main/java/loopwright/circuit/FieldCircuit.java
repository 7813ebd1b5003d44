package loopwright.circuit;

import java.math.BigDecimal;
import loopwright.loop.CircuitFacts;
import loopwright.loop.Content;
import loopwright.matching.PlaceView;
import loopwright.problem.Refused;
import loopwright.units.Dimension;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/**
 * Behind one driver. Null means that nobody said.
 *
 * @param barrier barrier or isolator; nothing if somebody looked and there is none
 * @param cable length of the field cable, as typed
 * @param picofaradsPerMetre pF/m
 * @param microhenriesPerMetre µH/m
 */
public record FieldCircuit(
    Content barrier,
    @Nullable Reported cable,
    @Nullable BigDecimal picofaradsPerMetre,
    @Nullable BigDecimal microhenriesPerMetre) {
  /** Nobody said anything. */
  public static final FieldCircuit NOT_SAID =
      new FieldCircuit(new Content.Unknown(), null, null, null);

  /** The longest field cable that is taken, m; own choice, ten times what is usual. */
  private static final BigDecimal LONGEST = BigDecimal.valueOf(3_000);

  /** Refuses lengths and values that no cable has; numbers lose trailing zeros. */
  public FieldCircuit {
    if (cable != null) {
      refuseImpossible(cable);
    }
    picofaradsPerMetre = checked("The capacitance", picofaradsPerMetre, 3, "10000", "pF/m");
    microhenriesPerMetre = checked("The inductance", microhenriesPerMetre, 4, "1000", "µH/m");
  }

  static void refuseImpossible(Reported cable) {
    if (cable.unit().dimension() != Dimension.LENGTH) {
      throw new Refused(
          CircuitProblem.OUT_OF_RANGE, "The unit of a length", cable.unit().symbol(), "m or ft");
    }
    BigDecimal metres = Length.of(cable).metres();
    if (metres.signum() <= 0 || metres.compareTo(LONGEST) > 0 || cable.typed().length() > 30) {
      throw new Refused(
          CircuitProblem.OUT_OF_RANGE,
          "The length of the field cable",
          cable,
          "more than 0 and at most 3000 m (9842.5 ft)");
    }
  }

  static @Nullable BigDecimal checked(
      String what, @Nullable BigDecimal number, int decimals, String most, String unit) {
    if (number == null) {
      return null;
    }
    BigDecimal plain = new BigDecimal(Numbers.plain(number));
    if (plain.signum() < 0
        || plain.compareTo(new BigDecimal(most)) > 0
        || plain.scale() > decimals) {
      throw new Refused(
          CircuitProblem.OUT_OF_RANGE,
          what,
          Numbers.plain(plain) + " " + unit,
          "0 to " + most + " " + unit + ", with at most " + decimals + " decimals");
    }
    return plain;
  }

  /** As the rules ask for it. */
  CircuitFacts.Circuit asJudged() {
    BigDecimal metres = cable == null ? null : Length.of(cable).metres();
    return new CircuitFacts.Circuit(
        barrier, new PlaceView.FieldCable(metres, picofaradsPerMetre, microhenriesPerMetre));
  }
}
