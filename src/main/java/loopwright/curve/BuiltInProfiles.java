package loopwright.curve;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;

/**
 * The profiles that come with the program. Limits after API Std 670 are from memory of its accuracy
 * table (4th edition, December 2000; 5th edition, November 2014); the others are common practice
 * without a source. A shop adds its own.
 */
public final class BuiltInProfiles {
  private static final Basis API_670 =
      new Basis(
          "after API Std 670, limits from memory", "4th edition (2000) and 5th edition (2014)");
  private static final Basis PRACTICE = new Basis("common practice, no source", "");

  private static final List<Grid> TWO_MILLIMETRES =
      List.of(Grid.of(Unit.MICROMETRE, "250", "2250", "250"), Grid.of(Unit.MIL, "10", "90", "10"));
  private static final List<Grid> FOUR_MILLIMETRES =
      List.of(Grid.of(Unit.MICROMETRE, "500", "4500", "500"), Grid.of(Unit.MIL, "20", "180", "20"));
  private static final List<Grid> TWELVE_MILLIMETRES =
      List.of(
          Grid.of(Unit.MICROMETRE, "500", "12500", "1000"), Grid.of(Unit.MIL, "20", "500", "40"));

  private static final List<ToleranceProfile> ALL =
      List.of(
          API_670
              .profile("api670-2mm", "2 mm at 200 mV/mil, 0 to 45 °C")
              .limits("200", "5", "25.4", TWO_MILLIMETRES),
          API_670
              .profile("api670-2mm-outside", "2 mm at 200 mV/mil, operating outside 0 to 45 °C")
              .limits("200", "10", "76.2", TWO_MILLIMETRES),
          PRACTICE
              .profile("2mm-200-long", "2 mm at 200 mV/mil, loops longer than 5 m")
              .limits("200", "6.5", "38.1", TWO_MILLIMETRES),
          PRACTICE
              .profile("4mm-100", "4 mm at 100 mV/mil")
              .limits("100", "10", "101.6", FOUR_MILLIMETRES),
          PRACTICE
              .profile("12mm-20", "12 mm at 20 mV/mil")
              .limits("20", "10", "304.8", TWELVE_MILLIMETRES));

  private BuiltInProfiles() {}

  public static List<ToleranceProfile> all() {
    return ALL;
  }

  public static List<String> codes() {
    return ALL.stream().map(ToleranceProfile::code).toList();
  }

  public static Optional<ToleranceProfile> named(String code) {
    return ALL.stream().filter(profile -> profile.code().equals(code)).findFirst();
  }

  private record Basis(String source, String edition) {
    Named profile(String code, String name) {
      return new Named(this, code, name);
    }
  }

  private record Named(Basis basis, String code, String name) {
    ToleranceProfile limits(
        String millivoltsPerMil, String isfPercent, String dslMicrometres, List<Grid> grids) {
      return new ToleranceProfile(
          code,
          name,
          1,
          basis.source(),
          basis.edition(),
          ScaleFactor.millivoltsPerMil(millivoltsPerMil),
          new BigDecimal(isfPercent),
          Reported.read(dslMicrometres, Unit.MICROMETRE).orElseThrow(),
          ShiftRule.MINIMAX,
          grids);
    }
  }
}
