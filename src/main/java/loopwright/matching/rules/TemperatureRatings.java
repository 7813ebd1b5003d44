package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.PlaceView;
import loopwright.matching.Range;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import org.jspecify.annotations.Nullable;

/** Each part stands the temperature where it is: the tip, along the route, in the box. */
record TemperatureRatings() implements Rule {

  @Override
  public String name() {
    return "temperature ratings";
  }

  @Override
  public String basis() {
    return "Ratings from the data sheets, held against tip, route and box each by itself: probe,"
        + " cable and driver have separate operating ranges (after API Std 670, from memory).";
  }

  @Override
  public boolean blocksAssemblyWhenUnknown() {
    return false;
  }

  @Override
  public Finding judge(LoopView loop) {
    if (!loop.facts().contains(Fact.TEMPERATURES)) {
      return finding(Verdict.NOT_JUDGED, "This rule was given no temperatures.");
    }
    PlaceView place = loop.place();
    Remarks remarks = new Remarks();
    look(loop.probe().part(), "at the tip", place.tipCelsius(), remarks);
    List<PartView> path = loop.pathParts();
    path.forEach(part -> look(Optional.of(part), "along the route", place.routeCelsius(), remarks));
    if (path.isEmpty()) {
      look(loop.probe().part(), "along the route", place.routeCelsius(), remarks);
    }
    look(loop.driver().part(), "in the box", place.boxCelsius(), remarks);
    return remarks.of(this, "No part is recorded.");
  }

  private static void look(
      Optional<PartView> part, String where, @Nullable BigDecimal celsius, Remarks remarks) {
    if (part.isEmpty()) {
      return;
    }
    Range rating = part.get().sheet().celsius();
    if (celsius == null && rating.isNotSaid()) {
      return;
    }
    if (celsius == null) {
      remarks.add(
          Verdict.UNKNOWN,
          "The temperature " + where + " is not recorded.",
          "Enter it at the point.");
    } else if (!rating.holds(celsius)) {
      remarks.add(
          Verdict.REFUSED,
          "%s °C %s is outside what %s stands, %s."
              .formatted(Amounts.plain(celsius), where, part.get().words(), words(rating)),
          "Fit a part that is rated for it, or lead it another way.");
    } else if (!rating.isComplete()) {
      remarks.add(
          Verdict.UNKNOWN,
          "From what temperature to what " + part.get().words() + " may be used is not recorded.",
          "Enter it on the data sheet of its model.");
    } else {
      remarks.add(Verdict.MATCHES, "Every part stands the temperature where it is.");
    }
  }

  private static String words(Range rating) {
    BigDecimal low = rating.low();
    BigDecimal high = rating.high();
    String from = low == null ? "" : "from " + Amounts.plain(low) + " ";
    String to = high == null ? "" : "to " + Amounts.plain(high) + " ";
    return from + (low == null ? "up " : "") + to + "°C";
  }
}
