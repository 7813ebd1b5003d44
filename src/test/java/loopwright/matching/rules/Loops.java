package loopwright.matching.rules;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import loopwright.matching.CableUse;
import loopwright.matching.Evidence;
import loopwright.matching.Fact;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.InterchangeablePair;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartName;
import loopwright.matching.PartView;
import loopwright.matching.Slot;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;

/** Loops and families for tests, in few words. All names are invented. */
final class Loops {
  static final FamilyView R8 =
      FamilyView.of("R8")
          .leadLengths(lengths("0.5", "1.0", "1.5", "2.0", "5.0"))
          .cableLengths(lengths("3.0", "3.5", "4.0", "4.5"))
          .systemLengths(lengths("5.0"))
          .forbidsTwoCables(true)
          .scaleFactor(ScaleFactor.millivoltsPerMil("200"))
          .tipMillimetres(new java.math.BigDecimal("8"))
          .build();
  static final FamilyView R9 =
      FamilyView.of("R9")
          .leadLengths(lengths("0.5", "1.0"))
          .cableLengths(lengths("8.0", "8.5"))
          .systemLengths(lengths("9.0"))
          .cableUse(CableUse.REQUIRED)
          .lengthTolerance(Length.ofMetres("0.1"))
          .build();
  static final FamilyView INTEGRAL =
      FamilyView.of("N5")
          .leadLengths(lengths("5.0"))
          .systemLengths(lengths("5.0"))
          .cableUse(CableUse.NONE)
          .build();
  static final Families FAMILIES =
      Families.of(
          List.of(R8, R9, INTEGRAL), List.of(new InterchangeablePair("R8", "N5", "A. Fitter")));

  private Loops() {}

  static List<Length> lengths(String... metres) {
    return Arrays.stream(metres).map(Length::ofMetres).toList();
  }

  static PartView.Builder part(PartKind kind, String serial, String metres) {
    PartView.Builder part = PartView.of(kind);
    if (!serial.isEmpty()) {
      part.name(PartName.serial(serial));
    }
    return metres.isEmpty() ? part : part.length(KnownLength.readOnPart(metres));
  }

  static PartView.Builder probe(String metres) {
    return part(PartKind.PROBE, "PR-1", metres);
  }

  static PartView.Builder cable(String metres) {
    return part(PartKind.CABLE, "XC-1", metres);
  }

  static PartView.Builder driver(String metres) {
    return part(PartKind.DRIVER, "DV-1", metres);
  }

  static KnownLength weak(String metres) {
    return new KnownLength(Length.ofMetres(metres), Evidence.ASSUMED);
  }

  static Slot slot(PartView.Builder part) {
    return Slot.of(part.build());
  }

  /** An empty length is not known; {@code none} as the cable's means that none is fitted. */
  static LoopView.Builder loop(String lead, String cable, String system) {
    return loop(
        probe(lead), cable.equals("none") ? Slot.NONE_FITTED : slot(cable(cable)), driver(system));
  }

  static LoopView.Builder loop(PartView.Builder probe, Slot path, PartView.Builder driver) {
    return LoopView.at("T-1").probe(slot(probe)).path(List.of(path)).driver(slot(driver));
  }

  static LoopView.Builder ofFamily(String family, String lead, String cable, String system) {
    return loop(
            probe(lead).family(family),
            cable.equals("none") ? Slot.NONE_FITTED : slot(cable(cable).family(family)),
            driver(system).family(family))
        .families(FAMILIES);
  }

  static EnumSet<Fact> everyFact() {
    return EnumSet.allOf(Fact.class);
  }
}
