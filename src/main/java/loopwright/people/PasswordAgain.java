package loopwright.people;

import io.javalin.http.Context;
import java.time.InstantSource;
import loopwright.problem.Refused;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Throttle;

/**
 * The password asked again where somebody puts their name to something. Tries count together for
 * everything that is signed, so that guessing goes no faster by going from page to page.
 */
public final class PasswordAgain {
  /** The form's field. */
  public static final String FIELD = "password";

  private final People people;
  private final Throttle throttle;

  public PasswordAgain(People people, InstantSource clock) {
    this.people = people;
    this.throttle = new Throttle(clock);
  }

  /** Whether it was given; complains at its field if not. */
  public boolean isGiven(Context http, Form form) {
    Actor actor = Actor.of(http);
    if (!throttle.take(actor.id(), http.ip()).isZero()) {
      form.complain(FIELD, Refused.say(PeopleProblem.TOO_MANY_TRIES));
      return false;
    }
    if (!people.confirms(actor, form.typed(FIELD))) {
      form.complain(FIELD, Refused.say(PeopleProblem.WRONG_PASSWORD));
      return false;
    }
    throttle.forget(actor.id(), http.ip());
    return true;
  }
}
