package loopwright.matching;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * One loop at one moment, all that any rule may look at, cross-loop facts already joined.
 *
 * @param tag of the point that it serves
 * @param path slots between probe and driver, in order; {@link Slot#NONE_FITTED} where the lead
 *     goes straight to the driver
 * @param families to judge against
 * @param facts what the source has a place for
 * @param calibration the latest as-left, null when there is none
 * @param barrier barrier or isolator behind the driver; not counted into the chain
 * @param place what is known of the point
 * @param alloys groups of target alloys to judge by
 * @param disputed parts that were claimed here and elsewhere for one moment, each in one sentence
 */
public record LoopView(
    String tag,
    Slot probe,
    List<Slot> path,
    Slot driver,
    Families families,
    Set<Fact> facts,
    @Nullable Calibration calibration,
    Slot barrier,
    PlaceView place,
    Alloys alloys,
    List<String> disputed) {

  /** A path of which nothing is said is not recorded. */
  public LoopView {
    path = path.isEmpty() ? List.of(Slot.NOT_RECORDED) : List.copyOf(path);
    facts = Set.copyOf(facts);
    disputed = List.copyOf(disputed);
  }

  public static Builder at(String tag) {
    return new Builder(tag);
  }

  /** Every slot, from the probe to the driver. */
  public List<Slot> slots() {
    List<Slot> slots = new ArrayList<>();
    slots.add(probe);
    slots.addAll(path);
    slots.add(driver);
    return slots;
  }

  /** The parts known to be fitted, from the probe to the driver. */
  public List<PartView> parts() {
    return fitted(slots());
  }

  /** The parts known to be fitted, the barrier included. */
  public List<PartView> everyPart() {
    List<PartView> every = parts();
    barrier.part().ifPresent(every::add);
    return every;
  }

  /** The parts known to be fitted between probe and driver. */
  public List<PartView> pathParts() {
    return fitted(path);
  }

  private static List<PartView> fitted(List<Slot> slots) {
    List<PartView> parts = new ArrayList<>(slots.size());
    slots.forEach(slot -> slot.part().ifPresent(parts::add));
    return parts;
  }

  /** The family that this part is recorded in, when it is in the list. */
  public Optional<FamilyView> familyOf(PartView part) {
    return Optional.ofNullable(part.family()).flatMap(families::named);
  }

  /**
   * The family whose tolerance and path count: the driver's, else the probe's, else that of the
   * path where its parts agree on one.
   */
  public Optional<FamilyView> family() {
    if (!families.areGiven()) {
      return Optional.empty();
    }
    return driver
        .part()
        .flatMap(this::familyOf)
        .or(() -> probe.part().flatMap(this::familyOf))
        .or(this::familyOfPath);
  }

  private Optional<FamilyView> familyOfPath() {
    List<FamilyView> named =
        pathParts().stream().map(this::familyOf).flatMap(Optional::stream).distinct().toList();
    return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
  }

  /** A seismic transducer or a pickup stands in the probe's slot: registered, not judged. */
  public boolean isOutsideTheRules() {
    return probe.part().filter(part -> !part.kind().isProximity()).isPresent();
  }

  public LoopView withParts(UnaryOperator<PartView> change) {
    return new LoopView(
        tag,
        changed(probe, change),
        path.stream().map(slot -> changed(slot, change)).toList(),
        changed(driver, change),
        families,
        facts,
        calibration,
        changed(barrier, change),
        place,
        alloys,
        disputed);
  }

  private static Slot changed(Slot slot, UnaryOperator<PartView> change) {
    return slot.part().map(part -> Slot.of(change.apply(part))).orElse(slot);
  }

  /** What is not said is not recorded; without {@link #holding} the source holds no extra facts. */
  public static final class Builder {
    private final String tag;
    private Slot probe = Slot.NOT_RECORDED;
    private List<Slot> path = List.of();
    private Slot driver = Slot.NOT_RECORDED;
    private Families families = Families.NOT_GIVEN;
    private Set<Fact> facts = EnumSet.noneOf(Fact.class);
    private @Nullable Calibration calibration;
    private Slot barrier = Slot.NOT_RECORDED;
    private PlaceView place = PlaceView.NOT_SAID;
    private Alloys alloys = Alloys.NOT_GIVEN;
    private List<String> disputed = List.of();

    private Builder(String tag) {
      this.tag = tag;
    }

    public Builder probe(Slot probe) {
      this.probe = probe;
      return this;
    }

    public Builder path(List<Slot> path) {
      this.path = path;
      return this;
    }

    public Builder driver(Slot driver) {
      this.driver = driver;
      return this;
    }

    public Builder families(Families families) {
      this.families = families;
      return this;
    }

    public Builder holding(Set<Fact> facts) {
      this.facts = facts;
      return this;
    }

    public Builder calibration(@Nullable Calibration calibration) {
      this.calibration = calibration;
      return this;
    }

    public Builder barrier(Slot barrier) {
      this.barrier = barrier;
      return this;
    }

    public Builder place(PlaceView place) {
      this.place = place;
      return this;
    }

    public Builder alloys(Alloys alloys) {
      this.alloys = alloys;
      return this;
    }

    public Builder disputed(List<String> disputed) {
      this.disputed = disputed;
      return this;
    }

    public LoopView build() {
      return new LoopView(
          tag, probe, path, driver, families, facts, calibration, barrier, place, alloys, disputed);
    }
  }
}
