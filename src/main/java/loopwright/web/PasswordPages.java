package loopwright.web;

import io.javalin.http.Context;
import java.time.Duration;
import java.util.Map;
import loopwright.problem.Refused;

/** A person's own password. */
final class PasswordPages implements Pages {
  static final int SHORTEST = 12;
  static final int LONGEST = 200;

  private final Page page;
  private final Accounts accounts;
  private final Throttle throttle;
  private final int idleSeconds;

  PasswordPages(Page page, Accounts accounts, Throttle throttle, Duration idle) {
    this.page = page;
    this.accounts = accounts;
    this.throttle = throttle;
    this.idleSeconds = Math.toIntExact(idle.toSeconds());
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/password", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.post("/password", Permission.READ, this::change);
  }

  private void change(Context http) {
    Form form = Form.from(http);
    Actor actor = Actor.of(http);
    form.read("fresh-password", fresh -> longEnough(fresh, form.typed("old-password")));
    if (!form.typed("fresh-password").equals(form.typed("again-password"))) {
      form.complain("again-password", "This is not the same as the new password above.");
    }
    if (form.ok() && tried(http, form, actor)) {
      renew(http, actor);
    } else {
      show(http, 422, onlyComplaints(form));
    }
  }

  private static String longEnough(String fresh, String old) {
    if (fresh.length() < SHORTEST || fresh.length() > LONGEST) {
      throw new IllegalArgumentException(
          "A password has %s to %s characters; this one has %s. A few words in a row are good."
              .formatted(SHORTEST, LONGEST, fresh.length()));
    }
    if (fresh.equals(old)) {
      throw new IllegalArgumentException("This is the old password. Choose another one.");
    }
    return fresh;
  }

  private boolean tried(Context http, Form form, Actor actor) {
    if (!throttle.take(actor.id(), http.ip()).isZero()) {
      form.complain("Too many wrong passwords. Wait a minute, then try again.");
      return false;
    }
    try {
      if (!accounts.changePassword(
          actor, form.typed("old-password"), form.typed("fresh-password"))) {
        form.complain("old-password", "This is not your present password.");
      }
    } catch (Refused refused) {
      form.complain(refused);
    }
    return form.ok();
  }

  /** Sessions under the old password have ended; this one goes on under a new id. */
  private void renew(Context http, Actor actor) {
    throttle.forget(actor.id(), http.ip());
    Session.begin(http, accounts.find(actor.id()).orElseThrow(), idleSeconds);
    page.go(http, LocalPath.FIRST_PAGE, "Your password is changed.");
  }

  /** Passwords are never sent back to the browser. */
  private static Form onlyComplaints(Form form) {
    Form blank = Form.blank();
    form.complaints().forEach(blank::complain);
    form.general().forEach(blank::complain);
    return blank;
  }

  private void show(Context http, int status, Form form) {
    page.show(http, status, "web/password", Map.of("form", form));
  }
}
