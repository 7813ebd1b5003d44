package loopwright.loop;

import java.time.Instant;
import java.time.ZoneId;
import loopwright.time.SiteMoment;

/**
 * Two claims of one part for one moment at two points: one serial was misread, and until somebody
 * decides nobody can say which.
 *
 * @param number of the record; 0 while it is new
 * @param at the moment that both claims name
 * @param standing where the part stays on record: the claim that was entered first
 * @param other the claim that was entered later; its slot is unknown meanwhile
 */
record Dispute(long number, Content.Part part, Instant at, Claim standing, Claim other) {

  /**
   * One of the two.
   *
   * @param zone of its site
   */
  record Claim(long point, String tag, Slot slot, ZoneId zone) {
    boolean isAt(long thisPoint, Slot thisSlot) {
      return point == thisPoint && slot == thisSlot;
    }
  }

  /** The claim at that point. */
  Claim claimAt(long point) {
    return standing.point() == point ? standing : other;
  }

  /** The claim that is not at that point. */
  Claim claimBeside(long point) {
    return standing.point() == point ? other : standing;
  }

  boolean claims(long point, Slot slot) {
    return standing.isAt(point, slot) || other.isAt(point, slot);
  }

  /** As a reader at that point is told, a clause without the part's name. */
  String seenFrom(long point) {
    return "was found here and at %s for one moment, %s at the site"
        .formatted(claimBeside(point).tag(), SiteMoment.shown(at, claimAt(point).zone()));
  }
}
