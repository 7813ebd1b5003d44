package loopwright.loop;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.matching.Families;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.time.Viewpoint;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What the register knows of parts and families, as the rules see it. */
public interface PartFacts {

  /** Every known family and interchangeable pair. */
  Families families(DSLContext sql);

  /**
   * The parts with these numbers as believed now.
   *
   * @return by number; one that doesn't exist is not in it
   */
  Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers);

  /**
   * The same as believed of that moment, as known then. Before the first thing recorded of a part,
   * that first record counts. Names are today's.
   *
   * @return by number; one that nobody knew of is not in it
   */
  Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint);

  /**
   * Since when parts have another effective length than before, or another setting: re-terminated,
   * shortened, set anew. A length that was merely recorded wrongly and put right is no such moment.
   *
   * @return by number, moments up to the viewpoint's; one that never changed is not in it
   */
  Map<Long, List<Instant>> lengthChanges(
      DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint);

  /** Since when something is on record of the part. */
  Instant knownFrom(DSLContext sql, long number);

  /** Told whenever parts came or went, so that their state follows. */
  void placementsChanged(Tx tx, Collection<Long> numbers);

  /** Since a moment a part that was taken out lies on a shelf, or in quarantine. */
  void putAway(Tx tx, PutAway how, Instant from);

  /** Parts that somebody may mean by what they typed: serial or shop number, any case. */
  List<Choice> named(DSLContext sql, String text);

  /**
   * Parts to propose while somebody types.
   *
   * @param place in the chain that they must fit into
   * @param length wanted; null for any
   */
  List<Choice> proposals(
      DSLContext sql, PartKind.Place place, String text, @Nullable Length length, int most);

  /**
   * A part to choose.
   *
   * @param about maker, model, length, where it lies, in words
   * @param channels of a driver box; 1 for everything else
   */
  record Choice(long number, String label, PartKind kind, String about, int channels) {}
}
