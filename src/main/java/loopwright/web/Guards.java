package loopwright.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.InstantSource;
import java.util.Map;

/** Everything that stands round the features' pages: headers, gate, sign-in, assets, errors. */
final class Guards {
  private final Page page;
  private final WebSettings settings;
  private final SignInPages signIn;
  private final PasswordPages password;
  private final Gate gate;
  private final Accounts accounts;

  Guards(WebSettings settings, Page page, Accounts accounts, InstantSource clock) {
    this.page = page;
    this.settings = settings;
    Throttle throttle = new Throttle(clock);
    this.signIn = new SignInPages(page, accounts, throttle, settings.idle());
    this.password = new PasswordPages(page, accounts, throttle, settings.idle());
    this.gate = new Gate(page, signIn);
    this.accounts = accounts;
  }

  void mount(RoutesConfig javalin) {
    javalin.before(new Headers(settings.secure())::set);
    javalin.before(this::recall);
    javalin.beforeMatched(gate::check);
    new ErrorPages(page).mount(javalin);
    Routes routes = new Routes(javalin);
    routes.get("/assets/<path>", Permission.ANYONE, page.assets()::serve);
    routes.get("/health", Permission.ANYONE, http -> http.json(Map.of("status", "up")));
    routes.get("/api/session", Permission.READ, this::tellSession);
    routes.post("/preferences", Permission.ANYONE, this::prefer);
    signIn.mount(routes);
    password.mount(routes);
  }

  /** Before any route, so that "not found" too is told to the person who is signed in. */
  private void recall(Context http) {
    if (!http.path().startsWith("/assets/") && !http.path().equals("/health")) {
      Session.recall(http, accounts);
    }
  }

  /** For programs: who is signed in, and the token that what they post must carry in its header. */
  private void tellSession(Context http) {
    Actor actor = Actor.of(http);
    http.json(
        Map.of(
            "name", actor.name(),
            "role", actor.role().word(),
            "tokenHeader", Gate.TOKEN_HEADER,
            "token", Session.token(http)));
  }

  private void prefer(Context http) {
    UnitsShown.named(http.formParam("units")).keep(http, settings.secure());
    page.go(http, LocalPath.orFirstPage(http.formParam("then")));
  }
}
