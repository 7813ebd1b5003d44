package loopwright.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import org.eclipse.jetty.http.BadMessageException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a person, or a program under /api, is told when a request is not served. */
final class ErrorPages {
  private static final Logger LOG = LoggerFactory.getLogger(ErrorPages.class);
  private static final int UNPROCESSABLE = 422;

  private final Page page;

  ErrorPages(Page page) {
    this.page = page;
  }

  void mount(RoutesConfig javalin) {
    javalin.exception(Refused.class, this::refused);
    javalin.exception(HttpResponseException.class, this::answered);
    javalin.exception(Exception.class, this::failed);
  }

  private void refused(Refused refused, Context http) {
    Problem problem = refused.problem();
    int status = problem instanceof WebProblem ours ? ours.status() : UNPROCESSABLE;
    tell(http, status, problem.code(), String.valueOf(refused.getMessage()));
  }

  private void answered(HttpResponseException answer, Context http) {
    switch (answer.getStatus()) {
      case 404 -> tell(http, WebProblem.NOT_FOUND);
      case 405 -> tell(http, WebProblem.NO_SUCH_METHOD);
      case 413 -> tell(http, WebProblem.TOO_LARGE, SizeLimit.megabytes(http));
      case 400 -> tell(http, WebProblem.UNREADABLE);
      default -> tell(http, answer.getStatus(), "W-199", String.valueOf(answer.getMessage()));
    }
  }

  private void failed(Exception failure, Context http) {
    if (causes(failure).anyMatch(BadMessageException.class::isInstance)) {
      tellUnreadable(failure, http);
    } else {
      tellIncident(failure, http);
    }
  }

  /** An upload that was cut off, or grew past the limit without having told its length. */
  private void tellUnreadable(Exception failure, Context http) {
    if (causes(failure).anyMatch(ErrorPages::saysTooLong)) {
      tell(http, WebProblem.TOO_LARGE, SizeLimit.megabytes(http));
    } else {
      tell(http, WebProblem.UNREADABLE);
    }
  }

  private static boolean saysTooLong(Throwable cause) {
    return cause instanceof IllegalStateException
        && String.valueOf(cause.getMessage()).contains("max length exceeded");
  }

  private static Stream<Throwable> causes(Throwable failure) {
    return Stream.iterate(failure, Objects::nonNull, Throwable::getCause).limit(10);
  }

  private void tellIncident(Exception failure, Context http) {
    String incident = UUID.randomUUID().toString().substring(0, 8);
    LOG.error("incident {}: {} {}", incident, http.method(), http.path(), failure);
    try {
      tell(http, WebProblem.FAILED, incident);
    } catch (RuntimeException alsoBroken) {
      LOG.error("incident {}: the error page failed too", incident, alsoBroken);
      http.status(WebProblem.FAILED.status())
          .contentType("text/plain; charset=utf-8")
          .result(Refused.say(WebProblem.FAILED, incident));
    }
  }

  private void tell(Context http, WebProblem problem, Object... parts) {
    tell(http, problem.status(), problem.code(), Refused.say(problem, parts));
  }

  private void tell(Context http, int status, String code, String sentence) {
    if (wantsData(http)) {
      http.status(status).json(Map.of("code", code, "message", sentence));
      return;
    }
    Map<String, Object> model = new HashMap<>();
    model.put("status", status);
    model.put("heading", heading(status));
    model.put("code", code);
    model.put("sentence", sentence);
    model.put("held", typed(http, status).orElse(null));
    if (isScript(http)) {
      http.header("HX-Retarget", "#notice").header("HX-Reswap", "innerHTML");
      page.part(http, status, "web/error", "notice", model);
    } else {
      page.show(http, status, "web/error", model);
    }
  }

  /** What was typed into a form that a feature could not take: shown, so that it isn't lost. */
  private static Optional<HeldForm> typed(Context http, int status) {
    boolean couldBeSentAgain = status == 409 || status == UNPROCESSABLE || status == 500;
    return couldBeSentAgain && Session.actor(http) != null ? HeldForm.sent(http) : Optional.empty();
  }

  static boolean wantsData(Context http) {
    return http.path().startsWith("/api/");
  }

  /** A part of a page is being asked for by the script on it. */
  static boolean isScript(Context http) {
    return "true".equals(http.header("HX-Request"));
  }

  private static String heading(int status) {
    return switch (status) {
      case 401 -> "Not signed in";
      case 403 -> "Not allowed";
      case 404 -> "Not found";
      case 405 -> "Not possible here";
      case 409 -> "Changed meanwhile";
      case 413 -> "Too large";
      case 422 -> "Refused";
      case 500 -> "Something went wrong";
      default -> "Not served";
    };
  }
}
