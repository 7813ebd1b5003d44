package loopwright.lengthlaw;

import java.util.List;
import loopwright.cause.LawLearning;
import loopwright.cause.LengthLaw;
import loopwright.db.Tx;
import loopwright.lengthlaw.LawStore.Kept;
import loopwright.loop.LawFacts;
import loopwright.matching.LearntLaws;
import loopwright.problem.Refused;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import org.jooq.DSLContext;

/** The length law of each family, as far as confirmed lengths have narrowed it. */
public final class LengthLaws implements LawFacts {
  private final LawStore store = new LawStore();
  private final FamilyBook families;

  public LengthLaws(FamilyBook families) {
    this.families = families;
  }

  /**
   * The law to reckon with.
   *
   * @param family its code; empty where none is known
   */
  public LengthLaw law(DSLContext sql, String family) {
    return families
        .named(sql, family)
        .map(known -> law(counting(sql, known)))
        .orElse(LengthLaw.unproved());
  }

  private static LengthLaw law(List<Kept> counting) {
    return learning(counting).learnt();
  }

  static LawLearning learning(List<Kept> counting) {
    return LawLearning.of(
        LengthLaw.unproved(), counting.stream().map(kept -> kept.taught().proved()).toList());
  }

  @Override
  public LearntLaws learnt(DSLContext sql) {
    return new LearntOnce(store.counting(sql));
  }

  /** On what it rests, a sentence. */
  public String words(DSLContext sql, String family) {
    int counting = families.named(sql, family).map(known -> counting(sql, known).size()).orElse(0);
    return counting == 0
        ? "The length law is common practice and simulation, no source."
        : "The length law of family %s was narrowed by %s confirmed lengths; before them it is common practice and simulation, no source."
            .formatted(family, counting);
  }

  private List<Kept> counting(DSLContext sql, Family family) {
    return of(sql, family).stream().filter(Kept::counts).toList();
  }

  /** All evidence of a family, what was withdrawn included. */
  List<Kept> of(DSLContext sql, Family family) {
    return store.ofFamily(sql, family.id().number());
  }

  void teach(Tx tx, Family family, Taught taught) {
    store.add(tx, family.id().number(), taught);
  }

  /**
   * @throws Refused if there is none in that family, or it doesn't count any more
   */
  void withdraw(Tx tx, Family family, long evidence, String words) {
    Kept kept =
        of(tx.sql(), family).stream()
            .filter(each -> each.id() == evidence)
            .findFirst()
            .orElseThrow(() -> new Refused(LawProblem.NO_SUCH));
    if (!kept.counts()) {
      throw new Refused(LawProblem.WITHDRAWN);
    }
    store.withdraw(tx, evidence, words);
  }
}
