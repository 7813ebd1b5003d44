package loopwright.loop;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.matching.Allowance;
import loopwright.matching.Alloys;
import loopwright.matching.Elsewhere;
import loopwright.matching.Families;
import loopwright.matching.Judgement;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.PlaceView;
import loopwright.matching.RuleBook;
import loopwright.problem.Text;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Puts together what the rules look at, for loops as they are and as somebody means to leave them.
 */
public final class Judging {
  private final PlacementStore placements = new PlacementStore();
  private final DisputeStore disputes = new DisputeStore();
  private final PartFacts parts;
  private final PlaceFacts places;
  private final CircuitFacts circuits;
  private final AlloyFacts alloys;
  private final AsLeftFacts asLeft;
  private final KeptTogether kits;
  private final Allowances allowances;
  private final Promises promises;
  private final LawFacts laws;
  private final RuleBook rules;

  public Judging(Sources sources, RuleBook rules) {
    this.parts = sources.parts();
    this.places = sources.places();
    this.circuits = sources.circuits();
    this.alloys = sources.alloys();
    this.asLeft = sources.asLeft();
    this.kits = sources.kits();
    this.allowances = sources.allowances();
    this.promises = sources.promises();
    this.laws = sources.laws();
    this.rules = rules;
  }

  /** Where facts about loops come from, each given by the feature that keeps it. */
  public record Sources(
      PartFacts parts,
      PlaceFacts places,
      CircuitFacts circuits,
      AlloyFacts alloys,
      AsLeftFacts asLeft,
      Allowances allowances,
      Promises promises,
      KeptTogether kits,
      LawFacts laws) {

    /** Where nobody keeps reservations, kits or confirmed lengths. */
    public Sources(
        PartFacts parts,
        PlaceFacts places,
        CircuitFacts circuits,
        AlloyFacts alloys,
        AsLeftFacts asLeft,
        Allowances allowances) {
      this(
          parts,
          places,
          circuits,
          alloys,
          asLeft,
          allowances,
          Promises.NONE,
          KeptTogether.NONE,
          LawFacts.NONE);
    }
  }

  /** As it stands on record, or as somebody means to leave it or found it. */
  private enum As {
    RECORDED,
    PROPOSED
  }

  /** A point and the tag it is told by. */
  public record Subject(long point, String tag) {}

  /**
   * A judged loop with the parts that were judged.
   *
   * @param allowed the concessions that stand for it; null if none does
   */
  public record Judged(
      Subject subject,
      List<Placed> chain,
      LoopView view,
      Judgement judgement,
      Allowances.@Nullable Allowed allowed) {}

  Allowances allowances() {
    return allowances;
  }

  /** Loops as they are believed to be at that moment, in one pass. */
  public List<Judged> judge(DSLContext sql, Collection<Subject> subjects, Instant at) {
    List<Placed> placed = placements.at(sql, points(subjects), at);
    return judge(sql, chains(subjects, placed), Map.of(), at, Viewpoint.LATEST, As.RECORDED);
  }

  /**
   * Loops as they were at a moment, as known then: parts, what is known of them, calibrations and
   * settings of channels; rules, families, tags and what is around a point are today's.
   */
  public List<Judged> judge(DSLContext sql, Collection<Subject> subjects, Viewpoint viewpoint) {
    List<Placed> placed = placements.at(sql, points(subjects), viewpoint);
    return judge(sql, chains(subjects, placed), Map.of(), viewpoint.at(), viewpoint, As.RECORDED);
  }

  private static List<Long> points(Collection<Subject> subjects) {
    return subjects.stream().map(Subject::point).toList();
  }

  private static Map<Subject, List<Placed>> chains(
      Collection<Subject> subjects, List<Placed> placed) {
    Map<Long, List<Placed>> byPoint = placed.stream().collect(Collectors.groupingBy(Placed::point));
    Map<Subject, List<Placed>> chains = new LinkedHashMap<>();
    subjects.forEach(s -> chains.put(s, byPoint.getOrDefault(s.point(), List.of())));
    return chains;
  }

  /** One loop as somebody means to leave it at that moment; other loops as they are. */
  public Judged judge(DSLContext sql, Subject subject, Chain chain, Instant at) {
    List<Placed> present = placements.at(sql, subject.point(), at);
    List<Placed> proposed = new ArrayList<>();
    chain
        .slots()
        .forEach((slot, content) -> proposed.add(proposed(present, subject, slot, content, at)));
    Map<Long, List<Elsewhere>> elsewhere = elsewhere(sql, subject, chain, at);
    return judge(sql, Map.of(subject, proposed), elsewhere, at, Viewpoint.LATEST, As.PROPOSED)
        .get(0);
  }

  /** What stays where it is was there before, so that its curve still counts. */
  private static Placed proposed(
      List<Placed> present, Subject subject, Slot slot, Content content, Instant at) {
    return present.stream()
        .filter(placed -> placed.slot() == slot && placed.content().equals(content))
        .findFirst()
        .orElseGet(() -> Placed.fresh(subject.point(), slot, content, Span.from(at), "proposed"));
  }

