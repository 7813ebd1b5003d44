package loopwright.plant;

import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.FamilyId;
import loopwright.units.Dimension;
import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a point. Make one with {@link #of}.
 *
 * @param tag as the site writes it; found in any case
 * @param place in words: bearing, end, direction; empty if not said
 * @param family that the drawings call for, if they say
 * @param pairTag the other probe of an XY pair, or the second one on the same collar; empty if none
 * @param approvedGap gap to set at rest, as approved
 * @param intervalMonths time between calibrations
 */
public record PointDetails(
    String tag,
    PointKind kind,
    String place,
    @Nullable FamilyId family,
    String pairTag,
    Facing facing,
    PhaseMark phaseMark,
    Surroundings surroundings,
    @Nullable Reported approvedGap,
    @Nullable Integer intervalMonths,
    PointState state) {

  private static final double MOST_MICROMETRES = 60_000;

  /** Refuses a gap, an interval or a text that can't be. */
  public PointDetails {
    tag = Text.needed("the tag", tag, 60);
    place = Text.kept("the place", place, 120);
    pairTag = Text.kept("the tag of the pair", pairTag, 60);
    if (approvedGap != null) {
      refuseImpossible(approvedGap);
    }
    if (intervalMonths != null && (intervalMonths < 1 || intervalMonths > 240)) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE, "The interval", intervalMonths + " months", "1 to 240 months");
    }
  }

  static void refuseImpossible(Reported gap) {
    if (gap.unit().dimension() != Dimension.GAP) {
      throw new Refused(PlantProblem.BAD_UNIT, gap.unit().symbol(), "a gap", "µm or mil");
    }
    Text.kept("the approved gap", gap.typed(), 30);
    if (gap.canonical() <= 0 || gap.canonical() >= MOST_MICROMETRES) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE,
          "The approved gap",
          gap,
          "more than 0 and less than 60000 µm (2362 mil)");
    }
  }

  /** Begins one; what is not said stays unknown, and the point is in use. */
  public static Builder of(String tag, PointKind kind) {
    return new Builder(tag, kind);
  }

  /** These details, to be changed. */
  public Builder but() {
    return of(tag, kind)
        .place(place)
        .family(family)
        .pairTag(pairTag)
        .facing(facing)
        .phaseMark(phaseMark)
        .surroundings(surroundings)
        .approvedGap(approvedGap)
        .intervalMonths(intervalMonths)
        .state(state);
  }

  /** Collects details. */
  public static final class Builder {
    private String tag;
    private PointKind kind;
    private String place = "";
    private @Nullable FamilyId family;
    private String pairTag = "";
    private Facing facing = Facing.NOT_SAID;
    private PhaseMark phaseMark = PhaseMark.NONE;
    private Surroundings surroundings = Surroundings.NOT_SAID;
    private @Nullable Reported approvedGap;
    private @Nullable Integer intervalMonths;
    private PointState state = PointState.IN_USE;

    private Builder(String tag, PointKind kind) {
      this.tag = tag;
      this.kind = kind;
    }

    public Builder tag(String tag) {
      this.tag = tag;
      return this;
    }

    public Builder kind(PointKind kind) {
      this.kind = kind;
      return this;
    }

    public Builder place(String place) {
      this.place = place;
      return this;
    }

    public Builder family(@Nullable FamilyId family) {
      this.family = family;
      return this;
    }

    public Builder pairTag(String pairTag) {
      this.pairTag = pairTag;
      return this;
    }

    public Builder facing(Facing facing) {
      this.facing = facing;
      return this;
    }

    public Builder phaseMark(PhaseMark phaseMark) {
      this.phaseMark = phaseMark;
      return this;
    }

    public Builder surroundings(Surroundings surroundings) {
      this.surroundings = surroundings;
      return this;
    }

    public Builder approvedGap(@Nullable Reported approvedGap) {
      this.approvedGap = approvedGap;
      return this;
    }

    public Builder intervalMonths(@Nullable Integer intervalMonths) {
      this.intervalMonths = intervalMonths;
      return this;
    }

    public Builder state(PointState state) {
      this.state = state;
      return this;
    }

    public PointDetails build() {
      return new PointDetails(
          tag,
          kind,
          place,
          family,
          pairTag,
          facing,
          phaseMark,
          surroundings,
          approvedGap,
          intervalMonths,
          state);
    }
  }
}
