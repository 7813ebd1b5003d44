package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.Slot;
import loopwright.units.Length;

/** What supply and resistances say. */
final class ElectricalJudge {
  /** From memory: most drivers accept −17.5 V to −26 V; the nominal supply is −24 V. */
  private static final double SUPPLY_HIGH = -17.5;

  private static final double SUPPLY_LOW = -26;
  private static final String SUPPLY_BASIS =
      "most drivers accept −17.5 to −26 V; from memory, the driver's own sheet decides";

  private static final double OPEN_OHMS = 1e6;
  private static final double SHIELD_GOOD_OHMS = 2;
  private static final double SHIELD_SUSPECT_OHMS = 5;
  private static final String NO_LENGTH = " Resistance can't prove a length: 0.5 m makes 0.14 Ω.";

  private final Entries entries;
  private final LoopView view;
  private final List<Said> said = new ArrayList<>();

  private ElectricalJudge(Entries entries, LoopView view) {
    this.entries = entries;
    this.view = view;
  }

  static List<Said> judge(Entries entries, Background background) {
    ElectricalJudge judge = new ElectricalJudge(entries, background.view());
    judge.supply();
    judge.coil();
    judge.loop();
    judge.insulation();
    judge.shield();
    return judge.said;
  }

  private void supply() {
    entries
        .amount("supply")
        .ifPresent(
            volts -> {
              boolean good = volts <= SUPPLY_HIGH && volts >= SUPPLY_LOW;
              String low =
                  volts > SUPPLY_HIGH
                      ? " The far end of the range is cut off first when the supply is low."
                      : "";
              said.add(
                  Said.judged(
                      good,
                      "supply",
                      Amounts.number("%.2f V", volts)
                          + (good ? " suits most drivers." : " suits few drivers." + low),
                      SUPPLY_BASIS));
            });
  }

  private void coil() {
    entries
        .amount("coil")
        .ifPresent(ohms -> resistance("probe", ohms, lead().flatMap(ResistanceTable::probe)));
  }

  private void loop() {
    entries.amount("loop").ifPresent(ohms -> resistance("probe with cable", ohms, whole()));
  }

  private void resistance(String what, double ohms, Optional<ResistanceTable.Expected> expected) {
    if (expected.isEmpty()) {
      said.add(
          Said.only(
              what,
              Amounts.ohm(ohms)
                  + " is shown only: there are values of parts of the 8 mm class in the usual"
                  + " lengths, and these aren't known to be such."));
      return;
    }
    ResistanceTable.Expected table = expected.get();
    boolean good = table.allows(ohms);
    String wrong = ohms < table.ohms() ? "lower: look for a short" : "higher: look for an open";
    said.add(
        Said.judged(
            good,
            what,
            "%s, where %s ± %s is usual for these lengths%s.%s"
                .formatted(
                    Amounts.ohm(ohms),
                    Amounts.number("%.2f", table.ohms()),
                    Amounts.ohm(table.tolerance()),
                    good ? "" : "; it is " + wrong + " or a bad contact",
                    NO_LENGTH),
            ResistanceTable.BASIS));
  }

  private Optional<Length> lead() {
    return view.probe().part().filter(ElectricalJudge::isEightMillimetres).flatMap(this::length);
  }

  private static boolean isEightMillimetres(PartView probe) {
    return probe.tipMillimetres() != null
        && probe.tipMillimetres().compareTo(ResistanceTable.TIP_MILLIMETRES) == 0;
  }

  private Optional<Length> length(PartView part) {
    return Optional.ofNullable(part.length()).map(KnownLength::length);
  }

  /** Probe and whatever stands between it and the driver, where all of it has a value. */
  private Optional<ResistanceTable.Expected> whole() {
    Optional<ResistanceTable.Expected> sum = lead().flatMap(ResistanceTable::probe);
    for (Slot slot : view.path()) {
      if (!slot.equals(Slot.NONE_FITTED)) {
        Optional<ResistanceTable.Expected> cable =
            slot.part().flatMap(this::length).flatMap(ResistanceTable::cable);
        sum = sum.flatMap(so -> cable.map(so::plus));
      }
    }
    return sum;
  }

  private void insulation() {
    if (entries.word("insulation-beyond").equals("beyond the range")) {
      said.add(insulated(true, "open as far as the meter reads"));
    } else {
      entries
          .reported("insulation")
          .ifPresent(r -> said.add(insulated(r.canonical() >= OPEN_OHMS, r.toString())));
    }
  }

  private static Said insulated(boolean good, String measured) {
    return Said.judged(
        good,
        "insulation",
        "Centre to outer "
            + measured
            + (good ? "." : ": below 1 MΩ. Clean and dry the connectors, then measure again."),
        "the cable alone must be open, far above 1 MΩ; common practice, no source");
  }

  private void shield() {
    entries
        .amount("shield")
        .ifPresent(
            ohms ->
                said.add(
                    Said.judged(
                        ohms <= SHIELD_SUSPECT_OHMS,
                        "shield",
                        Amounts.ohm(ohms)
                            + (ohms < SHIELD_GOOD_OHMS
                                ? " is good."
                                : ohms <= SHIELD_SUSPECT_OHMS
                                    ? " is neither good (below 2 Ω) nor suspect (above 5 Ω)."
                                    : " is suspect: look at the shield's terminals."),
                        "below 2 Ω good, above 5 Ω suspect; a trade bulletin, common practice")));
    String isolated = entries.word("shield-isolated");
    if (!isolated.isEmpty()) {
      said.add(
          Said.judged(
              Objects.equals(isolated, "isolated"),
              "shield's ground",
              isolated.equals("isolated")
                  ? "Isolated in the field."
                  : "Grounded in the field too: two grounds pick up the mains.",
              "one ground, at the monitor's end; common practice, no source"));
    }
  }
}
