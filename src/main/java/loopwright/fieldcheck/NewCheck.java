package loopwright.fieldcheck;

import java.time.Instant;
import loopwright.problem.Text;

/** A check about to be kept. */
record NewCheck(
    long point, CheckKind kind, Instant takenAt, String takenBy, Entries entries, String note) {

  NewCheck {
    takenBy = Text.needed("who took it", takenBy, 120);
    note = Text.kept("the note", note, 2000);
  }
}
