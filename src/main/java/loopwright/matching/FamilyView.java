package loopwright.matching;

import java.math.BigDecimal;
import java.util.List;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import org.jspecify.annotations.Nullable;

/**
 * Components that their maker declares interchangeable, as far as the rules need to know. A list of
 * lengths that is empty is not known, and nothing is judged by it.
 *
 * @param leadLengths nominal lengths of probe leads on offer
 * @param cableLengths nominal lengths of extension cables on offer
 * @param systemLengths what the family's drivers are tuned for
 * @param lengthTolerance largest length balance that still matches; inclusive
 * @param tipMillimetres tip diameter
 * @param line where the curve is straight and what it gives there; null when not known
 * @param outputVolts what its drivers can put out, V; not said where nothing is known
 * @param targetAlloy that scale factor and range hold for; empty if not said
 * @param selectableSystemLength whether its drivers can be set to another system length
 */
public record FamilyView(
    String code,
    List<Length> leadLengths,
    List<Length> cableLengths,
    List<Length> systemLengths,
    CableUse cableUse,
    boolean forbidsTwoCables,
    @Nullable Length lengthTolerance,
    @Nullable ScaleFactor scaleFactor,
    @Nullable BigDecimal tipMillimetres,
    Output output,
    @Nullable NominalLine line,
    Range outputVolts,
    String targetAlloy,
    boolean selectableSystemLength) {

  /** Lists are kept in rising order. */
  public FamilyView {
    leadLengths = leadLengths.stream().sorted().toList();
    cableLengths = cableLengths.stream().sorted().toList();
    systemLengths = systemLengths.stream().sorted().toList();
  }

  public static Builder of(String code) {
    return new Builder(code);
  }

  /** The lengths on offer for that kind of part; empty when not known or when it has none. */
  public List<Length> lengthsOf(PartKind kind) {
    return switch (kind) {
      case PROBE -> leadLengths;
      case CABLE -> cableLengths;
      case DRIVER, TRANSMITTER -> systemLengths;
      default -> List.of();
    };
  }

  /** What is not said is not known; output is voltage unless said otherwise. */
  public static final class Builder {
    private final String code;
    private List<Length> leadLengths = List.of();
    private List<Length> cableLengths = List.of();
    private List<Length> systemLengths = List.of();
    private CableUse cableUse = CableUse.OPTIONAL;
    private boolean forbidsTwoCables;
    private @Nullable Length lengthTolerance;
    private @Nullable ScaleFactor scaleFactor;
    private @Nullable BigDecimal tipMillimetres;
    private Output output = Output.VOLTAGE;
    private @Nullable NominalLine line;
    private Range outputVolts = Range.NOT_SAID;
    private String targetAlloy = "";
    private boolean selectableSystemLength;

    private Builder(String code) {
      this.code = code;
    }

    public Builder leadLengths(List<Length> lengths) {
      leadLengths = lengths;
      return this;
    }

    public Builder cableLengths(List<Length> lengths) {
      cableLengths = lengths;
      return this;
    }

    public Builder systemLengths(List<Length> lengths) {
      systemLengths = lengths;
      return this;
    }

    public Builder cableUse(CableUse cableUse) {
      this.cableUse = cableUse;
      return this;
    }

    public Builder forbidsTwoCables(boolean forbidsTwoCables) {
      this.forbidsTwoCables = forbidsTwoCables;
      return this;
    }

    public Builder lengthTolerance(@Nullable Length lengthTolerance) {
      this.lengthTolerance = lengthTolerance;
      return this;
    }

    public Builder scaleFactor(@Nullable ScaleFactor scaleFactor) {
      this.scaleFactor = scaleFactor;
      return this;
    }

    public Builder tipMillimetres(@Nullable BigDecimal tipMillimetres) {
      this.tipMillimetres = tipMillimetres;
      return this;
    }

    public Builder output(Output output) {
      this.output = output;
      return this;
    }

    public Builder line(@Nullable NominalLine line) {
      this.line = line;
      return this;
    }

    public Builder outputVolts(Range outputVolts) {
      this.outputVolts = outputVolts;
      return this;
    }

    public Builder targetAlloy(String targetAlloy) {
      this.targetAlloy = targetAlloy;
      return this;
    }

    public Builder selectableSystemLength(boolean selectable) {
      this.selectableSystemLength = selectable;
      return this;
    }

    public FamilyView build() {
      return new FamilyView(
          code,
          leadLengths,
          cableLengths,
          systemLengths,
          cableUse,
          forbidsTwoCables,
          lengthTolerance,
          scaleFactor,
          tipMillimetres,
          output,
          line,
          outputVolts,
          targetAlloy,
          selectableSystemLength);
    }
  }
}
