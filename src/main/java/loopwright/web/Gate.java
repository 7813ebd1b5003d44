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
  private final Accounts accounts;
  private final SignInPages signIn;

  Gate(Page page, Accounts accounts, SignInPages signIn) {
    this.page = page;
    this.accounts = accounts;
    this.signIn = signIn;
  }

  void check(Context http) {
    Optional<Actor> actor = Session.recall(http, accounts);
    Permission needs = needs(http);
    if (actor.isEmpty() && needs != Permission.ANYONE) {
      turnToSignIn(http);
    } else if (changesSomething(http) && !carriesToken(http)) {
      refuseForm(http);
    } else if (actor.isPresent() && needs != Permission.ANYONE) {
      checkMay(http, actor.get(), needs);
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
      signIn.askForHeld(http, HeldForm.sent(http));
    } else if ("cross-site".equals(http.header("Sec-Fetch-Site"))) {
      // a strict cookie is not sent on a link from elsewhere: ask once more, from our own page
      page.show(http, 200, "web/continue", Map.of());
    } else {
      signIn.redirect(http);
    }
  }

  private void refuseForm(Context http) {
    Optional<HeldForm> held = Session.actor(http) == null ? Optional.empty() : HeldForm.sent(http);
    if (http.path().equals(SignInPages.PATH)) {
      http.skipRemainingHandlers();
      signIn.askAgain(http);
    } else if (held.isPresent()) {
      http.skipRemainingHandlers();
      page.show(http, 403, "web/held", Map.of("held", held.get()));
    } else {
      throw new Refused(WebProblem.WRONG_TOKEN);
    }
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
