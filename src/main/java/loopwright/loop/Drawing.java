package loopwright.loop;

import loopwright.web.UnitsShown;

/** Draws a judged loop to length. */
final class Drawing {
  private Drawing() {}

  static String of(Judging.Judged judged, UnitsShown units) {
    return "";
  }
}
