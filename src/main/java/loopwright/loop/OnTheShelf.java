package loopwright.loop;

import java.util.ArrayList;
import java.util.List;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.matching.Verdict;
import loopwright.units.Length;
import org.jooq.DSLContext;

/** What lies in stock that would put a loop right. */
final class OnTheShelf {
  /** So many parts of one length are looked at. */
  private static final int LOOKED_AT = 12;

  /** So many of one kind are named. */
  private static final int EACH = 4;

  private OnTheShelf() {}

  record Instead(long id, String label, String about) {}

  /** Parts on the shelf that would bring the loop into balance, one exchange each. */
  static List<Instead> instead(DSLContext sql, PartFacts parts, Judging.Judged judged) {
    Length balance = judged.judgement().balance();
    if (balance == null || balance.isZero() || judged.judgement().verdict() != Verdict.REFUSED) {
      return List.of();
    }
    List<Instead> found = new ArrayList<>();
    for (PartView part : judged.view().parts()) {
      if (part.length() == null) {
        continue;
      }
      boolean tuned = TypedPart.place(Slot.DRIVER) == part.kind().place();
      Length wanted =
          tuned ? part.length().length().plus(balance) : part.length().length().minus(balance);
      parts.proposals(sql, part.kind().place(), "", wanted, LOOKED_AT).stream()
          .filter(choice -> choice.kind() == part.kind())
          .filter(choice -> suits(sql, parts, choice, part, wanted))
          .limit(EACH)
          .forEach(
              c ->
                  found.add(new Instead(c.number(), c.label(), c.kind().word() + " " + c.about())));
    }
    return found;
  }

  private static boolean suits(
      DSLContext sql, PartFacts parts, PartFacts.Choice choice, PartView part, Length wanted) {
    PartView view = parts.parts(sql, List.of(choice.number())).get(choice.number());
    return view != null
        && view.state() == PartState.IN_STOCK
        && view.length() != null
        && view.length().length().equals(wanted)
        && part.family() != null
        && part.family().equals(view.family());
  }
}
