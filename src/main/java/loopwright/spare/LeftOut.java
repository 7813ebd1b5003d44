package loopwright.spare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.exchange.Allocation;
import loopwright.exchange.Suiting;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.Stock;
import org.jooq.DSLContext;

/** Why a want is left without a part, in sentences. */
final class LeftOut {
  private static final int NAMED = 3;

  private final DSLContext sql;
  private final FamilyBook families;
  private final Map<Long, String> outOfReach;

  /**
   * @param outOfReach parts put aside that are not dealt anew, with why
   */
  LeftOut(DSLContext sql, FamilyBook families, Map<Long, String> outOfReach) {
    this.sql = sql;
    this.families = families;
    this.outOfReach = outOfReach;
  }

  List<String> why(Dealer dealer, Allocation dealt, int at) {
    Want want = dealer.wants().get(at);
    List<String> why = new ArrayList<>();
    Map<String, String> refused = dealer.refusedBy(at);
    if (!refused.isEmpty()) {
      why.add(
          "By its length %s would do, but the rules refuse it: %s"
              .formatted(named(List.copyOf(refused.keySet())), refused.values().iterator().next()));
    }
    if (!dealer.optionsOf(at).isEmpty()) {
      why.addAll(shared(dealer, dealt, at));
      return why;
    }
    if (want.places().isEmpty()) {
      why.add(
          "What sits there is not known well enough to say what it needs: family and length. Survey"
              + " the loop first.");
      return why;
    }
    if (want.isFixed()) {
      why.add("What is put aside for it lies in stock no longer. Release it, then look again.");
    } else if (refused.isEmpty()) {
      why.add("No " + want.needs() + ", lies free in any store.");
      why.addAll(notFree(want));
    }
    return why;
  }

  private static List<String> shared(Dealer dealer, Allocation dealt, int at) {
    Want want = dealer.wants().get(at);
    Allocation.Without without = dealt.without(at);
    Map<Long, Want> holders = new LinkedHashMap<>();
    for (int rival : without.rivals()) {
      dealt.partOf(rival).ifPresent(part -> holders.put(part, dealer.wants().get(rival)));
    }
    List<Want.Option> own = dealer.optionsOf(at);
    List<String> dealtTo = new ArrayList<>();
    for (Want.Option option : own) {
      Want holder = holders.get(option.part());
      if (holder != null) {
        dealtTo.add(option.label() + " to " + holder.loopAndOutage());
      }
    }
    List<String> why = new ArrayList<>();
    why.add(
        (own.size() == 1
                ? "The only part that would do goes: "
                : "All %s parts that would do go: ".formatted(own.size()))
            + String.join(", ", dealtTo.subList(0, Math.min(12, dealtTo.size())))
            + ".");
    if (without.rivals().size() > dealtTo.size()) {
      why.add(
          "Moving parts between loops does not help: %s together can do with these %s parts only."
              .formatted(
                  without.rivals().stream()
                      .limit(12)
                      .map(rival -> dealer.wants().get(rival).loopAndOutage())
                      .collect(Collectors.joining(", ")),
                  without.parts().size()));
    }
    Want last = dealer.wants().get(without.rivals().get(without.rivals().size() - 1));
    why.add(
        "Serving this loop would leave %s without at best, which goes before it: %s."
            .formatted(last.loopAndOutage(), last.before(want)));
    return why;
  }

  private static String named(List<String> labels) {
    return labels.size() <= NAMED
        ? String.join(", ", labels)
        : String.join(", ", labels.subList(0, NAMED)) + " and " + (labels.size() - NAMED) + " more";
  }

  /** Parts of those sorts that are there, but not free. */
  private List<String> notFree(Want want) {
    List<String> why = new ArrayList<>();
    for (Suiting.Place place : want.places()) {
      place.fitting().stream()
          .filter(lying -> outOfReach.containsKey(lying.part().number()))
          .limit(NAMED)
          .forEach(
              lying ->
                  why.add(
                      "%s is %s."
                          .formatted(lying.part().label(), outOfReach.get(lying.part().number()))));
      int quarantined = quarantined(place);
      if (quarantined > 0) {
        why.add(
            "In quarantine: %s × %s. Free it there, if it may be used."
                .formatted(quarantined, place.inWords()));
      }
    }
    return why;
  }

  private int quarantined(Suiting.Place place) {
    return families.named(sql, place.family()).map(Family::id).stream()
        .flatMap(family -> new Stock().counts(sql, List.of(family)).stream())
        .filter(count -> count.sort().kind() == place.kind())
        .filter(count -> count.sort().length().compareTo(place.wanted()) == 0)
        .mapToInt(Stock.Count::quarantined)
        .sum();
  }
}
