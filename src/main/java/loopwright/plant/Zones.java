package loopwright.plant;

import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.problem.Refused;

/** Time zones by their IANA names, in any case. */
public final class Zones {
  private static final Map<String, String> NAMES =
      ZoneId.getAvailableZoneIds().stream()
          .collect(
              Collectors.toMap(
                  name -> name.toLowerCase(Locale.ROOT), name -> name, (a, b) -> a, TreeMap::new));

  private Zones() {}

  /**
   * The zone of that name.
   *
   * @throws Refused {@link PlantProblem#BAD_ZONE} for anything else; a bare offset such as +02:00
   *     is none, because it knows no summer time
   */
  public static ZoneId read(String name) {
    return Optional.ofNullable(NAMES.get(name.strip().toLowerCase(Locale.ROOT)))
        .map(ZoneId::of)
        .orElseThrow(() -> new Refused(PlantProblem.BAD_ZONE, name.strip()));
  }

  /** Names to choose from, regions with a slash first asked for by people. */
  public static java.util.List<String> names() {
    return NAMES.values().stream().filter(name -> name.contains("/")).sorted().toList();
  }
}
