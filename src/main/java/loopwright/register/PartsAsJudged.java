package loopwright.register;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.matching.Families;
import loopwright.matching.PartName;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.time.Viewpoint;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What the register knows of parts and families, as the rules see it. */
public final class PartsAsJudged {
  private final ComponentStore components = new ComponentStore();
  private final FamilyStore families = new FamilyStore();
  private final FactStore facts = new FactStore();
  private final FamilyBook book = new FamilyBook();
  private final SheetFacts sheets;

  /**
   * @param sheets what data sheets say of the parts
   */
  public PartsAsJudged(SheetFacts sheets) {
    this.sheets = sheets;
  }

  /** Every known family and interchangeable pair. */
  public Families families(DSLContext sql) {
    return book.asJudged(sql);
  }

  /**
   * The parts with these numbers as believed now.
   *
   * @return by number; one that doesn't exist is not in it
   */
  public Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers) {
    Map<Long, String> codes = families.codes(sql);
    SheetFacts.Lookup said = sheets.read(sql);
    return components.components(sql, numbers).entrySet().stream()
        .collect(Collectors.toMap(Map.Entry::getKey, entry -> view(entry.getValue(), codes, said)));
  }

  /**
   * The same as believed of that moment, as known then. Before the first thing recorded of a part,
   * that first record counts. Names are today's, and so are the codes of families and what data
   * sheets say.
   *
   * @return by number; one that nobody knew of is not in it
   */
  public Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint) {
    Map<Long, String> codes = families.codes(sql);
    SheetFacts.Lookup said = sheets.read(sql);
    Map<Long, Component> named = components.components(sql, numbers);
    Map<Long, PartView> views = new HashMap<>();
    facts
        .at(sql, numbers, viewpoint)
        .forEach(
            (number, belief) -> {
              Component part = named.get(number);
              if (part != null) {
                views.put(
                    number, view(part.details(), belief.facts(), fitted(belief), codes, said));
              }
            });
    return views;
  }

  /** Since when parts have another length or setting than before, by the viewpoint. */
  public Map<Long, List<Instant>> lengthChanges(
      DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint) {
    Map<Long, List<Instant>> changes = new HashMap<>();
    facts
        .changing(sql, numbers, viewpoint.known())
        .forEach(
            (number, line) -> {
              List<Instant> moments =
                  LengthChange.moments(line).stream()
                      .filter(moment -> !moment.isAfter(viewpoint.at()))
                      .toList();
              if (!moments.isEmpty()) {
                changes.put(number, moments);
              }
            });
    return changes;
  }

  /** Whoever asks for parts of the past asks for parts of a chain: what is usable was fitted. */
  private static PartState fitted(Belief belief) {
    return switch (belief.facts().condition()) {
      case SCRAPPED -> PartState.SCRAPPED;
      case QUARANTINED -> PartState.QUARANTINED;
      case USABLE -> PartState.FITTED;
    };
  }

  /** To be told whenever parts came or went, so that their state follows. */
  public void placementsChanged(Tx tx, Collection<Long> numbers) {
    numbers.forEach(number -> components.refreshState(tx, new ComponentId(number)));
  }

  private static PartView view(Component part, Map<Long, String> codes, SheetFacts.Lookup said) {
    return view(part.details(), part.facts(), part.state(), codes, said);
  }

  private static PartView view(
      ComponentDetails details,
      ComponentFacts facts,
      PartState state,
      Map<Long, String> codes,
      SheetFacts.Lookup said) {
    PartIdentity identity = details.identity();
    return PartView.of(details.kind())
        .name(
            new PartName(
                identity.maker(),
                identity.model(),
                FactRows.absent(identity.serial()),
                FactRows.absent(identity.shopNumber())))
        .family(code(facts.family(), codes))
        .length(facts.length() == null ? null : facts.length().known())
        .measuredLength(facts.physicalLength() == null ? null : Length.of(facts.physicalLength()))
        .tipMillimetres(facts.tipMillimetres())
        .scaleFactor(facts.scaleFactor())
        .sheet(said.of(details.kind(), identity, facts.family()))
        .state(state)
        .build();
  }

  private static @Nullable String code(@Nullable FamilyId family, Map<Long, String> codes) {
    return family == null ? null : codes.get(family.number());
  }
}
