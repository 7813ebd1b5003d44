package loopwright.importing;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.problem.Nearest;
import loopwright.register.Family;
import loopwright.register.FamilyId;
import loopwright.register.ToleranceProfiles;

/**
 * The tolerance profile that a row names, else the one of the driver's family; of it the version
 * that the row names, else the one that held when the curve was taken.
 */
final class ProfileCells {
  static final String HEADING = "profile";
  static final String VERSION = "profile_version";

  private final Planning planning;
  private final Map<String, ToleranceProfiles.Stored> byCode = new HashMap<>();

  ProfileCells(Planning planning) {
    this.planning = planning;
    planning
        .features
        .profiles()
        .newest(planning.sql)
        .forEach(stored -> byCode.put(stored.profile().code(), stored));
  }

  /**
   * @param driver number of the driver that was fitted, if anybody knows
   * @param taken when the curve was
   */
  Optional<ToleranceProfiles.Stored> of(RowCells row, Optional<Long> driver, Instant taken) {
    String code = row.text(HEADING);
    Optional<ToleranceProfiles.Stored> newest = code.isEmpty() ? usual(row, driver) : named(row);
    return newest.flatMap(
        stored ->
            row.isFilled(VERSION)
                ? row.whole(VERSION).flatMap(number -> version(row, stored, number))
                : Optional.of(ofThen(stored, taken)));
  }

  /** The version that held then; of a curve older than all of them the first. */
  private ToleranceProfiles.Stored ofThen(ToleranceProfiles.Stored newest, Instant taken) {
    return planning
        .features
        .profiles()
        .inForce(planning.sql, newest.profile().code(), taken)
        .orElse(newest);
  }

  private Optional<ToleranceProfiles.Stored> version(
      RowCells row, ToleranceProfiles.Stored newest, int number) {
    List<ToleranceProfiles.Stored> all =
        planning.features.profiles().versions(planning.sql, newest.profile().code());
    Optional<ToleranceProfiles.Stored> found =
        all.stream().filter(stored -> stored.profile().version() == number).findFirst();
    if (found.isEmpty()) {
      row.complain(
          VERSION,
          ImportProblem.NO_VERSION,
          newest.profile().code(),
          number,
          all.stream()
              .map(stored -> Integer.toString(stored.profile().version()))
              .sorted()
              .collect(Collectors.joining(", ")));
    }
    return found;
  }

  private Optional<ToleranceProfiles.Stored> named(RowCells row) {
    String code = row.text(HEADING);
    Optional<ToleranceProfiles.Stored> profile = Optional.ofNullable(byCode.get(code));
    if (profile.isEmpty()) {
      List<String> codes = byCode.keySet().stream().sorted().toList();
      row.complain(
          HEADING,
          ImportProblem.UNKNOWN_WORD,
          Shown.cell(code),
          Nearest.word(code, codes),
          "Known are: " + String.join(", ", codes) + ".");
    }
    return profile;
  }

  private Optional<ToleranceProfiles.Stored> usual(RowCells row, Optional<Long> driver) {
    Optional<ToleranceProfiles.Stored> profile =
        driver
            .flatMap(planning.parts::familyOf)
            .flatMap(this::profileOf)
            .flatMap(code -> Optional.ofNullable(byCode.get(code)));
    if (profile.isEmpty()) {
      row.complain(
          HEADING,
          ImportProblem.EMPTY_CELL,
          "the tolerance profile; the driver's family names none");
    }
    return profile;
  }

  private Optional<String> profileOf(FamilyId family) {
    String planned = planning.familyProfiles.get(family.number());
    return planned != null
        ? Optional.of(planned)
        : planning
            .features
            .families()
            .family(planning.sql, family)
            .map(Family::details)
            .flatMap(details -> Optional.ofNullable(details.profile()));
  }
}
