package loopwright.register;

/**
 * Parts that their maker declares interchangeable.
 *
 * @param version grows with each change
 */
public record Family(FamilyId id, FamilyDetails details, int version) {
  public String code() {
    return details.code();
  }

  public String name() {
    return details.name();
  }
}
