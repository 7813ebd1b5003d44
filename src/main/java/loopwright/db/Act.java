package loopwright.db;

import org.jspecify.annotations.Nullable;

/**
 * Who does what and why: nothing is written without one.
 *
 * @param actorId the person's number; null for the program itself and the command line
 * @param actorName as the record shall call them for ever
 * @param actorRole the role they acted in
 * @param what kind of act, for instance {@code survey}
 * @param reason in the person's words, or the program's when nobody was asked
 */
public record Act(
    @Nullable Long actorId, String actorName, String actorRole, String what, String reason) {

  /** Refuses an act without actor, kind or reason. */
  public Act {
    if (actorName.isBlank() || actorRole.isBlank() || what.isBlank() || reason.isBlank()) {
      throw new IllegalArgumentException("An act needs an actor, a kind and a reason.");
    }
  }

  /** Something the program does itself, started from the command line. */
  public static Act ofProgram(String what, String reason) {
    return new Act(null, "command line", "administrator", what, reason);
  }
}
