package loopwright.plant;

import java.math.BigDecimal;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jspecify.annotations.Nullable;

/**
 * What a loop has around it. Texts are empty and temperatures null where nothing is known.
 *
 * @param areaClass area classification as the site writes it
 */
public record Surroundings(
    String shaftAlloy,
    String areaClass,
    String junctionBox,
    @Nullable BigDecimal tipCelsius,
    @Nullable BigDecimal routeCelsius,
    @Nullable BigDecimal boxCelsius) {
  public static final Surroundings NOT_SAID = new Surroundings("", "", "", null, null, null);

  /** Refuses temperatures that no machine has. */
  public Surroundings {
    shaftAlloy = Text.kept("the shaft alloy", shaftAlloy, 60);
    areaClass = Text.kept("the area classification", areaClass, 60);
    junctionBox = Text.kept("the junction box", junctionBox, 60);
    refuseAbsurd("The temperature at the tip", tipCelsius);
    refuseAbsurd("The temperature along the route", routeCelsius);
    refuseAbsurd("The temperature in the box", boxCelsius);
  }

  private static void refuseAbsurd(String what, @Nullable BigDecimal celsius) {
    Decimals.refuseMore(what, celsius, 1, 4);
    if (celsius != null && (celsius.intValue() < -200 || celsius.intValue() > 1000)) {
      throw new Refused(PlantProblem.OUT_OF_RANGE, what, celsius + " °C", "−200 to 1000 °C");
    }
  }
}
