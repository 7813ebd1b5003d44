package loopwright.web;

import io.javalin.http.Context;
import java.util.Objects;

/** The person behind a request. */
public interface Actor {
  /** Never changes and is never given to anybody else; what the journal keeps. */
  String id();

  /** As it is written beside what they did. */
  String name();

  Role role();

  /** True while the password was given by somebody else: only the password page opens. */
  default boolean mustChangePassword() {
    return false;
  }

  /** Grows with each new password; a session begun under an older one is signed out. */
  default long passwordVersion() {
    return 0;
  }

  default boolean may(Permission permission) {
    return role().may(permission);
  }

  /**
   * Who is asking. Only for routes that need a permission other than {@link Permission#ANYONE}:
   * there somebody is always signed in.
   */
  static Actor of(Context http) {
    return Objects.requireNonNull(Session.actor(http), "nobody is signed in on this route");
  }
}
