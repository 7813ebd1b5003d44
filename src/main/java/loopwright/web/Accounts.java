package loopwright.web;

import java.util.Optional;

/** Who may sign in. Called from many request threads at once. */
public interface Accounts {
  /**
   * The person whose login and password these are. Empty when there is no such login, the password
   * is another or the account is closed; which of them it was must not show, not even in the time
   * taken.
   */
  Optional<Actor> authenticate(String login, String password);

  /** The person with that {@link Actor#id()} as of now; empty once the account is closed. */
  Optional<Actor> find(String id);

  /**
   * Gives the actor a new password, already checked to be long enough, and ends {@link
   * Actor#mustChangePassword()}.
   *
   * @return false, with nothing changed, when {@code old} isn't the present password
   * @throws loopwright.problem.Refused when the new one is not acceptable for a published reason
   */
  boolean changePassword(Actor actor, String old, String fresh);
}
