package loopwright.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import loopwright.problem.Refused;

/** How much a request may carry: files up to 60 MB, everything else up to 2 MB. */
final class SizeLimit {
  static final long FILES = 60L << 20;
  static final long OTHERS = 2L << 20;

  /** A browser shows our answer only after it could send all; beyond this we hang up. */
  private static final long MOST_READ_AWAY = 512L << 20;

  private SizeLimit() {}

  static void check(Context http) {
    if (http.req().getContentLengthLong() > limit(http)) {
      readAway(http);
      throw new Refused(WebProblem.TOO_LARGE, megabytes(http));
    }
  }

  static long megabytes(Context http) {
    return limit(http) >> 20;
  }

  private static long limit(Context http) {
    return http.isMultipartFormData() ? FILES : OTHERS;
  }

  /** Reads what is still to come and forgets it; a stranger is not listened to for as long. */
  static void readAway(Context http) {
    long most = Session.actor(http) == null ? FILES : MOST_READ_AWAY;
    if (http.req().getContentLengthLong() > most) {
      return;
    }
    try (InputStream body = http.req().getInputStream()) {
      body.transferTo(OutputStream.nullOutputStream());
    } catch (IOException gone) {
      // the browser hung up first: nobody is left to tell
      return;
    }
  }
}
