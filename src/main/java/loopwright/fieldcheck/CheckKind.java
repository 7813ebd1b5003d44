package loopwright.fieldcheck;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.units.Unit;

/** The kinds of checks, each with the fields of its form. */
enum CheckKind {
  ELECTRICAL(
      "electrical",
      "electrical check",
      "Supply at the driver and resistances of the unplugged parts. Resistance finds opens and"
          + " shorts; it can't prove a length.",
      List.of(
          Item.measured("supply", "Supply at the driver", Unit.VOLT)
              .within(-40, 0)
              .hinting("negative, measured at the driver's terminals"),
          Item.measured("coil", "Probe, centre to outer", Unit.OHM)
              .hinting("unplugged, lead included"),
          Item.measured("loop", "Probe with extension cable", Unit.OHM)
              .hinting("as seen from the driver's plug"),
          Item.measured("insulation", "Cable alone, centre to outer", Unit.MEGOHM, Unit.KILOHM)
              .within(0, 1e15),
          Item.chosen("insulation-beyond", "or beyond the meter's range", "beyond the range"),
          Item.measured("shield", "Shield, end to end", Unit.OHM),
          Item.chosen("shield-isolated", "Shield isolated in the field", "isolated", "grounded")),
      List.of(),
      0),
  CHANNEL(
      "channel",
      "channel check",
      "What the monitor shows and does at injected values.",
      List.of(
          Item.chosen("injected-as", "What was injected", "direct voltage", "pk-pk", "peak", "rms"),
          Item.measured("alert", "Alert acted at", Unit.MICROMETRE, Unit.MIL).within(-6e4, 6e4),
          Item.measured("alert-delay", "Alert delay", Unit.SECOND),
          Item.measured("danger", "Danger acted at", Unit.MICROMETRE, Unit.MIL).within(-6e4, 6e4),
          Item.measured("danger-delay", "Danger delay", Unit.SECOND),
          Item.chosen("ok-fault", "Not-OK on an open input", "acted", "did not act"),
          Item.chosen("relay", "Relay", "changed over", "did not change over", "inhibited")),
      List.of(
          Item.measured("injected", "Injected", Unit.VOLT, Unit.MILLIVOLT).within(-30, 30),
          Item.measured("shown", "Monitor shows", Unit.MICROMETRE, Unit.MIL).within(-6e4, 6e4)),
      5),
  SLOW_ROLL(
      "slow-roll",
      "slow-roll vector",
      "Amplitude and phase at low speed, where the shaft doesn't vibrate: the run-out of the"
          + " track.",
      List.of(
          Item.measured("amplitude", "Amplitude, pk-pk", Unit.MICROMETRE, Unit.MIL)
              .within(0, 2_000)
              .must(),
          Item.measured("phase", "Phase", Unit.DEGREE).within(-360, 360),
          Item.chosen("phase-as", "Phase counted as", "lag", "lead"),
          Item.measured("speed", "Speed", Unit.REVOLUTIONS_PER_MINUTE, Unit.HERTZ).within(0, 1_000),
          Item.chosen("filter", "Amplitude is", "once a turn", "overall"),
          Item.measured("allowed", "Allowed vibration, pk-pk", Unit.MICROMETRE, Unit.MIL)
              .hinting("if known: run-out is judged against it")),
      List.of(),
      0),
  DYNAMIC(
      "dynamic",
      "dynamic check",
      "A known vibration and the output it gives. It proves the way of the alternating signal, as"
          + " the static curve proves linearity and length; the two should agree.",
      List.of(
          Item.measured("displacement", "Displacement", Unit.MICROMETRE, Unit.MIL)
              .within(0.01, 10_000)
              .must(),
          sizes("displacement-as", "Displacement is").must(),
          Item.measured("frequency", "Frequency", Unit.HERTZ, Unit.CYCLES_PER_MINUTE)
              .within(0.01, 20_000)
              .must(),
          Item.measured("output", "Output", Unit.MILLIVOLT, Unit.VOLT).within(1e-5, 30).must(),
          sizes("output-as", "Output is").must(),
          Item.measured("gap-volts", "Gap voltage meanwhile", Unit.VOLT)
              .within(-30, 0)
              .hinting("says at which gap; else the approved gap is taken"),
          Item.measured("shown", "Monitor shows, pk-pk", Unit.MICROMETRE, Unit.MIL),
          Item.measured("u-displacement", "Standard uncertainty of the displacement", Unit.PERCENT)
              .within(0, 1),
          Item.measured("u-output", "Standard uncertainty of the output", Unit.PERCENT)
              .within(0, 1),
          Item.measured("u-static", "Standard uncertainty of the static slope", Unit.PERCENT)
              .within(0, 1)
              .hinting(
                  "else from the budget of the as-left record; with all three it is said by how"
                      + " many combined uncertainties they differ")),
      List.of(),
      0),
  RESPONSE(
      "response",
      "frequency response",
      "Output over displacement against frequency, in dB from the lowest frequency, and phase.",
      List.of(
          sizes("displacement-as", "Displacement is").must(),
          sizes("output-as", "Output is").must(),
          Item.measured("band-low", "Band from", Unit.DECIBEL)
              .within(-60, 0)
              .hinting("beside the band of the profile; without either −3 dB up to 10 kHz"),
          Item.measured("band-high", "Band to", Unit.DECIBEL).within(0, 60),
          Item.measured("cable", "Field cable", Unit.METRE, Unit.FOOT).within(0, 5_000),
          Item.measured(
                  "capacitance",
                  "Its capacitance",
                  Unit.PICOFARAD_PER_METRE,
                  Unit.PICOFARAD_PER_FOOT)
              .within(0, 10_000),
          Item.measured("source", "Output resistance of the driver", Unit.OHM)
              .within(0.1, 1e6)
              .hinting("else 50 Ω, from memory")),
      List.of(
          Item.measured("at", "Frequency", Unit.HERTZ, Unit.CYCLES_PER_MINUTE).within(0.01, 20_000),
          Item.measured("moved", "Displacement", Unit.MICROMETRE, Unit.MIL).within(0.01, 10_000),
          Item.measured("gave", "Output", Unit.MILLIVOLT, Unit.VOLT).within(1e-5, 30),
          Item.measured("phase", "Phase", Unit.DEGREE).within(-720, 720)),
      8);

