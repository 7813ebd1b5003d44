package loopwright.register;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loopwright.matching.CableUse;
import loopwright.matching.Output;
import loopwright.matching.PartKind;
import loopwright.matching.Range;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.ScaleFactor;
import org.jspecify.annotations.Nullable;

/**
 * What a maker declares of parts that are interchangeable. Make one with {@link #of}.
 *
 * @param code short name, found in any case
 * @param startVolts voltage at the begin of the linear range, as the driver gives it
 * @param lengthTolerance largest length balance, either sign, that still counts as zero
 * @param connectors type and gender in words; empty if not said
 * @param targetAlloy that scale factor and range hold for; empty if not said
 * @param outputVolts what its drivers can put out, V; not said where nothing is known
 * @param selectableSystemLength whether its drivers can be set to another of the system lengths
 * @param profile code of the tolerance profile; null if none is chosen
 * @param lengths on offer, each once
 */
public record FamilyDetails(
    String code,
    String name,
    String maker,
    ScaleFactor scaleFactor,
    LinearRange range,
    @Nullable BigDecimal startVolts,
    @Nullable BigDecimal tipMillimetres,
    CableUse cableUse,
    boolean twoCablesAllowed,
    Length lengthTolerance,
    String connectors,
    String targetAlloy,
    Output output,
    Range outputVolts,
    boolean selectableSystemLength,
    @Nullable String profile,
    String note,
    List<OfferedLength> lengths) {

  /** Where nothing else is known, m; common practice, no source. */
  public static final Length USUAL_TOLERANCE = Length.ofMetres("0.05");

  /** Refuses what can't be; lengths are kept in order. */
  public FamilyDetails {
    code = Text.needed("the family's code", code, 40);
    name = Text.needed("the family's name", name, 120);
    maker = Text.needed("the maker", maker, 80);
    connectors = Text.kept("the connectors", connectors, 120);
    targetAlloy = Text.kept("the target alloy", targetAlloy, 60);
    note = Text.kept("the note", note, 1_000);
    scaleFactor =
        new ScaleFactor(new BigDecimal(Numbers.plain(scaleFactor.declared())), scaleFactor.unit());
    tipMillimetres = tipMillimetres == null ? null : new BigDecimal(Numbers.plain(tipMillimetres));
    startVolts = startVolts == null ? null : new BigDecimal(Numbers.plain(startVolts));
    ComponentFacts.refuseImpossibleTip(tipMillimetres);
    ComponentFacts.refuseImpossibleScale(scaleFactor);
    refuseOtherTolerance(lengthTolerance);
    refuseOtherVolts("The start voltage", startVolts);
    outputVolts = checked(outputVolts);
    lengths = lengths.stream().sorted().toList();
    refuseTwice(lengths);
  }

  private static void refuseOtherTolerance(Length tolerance) {
    if (tolerance.metres().signum() < 0
        || tolerance.compareTo(Length.ofMetres("1")) > 0
        || tolerance.metres().scale() > 5) {
      throw new Refused(
          RegisterProblem.OUT_OF_RANGE, "The length tolerance", tolerance, "0 to 1 m");
    }
  }

  private static Range checked(Range volts) {
    BigDecimal low = plain(volts.low());
    BigDecimal high = plain(volts.high());
    refuseOtherVolts("The output", low);
    refuseOtherVolts("The output", high);
    if (low != null && high != null && low.compareTo(high) >= 0) {
      throw new Refused(
          RegisterProblem.OUT_OF_RANGE,
          "The least negative output",
          high.toPlainString() + " V",
          "more than the most negative one, " + low.toPlainString() + " V");
    }
    return new Range(low, high);
  }

  private static @Nullable BigDecimal plain(@Nullable BigDecimal number) {
    return number == null ? null : new BigDecimal(Numbers.plain(number));
  }

  private static void refuseOtherVolts(String what, @Nullable BigDecimal volts) {
    if (volts != null
        && (volts.abs().compareTo(BigDecimal.valueOf(100)) > 0
            || volts.stripTrailingZeros().scale() > 3)) {
      throw new Refused(
          RegisterProblem.OUT_OF_RANGE,
          what,
          volts.toPlainString() + " V",
          "volts as the driver gives them, such as -1.5, with at most 3 decimals");
    }
  }

  private static void refuseTwice(List<OfferedLength> lengths) {
    Set<String> seen = new HashSet<>();
    for (OfferedLength offered : lengths) {
      if (!seen.add(offered.part() + " " + FactRows.metres(offered.length()))) {
        throw new Refused(RegisterProblem.LENGTH_TWICE, offered.part().word(), offered.typed());
      }
    }
  }

  /** The lengths on offer for that kind of part, shortest first. */
  public List<OfferedLength> lengthsOf(PartKind part) {
    return lengths.stream().filter(offered -> offered.part() == part).toList();
  }

  /** Begins one: cable required, two refused, tolerance 0.05 m, volts, nothing else said. */
  public static Builder of(String code, String name, String maker, ScaleFactor scaleFactor) {
    return new Builder(code, name, maker, scaleFactor);
  }

  /** Collects details. */
  public static final class Builder {
    private final String code;
    private final String name;
    private final String maker;
    private final ScaleFactor scaleFactor;
    private LinearRange range = LinearRange.NOT_SAID;
    private @Nullable BigDecimal startVolts;
    private @Nullable BigDecimal tipMillimetres;
    private CableUse cableUse = CableUse.REQUIRED;
    private boolean twoCablesAllowed;
    private Length lengthTolerance = USUAL_TOLERANCE;
    private String connectors = "";
    private String targetAlloy = "";
    private Output output = Output.VOLTAGE;
    private Range outputVolts = Range.NOT_SAID;
    private boolean selectableSystemLength;
    private @Nullable String profile;
    private String note = "";
    private List<OfferedLength> lengths = List.of();

    private Builder(String code, String name, String maker, ScaleFactor scaleFactor) {
      this.code = code;
      this.name = name;
      this.maker = maker;
      this.scaleFactor = scaleFactor;
    }

    public Builder range(LinearRange range) {
      this.range = range;
      return this;
    }

    public Builder startVolts(@Nullable BigDecimal startVolts) {
      this.startVolts = startVolts;
      return this;
    }

    public Builder tipMillimetres(@Nullable BigDecimal tipMillimetres) {
      this.tipMillimetres = tipMillimetres;
      return this;
    }

    public Builder cableUse(CableUse cableUse) {
      this.cableUse = cableUse;
      return this;
    }

    public Builder twoCablesAllowed(boolean twoCablesAllowed) {
      this.twoCablesAllowed = twoCablesAllowed;
      return this;
    }

    public Builder lengthTolerance(Length lengthTolerance) {
      this.lengthTolerance = lengthTolerance;
      return this;
    }

    public Builder connectors(String connectors) {
      this.connectors = connectors;
      return this;
    }

    public Builder targetAlloy(String targetAlloy) {
      this.targetAlloy = targetAlloy;
      return this;
    }

    public Builder output(Output output) {
      this.output = output;
      return this;
    }

    public Builder outputVolts(Range outputVolts) {
      this.outputVolts = outputVolts;
      return this;
    }

    public Builder selectableSystemLength(boolean selectable) {
      this.selectableSystemLength = selectable;
      return this;
    }

    public Builder profile(@Nullable String profile) {
      this.profile = profile;
      return this;
    }

    public Builder note(String note) {
      this.note = note;
      return this;
    }

    public Builder lengths(List<OfferedLength> lengths) {
      this.lengths = lengths;
      return this;
    }

    public FamilyDetails build() {
      return new FamilyDetails(
          code,
          name,
          maker,
          scaleFactor,
          range,
          startVolts,
          tipMillimetres,
          cableUse,
          twoCablesAllowed,
          lengthTolerance,
          connectors,
          targetAlloy,
          output,
          outputVolts,
          selectableSystemLength,
          profile,
          note,
          lengths);
    }
  }
}
