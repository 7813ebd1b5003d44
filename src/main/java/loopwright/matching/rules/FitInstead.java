package loopwright.matching.rules;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loopwright.matching.CableUse;
import loopwright.matching.FamilyView;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Slot;
import loopwright.units.Length;

/**
 * Which single exchange would bring a loop into balance. Lengths are those that the family offers;
 * where it lists none, only multiples of 0.5 m are proposed, the step in which leads and cables are
 * commonly sold.
 */
final class FitInstead {
  private static final BigDecimal STEP = new BigDecimal("0.5");

  private final LoopView loop;
  private final Length balance;
  private final Length tolerance;
  private final List<String> leaveOut = new ArrayList<>();
  private final List<String> fit = new ArrayList<>();

  private FitInstead(LoopView loop, Length balance) {
    this.loop = loop;
    this.balance = balance;
    this.tolerance = LengthBalance.toleranceOf(loop);
    cables();
    loop.driver().part().ifPresent(this::driver);
    loop.probe().part().ifPresent(this::probe);
  }

  /**
   * @param balance fitted − tuned for, off zero
   * @return whole sentences
   */
  static String remedy(LoopView loop, Length balance) {
    return new FitInstead(loop, balance).exchanges() + " " + Words.LOOK_FIRST;
  }

  private String exchanges() {
    if (leaveOut.isEmpty() && fit.isEmpty()) {
      return "No exchange of one part alone brings it into balance.";
    }
    String leaving = leaveOut.isEmpty() ? "" : "leave out " + Words.list(leaveOut, "or");
    String fitting = fit.isEmpty() ? "" : "fit " + Words.list(fit, "or");
    return Words.sentence(
        leaving + (leaving.isEmpty() || fitting.isEmpty() ? "" : ", or ") + fitting);
  }

  private void cables() {
    List<PartView> cables =
        loop.pathParts().stream().filter(part -> part.kind() == PartKind.CABLE).toList();
    cables.forEach(cable -> cable(cable, cables.size() == 1));
    if (cables.isEmpty() && loop.path().contains(Slot.NONE_FITTED)) {
      offered(PartKind.CABLE, loop.family(), Length.ZERO.minus(balance))
          .ifPresent(length -> fit.add(Words.one(length) + " extension cable"));
    }
  }

  private void cable(PartView cable, boolean alone) {
    Optional<Length> needed = neededOf(cable);
    String fitted = lengthOf(cable).map(Length::inMetres).orElse("");
    String replaced = alone ? "the " + fitted + " one" : cable.words() + " of " + fitted;
    boolean mayGo =
        familyFor(cable).map(family -> family.cableUse() != CableUse.REQUIRED).orElse(true);
    if (mayGo && needed.filter(length -> length.abs().compareTo(tolerance) <= 0).isPresent()) {
      leaveOut.add("the " + fitted + " " + cable.words());
    }
    needed
        .flatMap(length -> offered(PartKind.CABLE, familyFor(cable), length))
        .ifPresent(length -> fit.add(Words.one(length) + " cable instead of " + replaced));
  }

  private void driver(PartView driver) {
    lengthOf(driver)
        .map(length -> length.plus(balance))
        .flatMap(length -> offered(PartKind.DRIVER, familyFor(driver), length))
        .ifPresent(length -> fit.add("a driver tuned for " + length + orSet(driver)));
  }

  /** A driver whose system length is a setting need not be exchanged. */
  private String orSet(PartView driver) {
    return familyFor(driver).filter(FamilyView::selectableSystemLength).isPresent()
        ? " (or set this one to it)"
        : "";
  }

  private void probe(PartView probe) {
    neededOf(probe)
        .flatMap(length -> offered(PartKind.PROBE, familyFor(probe), length))
        .ifPresent(length -> fit.add("a probe with " + Words.one(length) + " lead"));
  }

  /** What the part would have to measure for the loop to balance; zero or less: nothing at all. */
  private Optional<Length> neededOf(PartView part) {
    return lengthOf(part).map(length -> length.minus(balance));
  }

  private static Optional<Length> lengthOf(PartView part) {
    return Optional.ofNullable(part.length()).map(KnownLength::length);
  }

  private Optional<FamilyView> familyFor(PartView part) {
    return loop.familyOf(part).or(loop::family);
  }

  private Optional<Length> offered(PartKind kind, Optional<FamilyView> family, Length needed) {
    if (kind == PartKind.CABLE
        && family.filter(known -> known.cableUse() == CableUse.NONE).isPresent()) {
      return Optional.empty();
    }
    List<Length> offers = family.map(known -> known.lengthsOf(kind)).orElse(List.of());
    return (offers.isEmpty() ? step(needed) : offers)
        .stream()
            .filter(offer -> offer.minus(needed).abs().compareTo(tolerance) <= 0)
            .min(Comparator.comparing(offer -> offer.minus(needed).abs()));
  }

  private static List<Length> step(Length needed) {
    BigDecimal steps = needed.metres().divide(STEP, 0, RoundingMode.HALF_EVEN);
    return steps.signum() > 0 ? List.of(new Length(steps.multiply(STEP))) : List.of();
  }
}
