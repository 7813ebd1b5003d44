package loopwright.importing;

import java.util.Optional;
import loopwright.problem.Nearest;

/** Finds the family that a cell names, in the register or among the files. */
final class FamilyCells {
  private final Planning planning;

  FamilyCells(Planning planning) {
    this.planning = planning;
  }

  static World.Key key(String code) {
    return World.Key.of(World.Thing.FAMILY, code);
  }

  /** Its number, below zero while it is planned; empty when the cell is, or was complained of. */
  Optional<Long> named(RowCells row, String heading) {
    String code = row.name(heading);
    if (code.isEmpty()) {
      return Optional.empty();
    }
    Optional<World.Entry> entry = planning.world.find(key(code));
    if (entry.isEmpty()) {
      row.complain(heading, ImportProblem.NOT_THERE, "family", Shown.cell(code), meant(code));
      return Optional.empty();
    }
    RowPlace adding = entry.get().row();
    if (entry.get().refused()) {
      row.complainOfRow(ImportProblem.LEFT_UNREAD, "family " + code + " (" + adding + ")");
      return Optional.empty();
    }
    return Optional.of(entry.get().number());
  }

  private String meant(String code) {
    String nearest = Nearest.word(code, planning.familyCodes.values());
    return nearest.isEmpty()
        ? "Import the families first, or together with this file."
        : "Did you mean '" + nearest + "'?";
  }
}
