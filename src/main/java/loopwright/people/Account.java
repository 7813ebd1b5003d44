package loopwright.people;

import loopwright.problem.Refused;
import loopwright.web.Role;

/** What an administrator says of a person. */
public record Account(String name, Role role, boolean active) {
  private static final int LONGEST_NAME = 120;

  public Account {
    name = name.strip();
    if (name.isEmpty() || name.length() > LONGEST_NAME) {
      throw new Refused(PeopleProblem.NAME_FORM);
    }
  }
}
