package loopwright.people;

import loopwright.problem.Problem;

/** Why an account could not be made or changed. */
public enum PeopleProblem implements Problem {
  LOGIN_FORM(
      "P-101",
      "\u201c{0}\u201d can't be a login. Use 1 to 60 letters a to z, figures, dots, hyphens,"
          + " underscores or @, for instance t.miller."),
  LOGIN_TAKEN(
      "P-102",
      "The login {0} belongs to {1} already, and a login is never given to another person. Choose"
          + " another one."),
  NAME_FORM("P-103", "Give the person's full name, 1 to 120 characters."),
  PASSWORD_LENGTH(
      "P-104",
      "A password has {0} to {1} characters; this one has {2}. A few words in a row are good."),
  LAST_ADMINISTRATOR(
      "P-105",
      "{0} is the last active administrator: without one nobody could keep accounts. Make somebody"
          + " else administrator first."),
  NOT_A_DEMO("P-106", "Accounts with known passwords are made in a demo database only."),
  OWN_RESET("P-107", "Your own password is changed on the password page, not here."),
  INACTIVE("P-108", "{0} is inactive. Make the account active first, then give a new password."),
  WRONG_PASSWORD("P-109", "This is not your password. Nothing is signed."),
  TOO_MANY_TRIES("P-110", "Too many wrong passwords. Wait a minute, then try again."),
  NAME_TAKEN(
      "P-111",
      "{0} is the name of the account {1} already, and names stand under records and signatures."
          + " Add what tells the two apart, a middle initial for instance.");

  private final String code;
  private final String sentence;

  PeopleProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence;
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String sentence() {
    return sentence;
  }
}