  private final String slug;
  private final String word;
  private final String about;
  private final List<Item> items;
  private final List<Item> columns;
  private final int rows;

  CheckKind(
      String slug, String word, String about, List<Item> items, List<Item> columns, int rows) {
    this.slug = slug;
    this.word = word;
    this.about = about;
    this.items = items;
    this.columns = columns;
    this.rows = rows;
  }

  private static Item sizes(String name, String label) {
    return Item.chosen(name, label, "pk-pk", "peak", "rms");
  }

  /** As addresses call it. */
  String slug() {
    return slug;
  }

  /** As records keep it. */
  String word() {
    return word;
  }

  String about() {
    return about;
  }

  List<Item> items() {
    return items;
  }

  /** Of its table of readings; empty if it has none. */
  List<Item> columns() {
    return columns;
  }

  /** How many rows its table offers. */
  int rows() {
    return rows;
  }

  /** Whether a row of the table may lack that column. */
  boolean mayMiss(Item column) {
    return column.name().equals("phase");
  }

  String label(String item) {
    return Stream.concat(items.stream(), columns.stream())
        .filter(each -> each.name().equals(item))
        .map(Item::label)
        .findFirst()
        .orElse(item);
  }

  static Optional<CheckKind> slugged(String slug) {
    return Arrays.stream(values()).filter(kind -> kind.slug.equals(slug)).findFirst();
  }

  static CheckKind ofWord(String word) {
    return Arrays.stream(values())
        .filter(kind -> kind.word.equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no kind of check " + word));
  }
}
