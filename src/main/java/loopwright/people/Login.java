package loopwright.people;

import java.util.Locale;
import java.util.regex.Pattern;
import loopwright.problem.Refused;

/** What a person signs in as: always in small letters, never given to anybody else. */
public record Login(String text) {
  private static final Pattern FORM = Pattern.compile("[a-z0-9][a-z0-9._@-]{0,59}");

  /** Drops blanks around it and makes capitals small. */
  public Login {
    String typed = text;
    text = lower(text);
    if (!FORM.matcher(text).matches()) {
      throw new Refused(PeopleProblem.LOGIN_FORM, typed.strip());
    }
  }

  static String lower(String typed) {
    return typed.strip().toLowerCase(Locale.ROOT);
  }
}
