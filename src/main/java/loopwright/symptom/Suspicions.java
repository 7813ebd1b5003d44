package loopwright.symptom;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.cause.CauseProblem;
import loopwright.cause.RankedCause;
import loopwright.db.Tx;
import loopwright.outage.Suggestion;
import loopwright.outage.SuggestionSource;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jooq.DSLContext;

/** Keeps what is suspected of loops until somebody settles it. */
public final class Suspicions implements SuggestionSource {
  private final SuspicionStore store = new SuspicionStore();

  /**
   * Keeps one.
   *
   * @param asked what was typed, as in the address of the page
   * @throws Refused if the same is suspected of that loop already
   */
  void keep(Tx tx, long point, RankedCause cause, String asked, String note) {
    String words = Text.kept("the cause", cause.inWords(), 400);
    standing(tx.sql(), List.of(point)).stream()
        .filter(one -> one.cause().equals(words))
        .findFirst()
        .ifPresent(
            one -> {
              throw new Refused(CauseProblem.SUSPECTED_BEFORE, one.tag(), words);
            });
    int percent = (int) Math.round(cause.probability() * 100);
    store.add(tx, point, words, percent, Text.kept("the question", asked, 2000), note);
  }

  /**
   * Takes over a suspicion that was kept elsewhere until now.
   *
   * @param asked what was typed, as in the address of the page
   */
  public void enter(Tx tx, long point, String cause, int percent, String asked, String note) {
    store.add(tx, point, cause, percent, asked, note);
  }

  /**
   * Settles one: it was put right, or it was wrong.
   *
   * @throws Refused if it is settled already, or is another loop's
   */
  void withdraw(Tx tx, long point, long id, String reason) {
    if (standing(tx.sql(), List.of(point)).stream().noneMatch(one -> one.id() == id)) {
      throw new Refused(CauseProblem.NOT_SUSPECTED);
    }
    store.withdraw(tx, id, reason);
  }

  /** Those of these loops that nobody settled, newest first. */
  List<Suspicion> standing(DSLContext sql, Collection<Long> points) {
    return store.standing(sql, points);
  }

  @Override
  public Map<Long, List<Suggestion.Reason>> of(
      DSLContext sql, Collection<Long> points, LocalDate until) {
    Map<Long, List<Suggestion.Reason>> reasons = new HashMap<>();
    for (Suspicion one : standing(sql, points)) {
      reasons
          .computeIfAbsent(one.point(), any -> new ArrayList<>())
          .add(
              new Suggestion.Reason(
                  Suggestion.Kind.SUSPECTED,
                  "Suspected by %s: %s".formatted(one.who(), one.inWords()),
                  one.href()));
    }
    return reasons;
  }
}
