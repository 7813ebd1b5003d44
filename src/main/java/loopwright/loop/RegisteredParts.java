package loopwright.loop;

import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Tx;
import loopwright.matching.Families;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.NominalLength;
import loopwright.register.PartRow;
import loopwright.register.PartSearch;
import loopwright.register.PartsAsJudged;
import loopwright.register.Register;
import loopwright.register.Shelf;
import loopwright.register.Whereabouts;
import loopwright.time.Viewpoint;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Parts and families out of the register, as loops need them. */
public final class RegisteredParts implements PartFacts {
  private final PartsAsJudged judged;
  private final Register register;
  private final PartSearch search;

  public RegisteredParts(PartsAsJudged judged, Register register, PartSearch search) {
    this.judged = judged;
    this.register = register;
    this.search = search;
  }

  @Override
  public Families families(DSLContext sql) {
    return judged.families(sql);
  }

  @Override
  public Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers) {
    return judged.parts(sql, numbers);
  }

  @Override
  public Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint) {
    return judged.parts(sql, numbers, viewpoint);
  }

  @Override
  public Map<Long, List<Instant>> lengthChanges(
      DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint) {
    return judged.lengthChanges(sql, numbers, viewpoint);
  }

  @Override
  public Instant knownFrom(DSLContext sql, long number) {
    return register.beliefs(sql, new ComponentId(number)).stream()
        .findFirst()
        .map(belief -> belief.span().from())
        .orElse(Instant.MIN);
  }

  @Override
  public void placementsChanged(Tx tx, Collection<Long> numbers) {
    judged.placementsChanged(tx, numbers);
  }

  @Override
  public void putAway(Tx tx, PutAway how, Instant from) {
    Shelf shelf = new Shelf(how.store(), how.bin());
    register.putAway(tx, new ComponentId(how.part()), from, shelf, how.quarantine());
  }

  @Override
  public List<Choice> named(DSLContext sql, String text) {
    return search.rows(sql, register.labelled(sql, text)).stream()
        .map(RegisteredParts::choice)
        .toList();
  }

  @Override
  public List<Choice> proposals(
      DSLContext sql, PartKind.Place place, String text, @Nullable Length length, int most) {
    return Stream.of(PartKind.values())
        .filter(kind -> kind.place() == place)
        .flatMap(kind -> search.lookup(sql, kind, text, null, length).stream())
        .filter(row -> row.part().state() != PartState.SCRAPPED)
        .sorted(Comparator.comparing(row -> row.part().state() != PartState.IN_STOCK))
        .limit(most)
        .map(RegisteredParts::choice)
        .toList();
  }

  private static Choice choice(PartRow row) {
    Component part = row.part();
    return new Choice(
        part.id().number(), part.label(), part.kind(), about(row), part.details().channels());
  }

  private static String about(PartRow row) {
    Component part = row.part();
    NominalLength length = part.facts().length();
    String where =
        row.now().isEmpty()
            ? Stream.of(part.state().word(), part.facts().shelf().inWords())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "))
            : "fitted at "
                + row.now().stream().map(Whereabouts::tag).collect(Collectors.joining(", "));
    return Stream.of(
            length == null ? "length not known" : length.length().inMetres(),
            part.details().identity().maker() + " " + part.details().identity().model(),
            row.family(),
            where)
        .filter(words -> !words.isBlank())
        .collect(Collectors.joining(" · "));
  }
}
