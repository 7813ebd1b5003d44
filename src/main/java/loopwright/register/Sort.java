package loopwright.register;

import loopwright.matching.PartKind;
import loopwright.units.Length;

/**
 * Parts that only their serials tell apart: any of them may stand in for another.
 *
 * @param length nominal; for a driver the system length it is tuned for
 */
public record Sort(FamilyId family, PartKind kind, Length length) {}
