package loopwright.scan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.register.Component;
import org.jspecify.annotations.Nullable;

/**
 * Scanned parts, each in the place of the chain that takes its kind.
 *
 * @param path between probe and driver, in some order
 */
record Bench(@Nullable Component probe, List<Component> path, @Nullable Component driver) {
  static final Bench EMPTY = new Bench(null, List.of(), null);

  /** What survey and assembly have room for. */
  static final int MOST_IN_PATH = 3;

  Bench {
    path = List.copyOf(path);
  }

  /** What can still be told apart from what was scanned. */
  enum Place {
    PROBE(PartKind.PROBE),
    PATH(PartKind.CABLE),
    DRIVER(PartKind.DRIVER);

    private final PartKind usual;

    Place(PartKind usual) {
      this.usual = usual;
    }

    PartKind usual() {
      return usual;
    }
  }

  /**
   * @throws Refused if there is no room for a part of that kind
   */
  Bench with(Component part) {
    return switch (part.kind().place()) {
      case PROBE_SLOT -> {
        refuseSecond(probe, part);
        yield new Bench(part, path, driver);
      }
      case DRIVER_SLOT -> {
        refuseSecond(driver, part);
        yield new Bench(probe, path, part);
      }
      case PATH -> {
        if (path.size() == MOST_IN_PATH) {
          throw new Refused(ScanProblem.TOO_MANY, part.label(), MOST_IN_PATH + 1, MOST_IN_PATH);
        }
        yield inOrder(Stream.concat(path.stream(), Stream.of(part)).toList());
      }
      case AFTER_DRIVER ->
          throw new Refused(ScanProblem.NOT_IN_CHAIN, part.label(), part.kind().word());
    };
  }

  private static void refuseSecond(@Nullable Component there, Component part) {
    if (there != null) {
      throw new Refused(ScanProblem.PLACE_TAKEN, part.label(), part.kind().word(), there.inWords());
    }
  }

  /** The part that stands where this one would have to. */
  Optional<Component> inPlaceOf(Component part) {
    return switch (part.kind().place()) {
      case PROBE_SLOT -> Optional.ofNullable(probe);
      case DRIVER_SLOT -> Optional.ofNullable(driver);
      default -> Optional.empty();
    };
  }

  Bench inOrder(List<Component> order) {
    return new Bench(probe, order, driver);
  }

  /** From the probe to the driver. */
  List<Component> parts() {
    return Stream.of(Stream.ofNullable(probe), path.stream(), Stream.ofNullable(driver))
        .flatMap(part -> part)
        .toList();
  }

  List<Place> missing(boolean noCable) {
    List<Place> missing = new ArrayList<>();
    if (probe == null) {
      missing.add(Place.PROBE);
    }
    if (path.isEmpty() && !noCable) {
      missing.add(Place.PATH);
    }
    if (driver == null) {
      missing.add(Place.DRIVER);
    }
    return missing;
  }

  /** Every order in which the path can stand; as scanned first. */
  List<List<Component>> orders() {
    return orders(path);
  }

  private static List<List<Component>> orders(List<Component> parts) {
    if (parts.size() < 2) {
      return List.of(parts);
    }
    List<List<Component>> orders = new ArrayList<>();
    for (Component first : parts) {
      List<Component> others = parts.stream().filter(part -> !part.equals(first)).toList();
      for (List<Component> rest : orders(others)) {
        orders.add(Stream.concat(Stream.of(first), rest.stream()).toList());
      }
    }
    return orders;
  }
}
