package loopwright.web;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.javalin.http.Context;
import jakarta.servlet.http.HttpSession;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Collections;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What one browser's visit carries: who is signed in, the form token, a message to show once. */
final class Session {
  private static final String ACTOR_ID = "actor";
  private static final String PASSWORD_VERSION = "password-version";
  private static final String TOKEN = "token";
  private static final String MESSAGE = "message";

  /** A stranger's session holds nothing but the token of the sign-in form. */
  private static final int STRANGERS_IDLE_SECONDS = 30 * 60;

  private static final SecureRandom RANDOM = new SecureRandom();

  private Session() {}

  /** Looks the person up anew, so that a closed account ends at once. */
  static void recall(Context http, Accounts accounts) {
    Optional<Actor> actor =
        text(http, ACTOR_ID).flatMap(accounts::find).filter(found -> sameVersion(http, found));
    http.attribute(ACTOR_ID, actor.orElse(null));
  }

  private static boolean sameVersion(Context http, Actor actor) {
    return Objects.equals(value(http, PASSWORD_VERSION), actor.passwordVersion());
  }

  /** Who was found for this request, or null. */
  static @Nullable Actor actor(Context http) {
    return http.attribute(ACTOR_ID);
  }

  /** Begins the person's session under a new id with nothing of the old one in it. */
  static void begin(Context http, Actor actor, int idleSeconds) {
    HttpSession session = http.req().getSession(true);
    Collections.list(session.getAttributeNames()).forEach(session::removeAttribute);
    http.req().changeSessionId();
    session.setMaxInactiveInterval(idleSeconds);
    session.setAttribute(ACTOR_ID, actor.id());
    session.setAttribute(PASSWORD_VERSION, actor.passwordVersion());
    http.attribute(ACTOR_ID, actor);
  }

  static void end(Context http) {
    HttpSession session = http.req().getSession(false);
    if (session != null) {
      session.invalidate();
    }
    http.attribute(ACTOR_ID, null);
  }

  /** The token that every form of this session carries; makes one, and a session, when needed. */
  static String token(Context http) {
    return text(http, TOKEN).orElseGet(() -> newToken(http));
  }

  private static String newToken(Context http) {
    byte[] bytes = new byte[24];
    RANDOM.nextBytes(bytes);
    String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    session(http).setAttribute(TOKEN, token);
    return token;
  }

  static boolean hasToken(Context http, @Nullable String given) {
    return given != null
        && text(http, TOKEN)
            .map(own -> MessageDigest.isEqual(own.getBytes(UTF_8), given.getBytes(UTF_8)))
            .orElse(false);
  }

  static void leave(Context http, String message) {
    session(http).setAttribute(MESSAGE, message);
  }

  /** The message left by the request before, once. */
  static @Nullable String message(Context http) {
    Optional<String> message = text(http, MESSAGE);
    message.ifPresent(shown -> session(http).removeAttribute(MESSAGE));
    return message.orElse(null);
  }

  private static HttpSession session(Context http) {
    HttpSession session = http.req().getSession(true);
    if (session.isNew()) {
      session.setMaxInactiveInterval(STRANGERS_IDLE_SECONDS);
    }
    return session;
  }

  private static Optional<String> text(Context http, String name) {
    return Optional.ofNullable((String) value(http, name));
  }

  private static @Nullable Object value(Context http, String name) {
    HttpSession session = http.req().getSession(false);
    return session == null ? null : session.getAttribute(name);
  }
}
