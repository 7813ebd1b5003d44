package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import loopwright.matching.Entity;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.PlaceView;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import loopwright.problem.Text;
import org.jspecify.annotations.Nullable;

/**
 * Adds up a simple intrinsically safe circuit: one barrier or isolator, the field cable, one driver
 * whose certificate covers what hangs on it.
 *
 * <pre>
 *   Uo ≤ Ui    Io ≤ Ii    Po ≤ Pi    Ci + c·l ≤ Co    Li + l'·l ≤ Lo
 * </pre>
 *
 * <p>Where both Ci and Li exceed 1 % of Co and Lo, only half of Co and Lo may be used (IEC
 * 60079-14, from memory); a sum between the half and the whole asks for attention.
 */
final class EntitySums {
  private static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
  private static final BigDecimal TWO = BigDecimal.valueOf(2);

  private final PartView driver;
  private final PartView barrier;
  private final PlaceView.FieldCable cable;
  private final Remarks remarks;
  private final List<String> missing = new ArrayList<>();

  private EntitySums(
      PartView driver, PartView barrier, PlaceView.FieldCable cable, Remarks remarks) {
    this.driver = driver;
    this.barrier = barrier;
    this.cable = cable;
    this.remarks = remarks;
  }

  static void look(LoopView loop, PartView driver, Remarks remarks) {
    if (loop.barrier().part().isPresent()) {
      new EntitySums(driver, loop.barrier().part().get(), loop.place().fieldCable(), remarks)
          .look();
    } else if (loop.barrier() instanceof Slot.NoneFitted) {
      remarks.add(
          Verdict.REFUSED,
          "%s is intrinsically safe, and no barrier or isolator is fitted."
              .formatted(Text.capital(driver.words())),
          "Fit one that its certificate allows.");
    } else {
      remarks.add(
          Verdict.UNKNOWN,
          "Which barrier or isolator limits the circuit of " + driver.words() + " is not recorded.",
          "Record it behind the driver.");
    }
  }

  private void look() {
    Entity in = driver.sheet().entity();
    Entity out = barrier.sheet().entity();
    atMost("Uo", out.volts(), "Ui", in.volts(), "V");
    atMost("Io", out.milliamperes(), "Ii", in.milliamperes(), "mA");
    atMost("Po", out.milliwatts(), "Pi", in.milliwatts(), "mW");
    boolean lumped =
        isLumped(in.nanofarads(), out.nanofarads())
            && isLumped(in.microhenries(), out.microhenries());
    sum(
        "Ci",
        in.nanofarads(),
        perMetre(cable.picofaradsPerMetre(), THOUSAND, "the field cable's pF/m"),
        "Co",
        out.nanofarads(),
        "nF",
        lumped);
    sum(
        "Li",
        in.microhenries(),
        perMetre(cable.microhenriesPerMetre(), BigDecimal.ONE, "the field cable's µH/m"),
        "Lo",
        out.microhenries(),
        "µH",
        lumped);
    if (!missing.isEmpty()) {
      remarks.add(
          Verdict.UNKNOWN,
          "To add up the intrinsically safe circuit is missing: "
              + Words.list(missing.stream().distinct().toList())
              + ".",
          "Enter it from the certificates and the cable's data sheet.");
    }
  }

  private void atMost(
      String outName,
      @Nullable BigDecimal out,
      String inName,
      @Nullable BigDecimal in,
      String unit) {
    if (isThere(out, outName + " of " + barrier.words())
        && isThere(in, inName + " of " + driver.words())
        && Objects.requireNonNull(out).compareTo(Objects.requireNonNull(in)) > 0) {
      remarks.add(
          Verdict.REFUSED,
          "%s of %s is %s %s, more than %s of %s, %s %s."
              .formatted(
                  outName,
                  barrier.words(),
                  Amounts.plain(out),
                  unit,
                  inName,
                  driver.words(),
                  Amounts.plain(in),
                  unit),
          "Fit a barrier that the driver's certificate allows.");
    }
  }

  /** What the whole cable adds; null while its length or its value a metre is not known. */
  private @Nullable BigDecimal perMetre(
      @Nullable BigDecimal aMetre, BigDecimal divisor, String what) {
    boolean known =
        isThere(aMetre, what) & isThere(cable.metres(), "the length of the field cable");
    return known
        ? Objects.requireNonNull(aMetre)
            .multiply(Objects.requireNonNull(cable.metres()))
            .divide(divisor)
        : null;
  }

  private void sum(
      String inName,
      @Nullable BigDecimal in,
      @Nullable BigDecimal ofCable,
      String outName,
      @Nullable BigDecimal allowed,
      String unit,
      boolean lumped) {
    boolean known =
        isThere(in, inName + " of " + driver.words())
            & isThere(allowed, outName + " of " + barrier.words());
    if (!known || ofCable == null) {
      return;
    }
    BigDecimal sum = Objects.requireNonNull(in).add(ofCable);
    BigDecimal most = Objects.requireNonNull(allowed);
    String words =
        "%s + cable = %s + %s = %s %s"
            .formatted(inName, Amounts.plain(in), Amounts.plain(ofCable), Amounts.plain(sum), unit);
    if (sum.compareTo(most) > 0) {
      remarks.add(
          Verdict.REFUSED,
          "%s, more than %s of %s, %s %s."
              .formatted(words, outName, barrier.words(), Amounts.plain(most), unit),
          "Fit another barrier or a shorter field cable.");
    } else if (lumped && sum.multiply(TWO).compareTo(most) > 0) {
      remarks.add(
          Verdict.ATTENTION,
          "%s, more than half of %s of %s, %s %s, though both Ci and Li are above 1 %% of what is allowed."
              .formatted(words, outName, barrier.words(), Amounts.plain(most), unit),
          "Have the Ex dossier say which values hold for this circuit.");
    }
  }

  private static boolean isLumped(@Nullable BigDecimal in, @Nullable BigDecimal allowed) {
    return in != null && allowed != null && in.multiply(HUNDRED).compareTo(allowed) > 0;
  }

  private boolean isThere(@Nullable BigDecimal value, String what) {
    if (value == null) {
      missing.add(what);
    }
    return value != null;
  }
}
