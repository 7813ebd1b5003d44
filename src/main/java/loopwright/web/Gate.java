package loopwright.web;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.problem.Refused;

/**
 * Stands before every route: who is asking, is the form one of ours, may they do this. A route
 * without a permission of its own asks for {@link Permission#READ}.
 */
final class Gate {
  static final String TOKEN_FIELD = "csrf";
  static final String TOKEN_HEADER = "X-Csrf-Token";
  private static final Set<HandlerType> LOOKING =
      Set.of(HandlerType.GET, HandlerType.HEAD, HandlerType.OPTIONS);
  private static final Set<String> OPEN_BEFORE_PASSWORD = Set.of("/password", "/sign-out");

  private final Page page;
  private final SignInPages signIn;

  Gate(Page page, SignInPages signIn) {
    this.page = page;
    this.signIn = signIn;
  }

  void check(Context http) {
    Permission needs = needs(http);
    SizeLimit.check(http);
    if (needs != Permission.DEVICE) {
      checkPerson(http, needs);
    }
  }

  private void checkPerson(Context http, Permission needs) {
    Actor actor = Session.actor(http);
    if (actor == null && needs != Permission.ANYONE) {
      turnToSignIn(http);
    } else if (changesSomething(http) && !carriesToken(http)) {
      refuseForm(http);
    } else if (actor != null && needs != Permission.ANYONE) {
      checkMay(http, actor, needs);
    }
  }

  private static Permission needs(Context http) {
    return http.routeRoles().stream()
        .filter(Permission.class::isInstance)
        .map(Permission.class::cast)
        .findFirst()
        .orElse(Permission.READ);
  }

  private void checkMay(Context http, Actor actor, Permission needs) {
    if (!actor.may(needs)) {
      throw new Refused(WebProblem.NOT_ALLOWED, actor.role().word(), needs.inWords());
    }
    if (actor.mustChangePassword() && !OPEN_BEFORE_PASSWORD.contains(http.path())) {
      page.go(http, "/password");
      http.skipRemainingHandlers();
    }
  }

  private void turnToSignIn(Context http) {
    if (ErrorPages.wantsData(http) || ErrorPages.isScript(http)) {
      throw new Refused(WebProblem.SIGNED_OUT);
    }
    http.skipRemainingHandlers();
    if (changesSomething(http)) {
      Optional<HeldForm> held = HeldForm.sent(http);
      SizeLimit.readAway(http);
      signIn.askForHeld(http, held);
    } else if ("cross-site".equals(http.header("Sec-Fetch-Site"))) {
      // a strict cookie is not sent on a link from elsewhere: ask once more, from our own page
      page.show(http, 200, "web/continue", Map.of());
    } else {
      signIn.redirect(http);
    }
  }

  private void refuseForm(Context http) {
    if (http.path().equals(SignInPages.PATH)) {
      http.skipRemainingHandlers();
      signIn.askAgain(http);
    } else if (Session.actor(http) == null) {
      // signing out, for instance, after the session ran out
      http.skipRemainingHandlers();
      page.go(http, SignInPages.PATH);
    } else {
      askWhetherMeant(http);
    }
  }

  /** From a page of an earlier session, most likely: shows what it holds and asks. */
  private void askWhetherMeant(Context http) {
    Optional<HeldForm> held = HeldForm.sent(http);
    if (held.isEmpty() || ErrorPages.isScript(http) || ErrorPages.wantsData(http)) {
      throw new Refused(WebProblem.WRONG_TOKEN);
    }
    http.skipRemainingHandlers();
    page.show(http, 403, "web/held", Map.of("held", held.get()));
  }

  private static boolean changesSomething(Context http) {
    return !LOOKING.contains(http.method());
  }

  private static boolean carriesToken(Context http) {
    String header = http.header(TOKEN_HEADER);
    if (header != null) {
      return Session.hasToken(http, header);
    }
    boolean form = http.isFormUrlencoded() || http.isMultipartFormData();
    return form && Session.hasToken(http, http.formParam(TOKEN_FIELD));
  }
}
