package loopwright.importing;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.calibration.ChosenStandards;
import loopwright.standard.Standard;

/**
 * The reference standards that a row names by code, under their certificates of the day on which
 * the curve was taken.
 */
final class StandardCells {
  static final String HEADING = "standards";

  private final List<Standard> all;

  StandardCells(Planning planning) {
    all = planning.features.standards().all(planning.sql);
  }

  /**
   * Numbers of the certificates; what can't be resolved is complained of at its cell.
   *
   * @param day on the site's calendar
   */
  List<Long> of(RowCells row, LocalDate day) {
    List<String> codes =
        Stream.of(row.text(HEADING).split("[,;]"))
            .map(String::strip)
            .filter(code -> !code.isEmpty())
            .toList();
    ChosenStandards chosen = ChosenStandards.named(codes, Optional.of(day), all);
    Stream.concat(chosen.unresolved().values().stream(), chosen.clashes().stream())
        .forEach(why -> row.complain(HEADING, ImportProblem.STANDARD, why));
    return chosen.certificates();
  }
}