  private Map<Long, List<Elsewhere>> elsewhere(
      DSLContext sql, Subject subject, Chain chain, Instant at) {
    Map<Long, List<Elsewhere>> found = new TreeMap<>();
    for (Content content : chain.slots().values()) {
      if (content instanceof Content.Part part) {
        placements
            .of(sql, part, at)
            .filter(placed -> placed.point() != subject.point())
            .ifPresent(placed -> found.put(part.number(), List.of(told(sql, placed))));
      }
    }
    return found;
  }

  private Elsewhere told(DSLContext sql, Placed placed) {
    return new Elsewhere(
        placements.tag(sql, placed.point()),
        "recorded by " + placements.recordedBy(sql, placed.placement()));
  }

  private List<Judged> judge(
      DSLContext sql,
      Map<Subject, List<Placed>> chains,
      Map<Long, List<Elsewhere>> elsewhere,
      Instant at,
      Viewpoint viewpoint,
      As as) {
    Families families = families(sql, viewpoint);
    Alloys groups = alloys.groups(sql);
    Map<Long, CircuitFacts.Circuit> behind = circuits.circuits(sql, points(chains.keySet()));
    Set<Long> numbers = components(chains.values());
    behind.values().forEach(circuit -> circuit.barrier().component().ifPresent(numbers::add));
    Map<Long, PartView> views = new TreeMap<>(parts(sql, numbers, viewpoint));
    lengthsThen(sql, as, at, views);
    elsewhere.forEach(
        (number, places) ->
            views.computeIfPresent(number, (same, view) -> view.standingAlsoAt(places)));
    Map<Long, List<AsLeftFacts.AsLeft>> latest = asLeft.latest(sql, fitted(chains), viewpoint);
    Viewpoint then = new Viewpoint(at, viewpoint.known());
    Map<Long, Allowances.Allowed> allowed = allowances.standing(sql, fitted(chains), then);
    Map<Long, PlaceView> around = places.places(sql, points(chains.keySet()), then);
    List<AsLeftFacts.AsLeft> curves = latest.values().stream().flatMap(List::stream).toList();
    Map<Long, PartView> known = formerParts(sql, curves, views, viewpoint);
    PartsSince since = since(sql, curves, viewpoint);
    Map<Long, List<String>> disputed = disputed(sql, points(chains.keySet()), then);
    Map<Long, Promises.Promise> promised =
        viewpoint.equals(Viewpoint.LATEST) ? promises.of(sql, views.keySet()) : Map.of();
    Map<Long, KeptTogether.Kit> together =
        viewpoint.equals(Viewpoint.LATEST) ? kits.of(sql, views.keySet()) : Map.of();
    List<Judged> judged = new ArrayList<>();
    chains.forEach(
        (subject, chain) -> {
          List<AsLeftFacts.AsLeft> last = latest.get(subject.point());
          CircuitFacts.Circuit circuit =
              behind.getOrDefault(subject.point(), CircuitFacts.Circuit.NOT_SAID);
          Map<Long, PartView> seen =
              KeptTogether.seenFrom(
                  chain, Promises.seenFrom(subject.point(), views, promised), together);
          PlaceView place = around.getOrDefault(subject.point(), PlaceView.NOT_SAID);
          LoopView.Builder view =
              LoopView.at(subject.tag())
                  .probe(slot(chain, Slot.PROBE, seen))
                  .path(path(chain, seen))
                  .driver(slot(chain, Slot.DRIVER, seen))
                  .families(families)
                  .place(place.withFieldCable(circuit.cable()))
                  .barrier(barrier(circuit, seen))
                  .alloys(groups)
                  .calibration(
                      last == null
                          ? null
                          : new AsFitted(chain, place.shaftAlloy(), groups, known, since)
                              .calibration(last))
                  .disputed(disputed.getOrDefault(subject.point(), List.of()));
          LoopView whole = view.holding(FactsHeld.of(view.build())).build();
          judged.add(judged(subject, chain, whole, allowed.get(subject.point())));
        });
    return judged;
  }

  /** A law learnt since says nothing of what could be known at a past moment. */
  private Families families(DSLContext sql, Viewpoint viewpoint) {
    Families families = parts.families(sql);
    return viewpoint.equals(Viewpoint.LATEST) ? families.knowing(laws.learnt(sql)) : families;
  }

  /** Where parts stood meanwhile counts only for curves that were taken elsewhere. */
  private PartsSince since(DSLContext sql, List<AsLeftFacts.AsLeft> curves, Viewpoint viewpoint) {
    Set<Long> all = new TreeSet<>();
    Set<Long> elsewhere = new TreeSet<>();
    for (AsLeftFacts.AsLeft curve : curves) {
      Collection<Long> measured = Combinations.components(curve.fingerprint()).values();
      all.addAll(measured);
      if (!curve.takenHere()) {
        elsewhere.addAll(measured);
      }
    }
    return all.isEmpty()
        ? PartsSince.NOTHING
        : PartsSince.of(
            parts.lengthChanges(sql, all, viewpoint), placements.ofAll(sql, List.of(), elsewhere));
  }

