package loopwright.register;

/** Number of a family. */
public record FamilyId(long number) {}
