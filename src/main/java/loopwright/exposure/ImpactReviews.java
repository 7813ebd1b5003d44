package loopwright.exposure;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.calibration.FoundOut;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/**
 * Opens an impact review for every as-found out of tolerance, in the same change, and at an
 * engineer's word for every record that a standard's error turns; closes one by the word of a named
 * person; nothing else closes it, not even a good curve afterwards.
 */
public final class ImpactReviews implements FoundOut {
  private final ImpactStore store = new ImpactStore();

  @Override
  public void outOfTolerance(Tx tx, long calibration, long point) {
    store.open(tx, calibration, point);
  }

  /**
   * Opens a review for every record that the error of a standard turns; one that it opened before
   * stays as it is.
   *
   * @return how many are new
   */
  public int open(Tx tx, long standard, List<SecondThought> thoughts) {
    store.hold(tx, thoughts.stream().map(SecondThought::point).toList());
    Set<Long> before = store.opened(tx.sql(), standard);
    List<SecondThought> fresh =
        thoughts.stream().filter(each -> !before.contains(each.calibration())).toList();
    fresh.forEach(each -> store.open(tx, standard, each));
    return fresh.size();
  }

  /**
   * @param told what the page said of set points when it was signed
   * @throws Refused {@link ImpactProblem#SIGNED}
   */
  void sign(Tx tx, long id, long person, ImpactOutcome outcome, String words, List<String> told) {
    ImpactReview review = one(tx.sql(), id);
    if (review.signOff().isPresent()) {
      throw new Refused(ImpactProblem.SIGNED, review.number(), review.signOff().get().who());
    }
    store.sign(tx, id, person, outcome, words, told);
  }

  ImpactReview one(DSLContext sql, long id) {
    return store.one(sql, id).orElseThrow(() -> new Refused(ImpactProblem.NO_SUCH, "I-" + id));
  }

  Optional<ImpactReview> ofCalibration(DSLContext sql, long calibration) {
    return store.ofCalibration(sql, calibration);
  }

  /** Newest first. */
  List<ImpactReview> before(DSLContext sql, long id, boolean onlyOpen, int most) {
    return store.before(sql, id, onlyOpen, most);
  }
}
