package loopwright.scan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.exchange.Weights;
import loopwright.loop.PartFacts;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.RuleBook;
import loopwright.matching.Slot;
import loopwright.register.Component;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyPair;
import loopwright.register.PartRow;
import loopwright.register.PartSearch;
import loopwright.register.Register;
import loopwright.register.Stock;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * What to fetch from the shelves: each sort of part in stock is tried in the place of a scanned
 * one, or in the place that is still empty, and judged by the same rules.
 */
final class Fetching {
  private static final int MOST_SHOWN = 5;

  private final Register register;
  private final FamilyBook families;
  private final PartSearch search;
  private final PartFacts parts;
  private final RuleBook rules;
  private final Stock stock = new Stock();

  Fetching(
      Register register, FamilyBook families, PartSearch search, PartFacts parts, RuleBook rules) {
    this.register = register;
    this.families = families;
    this.search = search;
    this.parts = parts;
    this.rules = rules;
  }

  /**
   * A part on a shelf that makes the set whole.
   *
   * @param others how many more like it lie on shelves
   * @param insteadOf the scanned part that it replaces; null where something was missing
   */
  record Fetch(Component part, int others, @Nullable Component insteadOf) {}

  private record Trial(Stock.Alike alike, @Nullable Component insteadOf) {}

  /** The least work first; empty when nothing is wrong, or too much is missing to say. */
  List<Fetch> fetch(DSLContext sql, ScanCheck.Answer answer) {
    boolean oneMissing = answer.missing().size() == 1;
    if (answer.missing().size() > 1 || !oneMissing && !answer.blocked()) {
      return List.of();
    }
    List<Trial> trials = trials(sql, answer);
    List<Long> numbers = trials.stream().map(t -> t.alike.first().number()).distinct().toList();
    Map<Long, PartView> views = parts.parts(sql, numbers);
    List<Trial> good =
        trials.stream()
            .filter(trial -> makesWhole(answer, trial, views.get(trial.alike.first().number())))
            .limit(MOST_SHOWN)
            .toList();
    return fetched(sql, good);
  }

  private List<Fetch> fetched(DSLContext sql, List<Trial> good) {
    Map<Long, Component> found =
        register.components(sql, good.stream().map(t -> t.alike.first().number()).toList());
    List<Fetch> fetch = new ArrayList<>();
    for (Trial trial : good) {
      Component part = found.get(trial.alike.first().number());
      if (part != null) {
        fetch.add(new Fetch(part, trial.alike.howMany() - 1, trial.insteadOf));
      }
    }
    return fetch;
  }

  private boolean makesWhole(ScanCheck.Answer answer, Trial trial, @Nullable PartView in) {
    return in != null && rules.judge(with(answer, trial.insteadOf, in)).againstAssembly().isEmpty();
  }

  /** What the rules saw, with that part in the place of the other one or in the empty place. */
  private static LoopView with(ScanCheck.Answer answer, @Nullable Component out, PartView in) {
    LoopView was = answer.judged().view();
    Bench bench = answer.bench();
    Slot slot = Slot.of(in);
    List<Slot> path = new ArrayList<>(was.path());
    boolean first = out == null ? bench.probe() == null : out.equals(bench.probe());
    boolean last = out == null ? bench.driver() == null : out.equals(bench.driver());
    if (!first && !last) {
      path.set(out == null ? 0 : bench.path().indexOf(out), slot);
    }
    return new LoopView(
        was.tag(),
        first ? slot : was.probe(),
        path,
        last ? slot : was.driver(),
        was.families(),
        was.facts(),
        was.calibration(),
        was.barrier(),
        was.place(),
        was.alloys(),
        was.disputed());
  }

  private List<Trial> trials(DSLContext sql, ScanCheck.Answer answer) {
    return stock.alike(sql, concerned(sql, answer.bench())).stream()
        .filter(
            alike -> answer.bench().parts().stream().noneMatch(p -> p.id().equals(alike.first())))
        .flatMap(alike -> trials(answer, alike))
        .sorted(Comparator.comparingInt(trial -> Weights.USUAL.of(trial.alike.kind())))
        .toList();
  }

  private static Stream<Trial> trials(ScanCheck.Answer answer, Stock.Alike alike) {
    if (answer.missing().size() == 1) {
      return answer.missing().get(0).usual() == alike.kind()
          ? Stream.of(new Trial(alike, null))
          : Stream.of();
    }
    return answer.bench().parts().stream()
        .filter(out -> out.kind() == alike.kind())
        .map(out -> new Trial(alike, out));
  }

  /** Families of the parts and what the shop has entered as interchangeable with them. */
  private Set<String> concerned(DSLContext sql, Bench bench) {
    Set<String> codes =
        search.rows(sql, bench.parts()).stream()
            .map(PartRow::family)
            .filter(code -> !code.isEmpty())
            .collect(Collectors.toCollection(TreeSet::new));
    Map<Long, String> all = families.codes(sql);
    List<String> partners = new ArrayList<>();
    for (FamilyPair pair : families.pairs(sql)) {
      String first = all.getOrDefault(pair.first().number(), "");
      String second = all.getOrDefault(pair.second().number(), "");
      if (codes.contains(first) || codes.contains(second)) {
        partners.add(first);
        partners.add(second);
      }
    }
    codes.addAll(partners);
    return codes;
  }
}
