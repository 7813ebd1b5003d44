package loopwright.web;

import io.javalin.security.RouteRole;

/** What a route asks of the person who comes to it; each route names exactly one. */
public enum Permission implements RouteRole {
  /** No sign-in asked: the sign-in page itself, style sheets, the health check. */
  ANYONE("look"),
  /**
   * No session at all: the route asks for a token of its own in a header and looks at no cookie, so
   * no page elsewhere can make a browser come to it in somebody's name.
   */
  DEVICE("come with a device's own token"),
  /** See every record. */
  READ("read the records"),
  /** Record surveys, assemblies and calibrations. */
  RECORD("record work"),
  /** Bring in files and hand out work for an outage. */
  PLAN("import files and plan outages"),
  /** Decide on families, tolerance profiles, interchangeable pairs and concessions. */
  DECIDE("decide on families, profiles and concessions"),
  /** Keep accounts and backups. */
  ADMINISTER("keep accounts and backups");

  private final String inWords;

  Permission(String inWords) {
    this.inWords = inWords;
  }

  /** Completes "the right to …". */
  String inWords() {
    return inWords;
  }
}
