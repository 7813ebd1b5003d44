package loopwright.register;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.InterchangeablePair;
import loopwright.matching.NominalLine;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** The families that parts belong to, and which of them are interchangeable. */
public final class FamilyBook {
  private final FamilyStore store = new FamilyStore();
  private final FamilyWatch watch;

  /** For reading; nobody is told of changes. */
  public FamilyBook() {
    this(FamilyWatch.NOBODY);
  }

  /**
   * @param watch told of each family that is added, changed or paired
   */
  public FamilyBook(FamilyWatch watch) {
    this.watch = watch;
  }

  /** All of them, by code. */
  public List<Family> all(DSLContext sql) {
    return store.all(sql);
  }

  public Optional<Family> family(DSLContext sql, FamilyId id) {
    return store.family(sql, id);
  }

  /** The family of that code, in any case. */
  public Optional<Family> named(DSLContext sql, String code) {
    return store.named(sql, code);
  }

  /** Codes by the families' numbers. */
  public Map<Long, String> codes(DSLContext sql) {
    return store.codes(sql);
  }

  public List<FamilyPair> pairs(DSLContext sql) {
    return store.pairs(sql);
  }

  /**
   * @throws Refused {@link RegisterProblem#FAMILY_TAKEN} if the code stands for another family
   */
  public FamilyId add(Tx tx, FamilyDetails details) {
    refuseTaken(tx.sql(), details.code(), Optional.empty());
    FamilyId added = store.insert(tx, details);
    watch.familyChanged(tx, added);
    return added;
  }

  /**
   * @param version that the changer saw
   */
  public void change(Tx tx, FamilyId id, int version, FamilyDetails details) {
    refuseTaken(tx.sql(), details.code(), Optional.of(id));
    store.update(tx, id, version, details);
    watch.familyChanged(tx, id);
  }

  /**
   * Enters two families as interchangeable.
   *
   * @param saidBy who vouches for it
   */
  public void pair(Tx tx, FamilyId one, FamilyId other, String saidBy) {
    if (one.equals(other)) {
      throw new Refused(RegisterProblem.SAME_FAMILY);
    }
    FamilyId lower = one.number() < other.number() ? one : other;
    FamilyId higher = lower.equals(one) ? other : one;
    String first = needed(tx.sql(), lower).code();
    String second = needed(tx.sql(), higher).code();
    if (pairs(tx.sql()).stream()
        .anyMatch(pair -> pair.first().equals(lower) && pair.second().equals(higher))) {
      throw new Refused(RegisterProblem.PAIR_KNOWN, first, second);
    }
    store.insertPair(tx, lower, higher, Text.needed("who says so", saidBy, 200));
    watch.familyChanged(tx, lower);
    watch.familyChanged(tx, higher);
  }

  /** Takes a pair out of the list; the journal keeps it. */
  public void unpair(Tx tx, FamilyPair pair) {
    store.deletePair(tx, pair.id());
    watch.familyChanged(tx, pair.first());
    watch.familyChanged(tx, pair.second());
  }

  /** All families and pairs as the rules see them. */
  public Families asJudged(DSLContext sql) {
    Map<Long, String> codes = codes(sql);
    List<InterchangeablePair> pairs =
        pairs(sql).stream()
            .map(
                pair ->
                    new InterchangeablePair(
                        code(codes, pair.first()), code(codes, pair.second()), pair.saidBy()))
            .toList();
    return Families.of(all(sql).stream().map(FamilyBook::view).toList(), pairs);
  }

  private static String code(Map<Long, String> codes, FamilyId id) {
    return Objects.requireNonNull(codes.get(id.number()));
  }

  private static FamilyView view(Family family) {
    FamilyDetails details = family.details();
    return FamilyView.of(details.code())
        .leadLengths(lengths(details, PartKind.PROBE))
        .cableLengths(lengths(details, PartKind.CABLE))
        .systemLengths(lengths(details, PartKind.DRIVER))
        .cableUse(details.cableUse())
        .forbidsTwoCables(!details.twoCablesAllowed())
        .lengthTolerance(details.lengthTolerance())
        .scaleFactor(details.scaleFactor())
        .tipMillimetres(details.tipMillimetres())
        .output(details.output())
        .line(line(details))
        .targetAlloy(details.targetAlloy())
        .outputVolts(details.outputVolts())
        .selectableSystemLength(details.selectableSystemLength())
        .build();
  }

  /** Null unless range and start voltage are known. */
  private static @Nullable NominalLine line(FamilyDetails details) {
    Double from = details.range().fromMicrometres();
    Double to = details.range().toMicrometres();
    BigDecimal start = details.startVolts();
    return from == null || to == null || start == null
        ? null
        : new NominalLine(
            from, to, start.doubleValue(), details.scaleFactor().millivoltsPerMicrometre());
  }

  private static List<Length> lengths(FamilyDetails details, PartKind part) {
    return details.lengthsOf(part).stream().map(OfferedLength::length).toList();
  }

  private Family needed(DSLContext sql, FamilyId id) {
    return family(sql, id)
        .orElseThrow(() -> new Refused(RegisterProblem.UNKNOWN_FAMILY, id.number()));
  }

  private void refuseTaken(DSLContext sql, String code, Optional<FamilyId> self) {
    named(sql, code)
        .filter(other -> !Optional.of(other.id()).equals(self))
        .ifPresent(
            other -> {
              throw new Refused(RegisterProblem.FAMILY_TAKEN, other.code());
            });
  }
}
