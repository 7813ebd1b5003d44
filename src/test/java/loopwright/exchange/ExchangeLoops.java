package loopwright.exchange;

import java.util.ArrayList;
import java.util.List;
import loopwright.matching.CableUse;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.PartKind;
import loopwright.units.Length;

/** Invented loops: family q5 unless said otherwise, probe, cable and driver. */
final class ExchangeLoops {
  static final Length TOLERANCE = Length.ofMetres("0.05");

  static final Families FAMILIES =
      Families.of(
          List.of(
              FamilyView.of("q5")
                  .leadLengths(lengths("0.5", "1.0"))
                  .cableLengths(lengths("4.0", "4.5"))
                  .systemLengths(lengths("5.0"))
                  .cableUse(CableUse.OPTIONAL)
                  .build(),
              FamilyView.of("q-feet")
                  .leadLengths(lengths("0.9144"))
                  .cableLengths(lengths("3.6576", "5.1816"))
                  .systemLengths(lengths("4.572", "6.096"))
                  .cableUse(CableUse.REQUIRED)
                  .build()),
          List.of());

  private ExchangeLoops() {}

  static List<Length> lengths(String... metres) {
    return List.of(metres).stream().map(Length::ofMetres).toList();
  }

  static FittedPart part(PartKind kind, String label, String family, String metres) {
    return new FittedPart(
        label.hashCode(), label, kind, family, Length.ofMetres(metres), true, true);
  }

  static LoopLengths loop(String tag, String probe, String cable, String driver) {
    return loop("train 1", "q5", tag, probe, cable, driver);
  }

  static LoopLengths loop(
      String train, String family, String tag, String probe, String cable, String driver) {
    List<FittedPart> parts = new ArrayList<>();
    parts.add(part(PartKind.PROBE, "P-" + tag, family, probe));
    if (!cable.isEmpty()) {
      parts.add(part(PartKind.CABLE, "C-" + tag, family, cable));
    }
    parts.add(part(PartKind.DRIVER, "D-" + tag, family, driver));
    Length balance =
        parts.stream()
            .map(part -> part.sign() > 0 ? part.length() : Length.ZERO.minus(part.length()))
            .reduce(Length.ZERO, Length::plus);
    return new LoopLengths(tag, "site", train, parts, balance, TOLERANCE, family);
  }

  static StockPart stocked(PartKind kind, String label, String family, String metres) {
    return new StockPart(part(kind, label, family, metres), "store 1, bin " + label);
  }

  static Proposal propose(List<LoopLengths> loops, StockPart... stock) {
    return Proposal.of(loops, List.of(stock), FAMILIES, Weights.USUAL);
  }
}
