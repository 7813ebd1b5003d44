package loopwright.register;

import java.util.Collection;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.matching.Families;
import loopwright.matching.PartName;
import loopwright.matching.PartView;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What the register knows of parts and families, as the rules see it. */
public final class PartsAsJudged {
  private final ComponentStore components = new ComponentStore();
  private final FamilyStore families = new FamilyStore();
  private final FamilyBook book = new FamilyBook();

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
    return components.components(sql, numbers).entrySet().stream()
        .collect(Collectors.toMap(Map.Entry::getKey, entry -> view(entry.getValue(), codes)));
  }

  /** To be told whenever parts came or went, so that their state follows. */
  public void placementsChanged(Tx tx, Collection<Long> numbers) {
    numbers.forEach(number -> components.refreshState(tx, new ComponentId(number)));
  }

  private static PartView view(Component part, Map<Long, String> codes) {
    PartIdentity identity = part.details().identity();
    ComponentFacts facts = part.facts();
    return PartView.of(part.kind())
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
        .state(part.state())
        .build();
  }

  private static @Nullable String code(@Nullable FamilyId family, Map<Long, String> codes) {
    return family == null ? null : codes.get(family.number());
  }
}
