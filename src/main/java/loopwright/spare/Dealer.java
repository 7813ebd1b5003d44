package loopwright.spare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import loopwright.exchange.Allocation;
import org.jooq.DSLContext;

/**
 * Deals the stock out to all wants, as {@link Allocation} does it: most wants first, then those
 * that go before, then what is put aside stays where it is, then the least work. Lengths make the
 * options; every part that is dealt is proved by all rules, and what they refuse is dealt anew
 * without it. So nothing better is overlooked, and few pairs are proved.
 */
final class Dealer {
  /** More than the work of any move: taking another part than the one put aside. */
  private static final int ANOTHER_PART = 20;

  private final DSLContext sql;
  private final Proof proof;
  private final List<Want> wants;
  private final Map<Pair, Proof.Said> said = new HashMap<>();
  private List<List<Want.Option>> options = List.of();

  private record Pair(int want, long part) {}

  Dealer(DSLContext sql, Proof proof, List<Want> inOrder) {
    this.sql = sql;
    this.proof = proof;
    this.wants = List.copyOf(inOrder);
  }

  Dealing deal(LeftOut leftOut) {
    Allocation dealt = allocate();
    while (provedAnew(dealt)) {
      dealt = allocate();
    }
    List<Dealing.Served> served = new ArrayList<>();
    List<Dealing.Left> left = new ArrayList<>();
    for (int i = 0; i < wants.size(); i++) {
      OptionalLong part = dealt.partOf(i);
      if (part.isPresent()) {
        served.add(
            new Dealing.Served(
                wants.get(i), option(i, part.getAsLong()), said(i, part.getAsLong()).verdict()));
      } else {
        left.add(new Dealing.Left(wants.get(i), leftOut.why(this, dealt, i)));
      }
    }
    return new Dealing(served, left);
  }

  private Allocation allocate() {
    List<List<Want.Option>> now = new ArrayList<>();
    List<Allocation.Wish> wishes = new ArrayList<>();
    for (int i = 0; i < wants.size(); i++) {
      Want want = wants.get(i);
      List<Want.Option> some = someOf(i);
      now.add(some);
      wishes.add(
          new Allocation.Wish(
              some.stream()
                  .map(
                      option ->
                          new Allocation.Choice(
                              option.part(),
                              option.work() + (want.holds(option.part()) ? 0 : ANOTHER_PART)))
                  .toList()));
    }
    options = now;
    return Allocation.of(wishes);
  }

  /**
   * The options that are not refused; of each sort no more than there are wants. That is enough:
   * whoever gets a later one could as well have one of the first, of which the others can't have
   * taken all. What somebody has put aside counts beside them.
   */
  private List<Want.Option> someOf(int want) {
    Map<String, Integer> ofSort = new HashMap<>();
    Set<Long> heldBySomebody = held();
    List<Want.Option> some = new ArrayList<>();
    for (Want.Option option : wants.get(want).options()) {
      Proof.Said known = said.get(new Pair(want, option.part()));
      if (known != null && !known.matches()) {
        continue;
      }
      if (heldBySomebody.contains(option.part())
          || ofSort.merge(option.sort(), 1, Integer::sum) <= wants.size()) {
        some.add(option);
      }
    }
    return some;
  }

  private Set<Long> held() {
    Set<Long> held = new HashSet<>();
    wants.forEach(
        want -> {
          Held one = want.held();
          if (one != null) {
            held.add(one.component());
          }
        });
    return held;
  }

  private boolean provedAnew(Allocation dealt) {
    boolean refused = false;
    for (int i = 0; i < wants.size(); i++) {
      OptionalLong part = dealt.partOf(i);
      if (part.isPresent() && !said(i, part.getAsLong()).matches()) {
        refused = true;
      }
    }
    return refused;
  }

  private Proof.Said said(int want, long part) {
    return said.computeIfAbsent(
        new Pair(want, part),
        pair ->
            proof.with(sql, wants.get(pair.want()).loop(), option(pair.want(), part).slot(), part));
  }

  private Want.Option option(int want, long part) {
    return wants.get(want).options().stream()
        .filter(option -> option.part() == part)
        .findFirst()
        .orElseThrow();
  }

  List<Want> wants() {
    return wants;
  }

  /** Options that the rules left to that want. */
  List<Want.Option> optionsOf(int want) {
    return options.get(want);
  }

  /** Parts whose lengths would do but that the rules refuse, with what they say. */
  Map<String, String> refusedBy(int want) {
    Map<String, String> refused = new LinkedHashMap<>();
    for (Want.Option option : wants.get(want).options()) {
      Proof.Said known = said.get(new Pair(want, option.part()));
      if (known != null && !known.matches()) {
        refused.put(option.label(), Objects.requireNonNull(known).against());
      }
    }
    return refused;
  }
}
