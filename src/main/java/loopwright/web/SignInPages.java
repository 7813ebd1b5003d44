package loopwright.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Signing in and out. */
final class SignInPages implements Pages {
  static final String PATH = "/sign-in";

  private final Page page;
  private final Accounts accounts;
  private final Throttle throttle;
  private final int idleSeconds;

  SignInPages(Page page, Accounts accounts, Throttle throttle, Duration idle) {
    this.page = page;
    this.accounts = accounts;
    this.throttle = throttle;
    this.idleSeconds = Math.toIntExact(idle.toSeconds());
  }

  @Override
  public void mount(Routes routes) {
    routes.get(PATH, Permission.ANYONE, this::ask);
    routes.post(PATH, Permission.ANYONE, this::signIn);
    routes.post("/sign-out", Permission.ANYONE, this::signOut);
  }

  /** Sends the visitor to sign in and back to where they wanted to go. */
  void redirect(Context http) {
    String then = URLEncoder.encode(Page.pathWithQuery(http), StandardCharsets.UTF_8);
    http.redirect(PATH + "?then=" + then, HttpStatus.SEE_OTHER);
  }

  private void ask(Context http) {
    show(http, 200, Form.blank(), thenOf(http.queryParam("then")), Optional.empty());
  }

  /** A form came from somebody signed out meanwhile: keeps it and asks who they are. */
  void askForHeld(Context http, Optional<HeldForm> held) {
    Form form = Form.blank();
    form.complain(
        held.isPresent()
            ? "You were signed out meanwhile, and nothing is stored yet. What you typed is kept:"
                + " sign in, look it over and send it."
            : "You were signed out meanwhile, and nothing was stored.");
    if (held.isEmpty() || held.get().lostFile()) {
      form.complain("A file can't be kept: sign in and choose it again.");
    }
    show(http, 401, form, LocalPath.FIRST_PAGE, held);
  }

  /** The sign-in page itself had been open for too long. */
  void askAgain(Context http) {
    Form form = typedLogin(http);
    form.complain("This page had been open for too long. Give your password again.");
    show(http, 403, form, thenOf(http.formParam("then")), HeldForm.carried(http));
  }

  private void signIn(Context http) {
    String login = Form.from(http).typed("login").strip();
    Duration wait = throttle.take(login, http.ip());
    if (!wait.isZero()) {
      askToWait(http, wait);
      return;
    }
    accounts
        .authenticate(login, Form.from(http).typed("password"))
        .ifPresentOrElse(actor -> welcome(http, login, actor), () -> refuse(http));
  }

  private void welcome(Context http, String login, Actor actor) {
    throttle.forget(login, http.ip());
    Optional<HeldForm> held = HeldForm.carried(http);
    String then = thenOf(http.formParam("then"));
    Session.begin(http, actor, idleSeconds);
    if (held.isPresent()) {
      page.show(http, 200, "web/held", Map.of("held", held.get()));
    } else {
      page.go(http, then);
    }
  }

  private void refuse(Context http) {
    Form form = typedLogin(http);
    form.complain(
        "This login and this password don't go together. Check both; capitals count in the"
            + " password.");
    show(http, 422, form, thenOf(http.formParam("then")), HeldForm.carried(http));
  }

  private void askToWait(Context http, Duration wait) {
    long seconds = wait.plusMillis(999).toSeconds();
    Form form = typedLogin(http);
    form.complain(
        "Too many wrong passwords for this login. Wait "
            + seconds
            + " seconds, then try again. If you don't know the password, ask your administrator"
            + " for a new one.");
    http.header("Retry-After", String.valueOf(seconds));
    show(http, 429, form, thenOf(http.formParam("then")), HeldForm.carried(http));
  }

  private void show(Context http, int status, Form form, String then, Optional<HeldForm> held) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("then", then);
    model.put("held", held.map(HeldForm::marked).orElse(List.of()));
    model.put("left", http.queryParam("left") != null);
    page.show(http, status, "web/sign-in", model);
  }

  private static Form typedLogin(Context http) {
    return Form.of(Map.of("login", Form.from(http).typed("login")));
  }

  private static String thenOf(@Nullable String then) {
    return LocalPath.orFirstPage(then);
  }

  private void signOut(Context http) {
    Session.end(http);
    page.go(http, PATH + "?left");
  }
}
