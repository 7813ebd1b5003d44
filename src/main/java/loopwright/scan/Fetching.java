package loopwright.scan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.exchange.Weights;
import loopwright.register.Component;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyPair;
import loopwright.register.PartRow;
import loopwright.register.PartSearch;
import loopwright.register.Register;
import loopwright.register.Stock;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * What to fetch from the shelves: each kind of stock part is tried in the place of a scanned one,
 * or in the place that is still empty, and judged by the same rules.
 */
final class Fetching {
  /** Kinds of stock parts that are tried; the rules take a few milliseconds each. */
  private static final int MOST_TRIALS = 30;

  private static final int MOST_SHOWN = 5;

  private final ScanCheck check;
  private final Register register;
  private final FamilyBook families;
  private final PartSearch search;
  private final Stock stock = new Stock();

  Fetching(ScanCheck check, Register register, FamilyBook families, PartSearch search) {
    this.check = check;
    this.register = register;
    this.families = families;
    this.search = search;
  }

  /**
   * A part on a shelf that makes the set whole.
   *
   * @param others how many more like it lie on shelves
   * @param insteadOf the scanned part that it replaces; null where something was missing
   */
  record Fetch(Stock.Lying part, int others, @Nullable Component insteadOf) {}

  private record Like(String kind, String family, Length length) {
    static Like of(Stock.Lying part) {
      return new Like(part.kind().word(), part.family(), part.length().length());
    }
  }

  private record Trial(Fetch fetch, Bench bench) {}

  /** The least work first; empty when nothing is wrong, or too much is missing to say. */
  List<Fetch> fetch(DSLContext sql, ScanCheck.Answer answer) {
    boolean oneMissing = answer.missing().size() == 1;
    if (answer.missing().size() > 1 || !oneMissing && !answer.blocked()) {
      return List.of();
    }
    List<Fetch> found = new ArrayList<>();
    for (Trial trial : trials(sql, answer)) {
      if (check.judge(sql, answer, trial.bench).judgement().againstAssembly().isEmpty()) {
        found.add(trial.fetch);
      }
      if (found.size() == MOST_SHOWN) {
        break;
      }
    }
    return found;
  }

  private List<Trial> trials(DSLContext sql, ScanCheck.Answer answer) {
    Map<Like, List<Stock.Lying>> kinds =
        stock.lying(sql, concerned(sql, answer.bench())).stream()
            .filter(lying -> !holds(answer.bench(), lying))
            .sorted(Comparator.comparing(lying -> !lying.length().evidence().proves()))
            .collect(Collectors.groupingBy(Like::of, LinkedHashMap::new, Collectors.toList()));
    return kinds.values().stream()
        .flatMap(alike -> trials(sql, answer, alike))
        .sorted(Comparator.comparingInt(t -> Weights.USUAL.of(t.fetch.part.kind())))
        .limit(MOST_TRIALS)
        .toList();
  }

  private static boolean holds(Bench bench, Stock.Lying lying) {
    return bench.parts().stream().anyMatch(part -> part.id().equals(lying.id()));
  }

  private Stream<Trial> trials(DSLContext sql, ScanCheck.Answer answer, List<Stock.Lying> alike) {
    Stock.Lying lying = alike.get(0);
    Optional<Component> found = register.component(sql, lying.id());
    if (found.isEmpty()) {
      return Stream.of();
    }
    Component part = found.get();
    if (answer.missing().size() == 1) {
      return answer.missing().get(0).usual() == part.kind()
          ? Stream.of(
              new Trial(new Fetch(lying, alike.size() - 1, null), answer.bench().with(part)))
          : Stream.of();
    }
    return answer.bench().parts().stream()
        .filter(out -> out.kind() == part.kind())
        .map(
            out ->
                new Trial(
                    new Fetch(lying, alike.size() - 1, out), answer.bench().exchanged(out, part)));
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
