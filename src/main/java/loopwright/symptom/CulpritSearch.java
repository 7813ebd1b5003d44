package loopwright.symptom;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loopwright.loop.PartFacts;
import loopwright.matching.FamilyView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * How each likely length could have come about, and which parts on record could be the one that is
 * fitted by mistake.
 */
final class CulpritSearch {
  private static final int MOST_PARTS = 4;
  private static final int MOST_LOOKED_AT = 60;

  private final DSLContext sql;
  private final PartFacts parts;
  private final LoopOnRecord loop;

  CulpritSearch(DSLContext sql, PartFacts parts, LoopOnRecord loop) {
    this.sql = sql;
    this.parts = parts;
    this.loop = loop;
  }

  /** One way to that total. */
  record Way(String sentence, List<Suspect> suspects) {}

  /** A part that could be it. */
  record Suspect(String label, String href, String about) {}

  List<Way> ways(Length total) {
    Optional<Length> onRecord = loop.fitted();
    if (onRecord.isEmpty()) {
      return List.of(new Way("A length of this loop is not on record.", List.of()));
    }
    Length extra = total.minus(onRecord.get());
    if (extra.isZero()) {
      return List.of(new Way("That is what the register holds.", List.of()));
    }
    List<Way> ways = new ArrayList<>();
    loop.cable().flatMap(cable -> way(cable, extra, "cable")).ifPresent(ways::add);
    loop.probe().flatMap(probe -> way(probe, extra, "probe lead")).ifPresent(ways::add);
    return ways;
  }

  private Optional<Way> way(PartView part, Length extra, String word) {
    Length recorded = part.length() == null ? Length.ZERO : part.length().length();
    Length wanted = recorded.plus(extra);
    if (wanted.metres().signum() <= 0 || !isOffered(part.kind(), wanted)) {
      return Optional.empty();
    }
    return Optional.of(
        new Way(
            "A "
                + word
                + " of "
                + wanted.inMetres()
                + " instead of the "
                + recorded.inMetres()
                + " on record ("
                + part.words()
                + ").",
            suspects(part, wanted)));
  }

  private boolean isOffered(PartKind kind, Length length) {
    List<Length> offered =
        loop.family().map((FamilyView family) -> family.lengthsOf(kind)).orElse(List.of());
    return offered.isEmpty() || offered.contains(length);
  }

  /** Of the same family first; what lies in stock or was fitted elsewhere may be here instead. */
  private List<Suspect> suspects(PartView part, Length length) {
    List<PartFacts.Choice> choices =
        parts.proposals(sql, part.kind().place(), "", length, MOST_LOOKED_AT).stream()
            .filter(choice -> choice.kind() == part.kind())
            .toList();
    Map<Long, PartView> views =
        parts.parts(sql, choices.stream().map(PartFacts.Choice::number).toList());
    return choices.stream()
        .filter(choice -> isOfLength(views.get(choice.number()), length))
        .sorted(Comparator.comparing(choice -> !isOfFamily(views.get(choice.number()), part)))
        .limit(MOST_PARTS)
        .map(choice -> new Suspect(choice.label(), "/parts/" + choice.number(), choice.about()))
        .toList();
  }

  /** The proposals only put parts of that length first. */
  private static boolean isOfLength(@Nullable PartView candidate, Length length) {
    return candidate != null
        && candidate.length() != null
        && candidate.length().length().equals(length);
  }

  private static boolean isOfFamily(@Nullable PartView candidate, PartView part) {
    return candidate != null && Objects.equals(candidate.family(), part.family());
  }
}
