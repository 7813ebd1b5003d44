package loopwright.register;

/**
 * Two families that the shop holds to be interchangeable.
 *
 * @param saidBy who vouches for it
 */
public record FamilyPair(long id, FamilyId first, FamilyId second, String saidBy) {}
