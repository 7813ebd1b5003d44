package loopwright.people;

import loopwright.web.Actor;
import loopwright.web.Role;

/**
 * Somebody with an account.
 *
 * @param number never changes and is never given to anybody else
 * @param active whether they may sign in
 * @param version of the account, for edits
 */
public record Person(
    long number,
    String login,
    String name,
    Role role,
    boolean active,
    boolean mustChangePassword,
    long passwordVersion,
    int version)
    implements Actor {

  @Override
  public String id() {
    return Long.toString(number);
  }

  boolean isActiveAdministrator() {
    return active && role == Role.ADMINISTRATOR;
  }
}
