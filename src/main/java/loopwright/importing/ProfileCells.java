package loopwright.importing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Nearest;
import loopwright.register.Family;
import loopwright.register.FamilyId;
import loopwright.register.ToleranceProfiles;

/** The tolerance profile that a row names, else the one of the driver's family. */
final class ProfileCells {
  private static final String HEADING = "profile";

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
   */
  Optional<ToleranceProfiles.Stored> of(RowCells row, Optional<Long> driver) {
    String code = row.text(HEADING);
    if (code.isEmpty()) {
      return usual(row, driver);
    }
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
