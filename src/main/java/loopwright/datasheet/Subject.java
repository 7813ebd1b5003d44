package loopwright.datasheet;

import java.util.Locale;
import loopwright.matching.PartKind;
import loopwright.problem.Text;
import loopwright.register.FamilyId;
import loopwright.register.PartIdentity;
import org.jspecify.annotations.Nullable;

/**
 * Whose data sheet it is. Make one with {@link #ofFamily} or {@link #ofModel}.
 *
 * @param family null where it is a model's
 * @param maker empty where it is a family's
 * @param model empty where it is a family's
 */
public record Subject(PartKind kind, @Nullable FamilyId family, String maker, String model) {

  /** Every part of that kind in the family, unless its model has a sheet of its own. */
  public static Subject ofFamily(PartKind kind, FamilyId family) {
    return new Subject(kind, family, "", "");
  }

  /** Every part of that maker's model; blanks count once, capitals don't. */
  public static Subject ofModel(PartKind kind, String maker, String model) {
    return new Subject(
        kind,
        null,
        Text.needed("the maker", maker, 80).replaceAll("\\s+", " "),
        Text.needed("the model", model, 80).replaceAll("\\s+", " "));
  }

  static Subject ofModel(PartKind kind, PartIdentity identity) {
    return ofModel(kind, identity.maker(), identity.model());
  }

  /** Under which it is stored. */
  String key() {
    return (family == null
            ? kind.word() + "/" + maker.replace("/", "//") + "/" + model.replace("/", "//")
            : family.number() + "/" + kind.word())
        .toUpperCase(Locale.ROOT);
  }

  /** A connector that can be plugged toward the probe. */
  boolean hasConnectorTowardProbe() {
    return kind.place() == PartKind.Place.PATH || isDriver();
  }

  boolean hasConnectorTowardDriver() {
    return kind.place() == PartKind.Place.PATH || kind == PartKind.PROBE;
  }

  boolean isDriver() {
    return kind.place() == PartKind.Place.DRIVER_SLOT;
  }

  /** Barriers and isolators: their entity parameters are outputs. */
  boolean isBarrier() {
    return kind.place() == PartKind.Place.AFTER_DRIVER;
  }
}
