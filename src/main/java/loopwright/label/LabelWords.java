package loopwright.label;

import java.util.List;
import loopwright.matching.PartKind;
import loopwright.plant.Point;
import loopwright.plant.PointPlace;
import loopwright.register.NominalLength;
import loopwright.register.PartIdentity;
import loopwright.register.PartRow;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/** Puts parts and loops into the words of a label. */
final class LabelWords {
  private final String base;

  /**
   * @param base what addresses on labels begin with
   */
  LabelWords(String base) {
    this.base = base;
  }

  Label of(PartRow row) {
    PartKind kind = row.part().kind();
    NominalLength length = row.part().facts().length();
    PartIdentity identity = row.part().details().identity();
    LabelCode code = LabelCode.ofComponent(row.part().id().number());
    return new Label(
        address(code),
        code,
        large(kind, length),
        kind(kind, length),
        row.family(),
        identity.hasSerial() ? identity.serial() : "shop no. " + identity.shopNumber(),
        identity.maker() + " " + identity.model());
  }

  Label of(Point point, PointPlace place) {
    LabelCode code = LabelCode.ofPoint(point.id().number());
    return new Label(
        address(code),
        code,
        List.of(point.tag()),
        "loop",
        point.kind().word(),
        place.train().code(),
        place.machine().name() + ", " + place.site().name());
  }

  private String address(LabelCode code) {
    return base + "/c/" + code.text();
  }

  /** The unit it is sold in first. Parts without a length say in large what they are. */
  private static List<String> large(PartKind kind, @Nullable NominalLength length) {
    if (length != null) {
      String metres = length.length().inMetres();
      String feet = length.length().inFeet();
      return length.typed().unit() == Unit.FOOT ? List.of(feet, metres) : List.of(metres, feet);
    }
    return hasLength(kind) ? List.of("length", "not known") : List.of(kind.word());
  }

  private static boolean hasLength(PartKind kind) {
    return kind.isProximity() && kind.place() != PartKind.Place.AFTER_DRIVER;
  }

  /** A driver's length is that of the whole system; one that nobody proved says so. */
  private static String kind(PartKind kind, @Nullable NominalLength length) {
    String words =
        kind.place() == PartKind.Place.DRIVER_SLOT ? kind.word() + ", system length" : kind.word();
    return length == null || length.evidence().proves()
        ? words
        : words + " " + length.evidence().phrase();
  }
}
