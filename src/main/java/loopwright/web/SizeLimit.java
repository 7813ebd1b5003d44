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
    long length = http.req().getContentLengthLong();
    if (length > limit(http)) {
      readAway(http, length);
      throw new Refused(WebProblem.TOO_LARGE, megabytes(http));
    }
  }

  static long megabytes(Context http) {
    return limit(http) >> 20;
  }

  private static long limit(Context http) {
    return http.isMultipartFormData() ? FILES : OTHERS;
  }

  private static void readAway(Context http, long length) {
    if (length > MOST_READ_AWAY) {
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