  private Map<Long, List<String>> disputed(DSLContext sql, List<Long> points, Viewpoint viewpoint) {
    List<Dispute> open = disputes.openAt(sql, points, viewpoint);
    Set<Long> claimed = new TreeSet<>();
    open.forEach(dispute -> claimed.add(dispute.part().number()));
    Map<Long, PartView> views = claimed.isEmpty() ? Map.of() : parts.parts(sql, claimed);
    Map<Long, List<String>> told = new TreeMap<>();
    for (Dispute dispute : open) {
      PartView view = views.get(dispute.part().number());
      for (Dispute.Claim claim : List.of(dispute.standing(), dispute.other())) {
        String words = Text.capital(view == null ? "a part" : view.words());
        told.computeIfAbsent(claim.point(), point -> new ArrayList<>())
            .add(words + " " + dispute.seenFrom(claim.point()) + ": one serial was misread.");
      }
    }
    return told;
  }

  /**
   * Settings and lengths that were others at a past moment count as they were then; condition and
   * everything else as it is now.
   */
  private void lengthsThen(DSLContext sql, As as, Instant at, Map<Long, PartView> views) {
    if (as == As.PROPOSED) {
      parts
          .parts(sql, views.keySet(), new Viewpoint(at, null))
          .forEach(
              (number, then) ->
                  views.computeIfPresent(number, (same, now) -> now.withLength(then.length())));
    }
  }

  private Judged judged(
      Subject subject, List<Placed> chain, LoopView view, Allowances.@Nullable Allowed allowed) {
    List<Allowance> standing = allowed == null ? List.of() : allowed.allowances();
    return new Judged(subject, chain, view, rules.judge(view).under(standing), allowed);
  }

  private Map<Long, PartView> parts(DSLContext sql, Set<Long> numbers, Viewpoint viewpoint) {
    return viewpoint.equals(Viewpoint.LATEST)
        ? parts.parts(sql, numbers)
        : parts.parts(sql, numbers, viewpoint);
  }

  private static Set<Long> components(Collection<List<Placed>> chains) {
    Set<Long> components = new TreeSet<>();
    chains.forEach(
        chain -> chain.forEach(placed -> placed.content().component().ifPresent(components::add)));
    return components;
  }

  private static List<AsLeftFacts.Fitted> fitted(Map<Subject, List<Placed>> chains) {
    List<AsLeftFacts.Fitted> fitted = new ArrayList<>();
    chains.forEach(
        (subject, chain) ->
            fitted.add(
                new AsLeftFacts.Fitted(
                    subject.point(), Combinations.fingerprint(chain).orElse(""))));
    return fitted;
  }

  private Map<Long, PartView> formerParts(
      DSLContext sql,
      List<AsLeftFacts.AsLeft> calibrations,
      Map<Long, PartView> present,
      Viewpoint viewpoint) {
    Set<Long> numbers = new TreeSet<>();
    calibrations.forEach(c -> numbers.addAll(Combinations.components(c.fingerprint()).values()));
    numbers.removeAll(present.keySet());
    Map<Long, PartView> all = new TreeMap<>(present);
    if (!numbers.isEmpty()) {
      all.putAll(parts(sql, numbers, viewpoint));
    }
    return all;
  }

  private static loopwright.matching.Slot slot(
      List<Placed> chain, Slot slot, Map<Long, PartView> views) {
    return content(chain, slot)
        .map(content -> seen(content, views))
        .orElse(loopwright.matching.Slot.NOT_RECORDED);
  }

  private static List<loopwright.matching.Slot> path(
      List<Placed> chain, Map<Long, PartView> views) {
    return chain.stream()
        .filter(placed -> placed.slot().isPath())
        .map(placed -> seen(placed.content(), views))
        .collect(Collectors.toCollection(ArrayList::new));
  }

  private static loopwright.matching.Slot barrier(
      CircuitFacts.Circuit circuit, Map<Long, PartView> views) {
    return circuit.barrier() instanceof Content.Unknown
        ? loopwright.matching.Slot.NOT_RECORDED
        : seen(circuit.barrier(), views);
  }

  private static Optional<Content> content(List<Placed> chain, Slot slot) {
    return chain.stream().filter(p -> p.slot() == slot).map(Placed::content).findFirst();
  }

  private static loopwright.matching.Slot seen(Content content, Map<Long, PartView> views) {
    if (content instanceof Content.Part part) {
      @Nullable PartView view = views.get(part.number());
      return view == null
          ? loopwright.matching.Slot.unknown("its part is not in the register")
          : loopwright.matching.Slot.of(view);
    }
    return content instanceof Content.None
        ? loopwright.matching.Slot.NONE_FITTED
        : loopwright.matching.Slot.unknown("");
  }
}
