package loopwright.matching;

import java.math.BigDecimal;
import java.util.List;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import org.jspecify.annotations.Nullable;

/**
 * One component as the rules see it, with facts from elsewhere already joined.
 *
 * @param family code of the family it is recorded in
 * @param length nominal length of a probe's lead or of a cable; for a driver the total nominal
 *     length that it is tuned for
 * @param measuredLength physical length; never counted, only a plausibility check
 * @param tipMillimetres tip diameter; for a driver the tip that it is made for
 * @param sheet what the maker's data sheet of its model says
 * @param promisedTo what the part is reserved for, when that is not this loop
 * @param keptWith the kit that it belongs to, when the rest of that is not in this loop
 * @param elsewhere other places that claim the same part; a source may stop at four
 */
public record PartView(
    PartKind kind,
    PartName name,
    @Nullable String family,
    @Nullable KnownLength length,
    @Nullable Length measuredLength,
    @Nullable BigDecimal tipMillimetres,
    @Nullable ScaleFactor scaleFactor,
    PartSheet sheet,
    PartState state,
    @Nullable String promisedTo,
    @Nullable String keptWith,
    List<Elsewhere> elsewhere) {

  public PartView {
    elsewhere = List.copyOf(elsewhere);
  }

  public static Builder of(PartKind kind) {
    return new Builder(kind);
  }

  /** For sentences: {@code extension cable XC-51733}, {@code extension cable}. */
  public String words() {
    return name.isIdentified() ? kind.word() + " " + name.text() : kind.word();
  }

  public PartView withLength(@Nullable KnownLength other) {
    return new PartView(
        kind,
        name,
        family,
        other,
        measuredLength,
        tipMillimetres,
        scaleFactor,
        sheet,
        state,
        promisedTo,
        keptWith,
        elsewhere);
  }

  public PartView standingAlsoAt(List<Elsewhere> others) {
    return new PartView(
        kind,
        name,
        family,
        length,
        measuredLength,
        tipMillimetres,
        scaleFactor,
        sheet,
        state,
        promisedTo,
        keptWith,
        others);
  }

  /** The same while it is reserved for that. */
  public PartView promised(String to) {
    return new PartView(
        kind,
        name,
        family,
        length,
        measuredLength,
        tipMillimetres,
        scaleFactor,
        sheet,
        state,
        to,
        keptWith,
        elsewhere);
  }

  /** The same as part of a kit whose other parts are not here. */
  public PartView keptWith(String kit) {
    return new PartView(
        kind,
        name,
        family,
        length,
        measuredLength,
        tipMillimetres,
        scaleFactor,
        sheet,
        state,
        promisedTo,
        kit,
        elsewhere);
  }

  /** What is not said is not known; the state is <em>fitted</em> unless said otherwise. */
  public static final class Builder {
    private final PartKind kind;
    private PartName name = PartName.NOT_IDENTIFIED;
    private @Nullable String family;
    private @Nullable KnownLength length;
    private @Nullable Length measuredLength;
    private @Nullable BigDecimal tipMillimetres;
    private @Nullable ScaleFactor scaleFactor;
    private PartSheet sheet = PartSheet.NOT_GIVEN;
    private PartState state = PartState.FITTED;
    private @Nullable String promisedTo;
    private List<Elsewhere> elsewhere = List.of();

    private Builder(PartKind kind) {
      this.kind = kind;
    }

    public Builder name(PartName name) {
      this.name = name;
      return this;
    }

    public Builder family(@Nullable String family) {
      this.family = family;
      return this;
    }

    public Builder length(@Nullable KnownLength length) {
      this.length = length;
      return this;
    }

    public Builder measuredLength(@Nullable Length measuredLength) {
      this.measuredLength = measuredLength;
      return this;
    }

    public Builder tipMillimetres(@Nullable BigDecimal tipMillimetres) {
      this.tipMillimetres = tipMillimetres;
      return this;
    }

    public Builder scaleFactor(@Nullable ScaleFactor scaleFactor) {
      this.scaleFactor = scaleFactor;
      return this;
    }

    public Builder sheet(PartSheet sheet) {
      this.sheet = sheet;
      return this;
    }

    public Builder state(PartState state) {
      this.state = state;
      return this;
    }

    public Builder promisedTo(@Nullable String promisedTo) {
      this.promisedTo = promisedTo;
      return this;
    }

    public Builder elsewhere(List<Elsewhere> elsewhere) {
      this.elsewhere = elsewhere;
      return this;
    }

    public PartView build() {
      return new PartView(
          kind,
          name,
          family,
          length,
          measuredLength,
          tipMillimetres,
          scaleFactor,
          sheet,
          state,
          promisedTo,
          null,
          elsewhere);
    }
  }
}
