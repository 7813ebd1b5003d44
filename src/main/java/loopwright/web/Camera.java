package loopwright.web;

import io.javalin.http.Context;

/** Pages may not use a camera unless they say so. */
public final class Camera {
  private Camera() {}

  /** Lets the script of this page ask for the camera; the browser still asks the person. */
  public static void allow(Context http) {
    http.header("Permissions-Policy", "camera=(self), geolocation=(), microphone=()");
  }
}
