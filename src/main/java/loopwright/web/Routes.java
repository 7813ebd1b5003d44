package loopwright.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;

/** Where features hang their pages. A route can't be made without saying what it asks. */
public final class Routes {
  private final RoutesConfig javalin;

  Routes(RoutesConfig javalin) {
    this.javalin = javalin;
  }

  /** For looking only: a GET changes no record. */
  public Routes get(String path, Permission needs, Handler handler) {
    javalin.get(path, handler, needs);
    return this;
  }

  public Routes post(String path, Permission needs, Handler handler) {
    javalin.post(path, handler, needs);
    return this;
  }

  public Routes put(String path, Permission needs, Handler handler) {
    javalin.put(path, handler, needs);
    return this;
  }

  public Routes delete(String path, Permission needs, Handler handler) {
    javalin.delete(path, handler, needs);
    return this;
  }
}
