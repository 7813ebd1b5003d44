package loopwright.spare;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.db.Chunks;
import loopwright.exchange.Proposal;
import loopwright.exchange.StockPart;
import loopwright.exchange.Suiting;
import loopwright.exchange.Weights;
import loopwright.kit.Kits;
import loopwright.loop.Judging;
import loopwright.loop.KeptTogether;
import loopwright.loop.Slot;
import loopwright.matching.PartState;
import loopwright.outage.Outage;
import loopwright.outage.OutageState;
import loopwright.outage.Outages;
import loopwright.outage.ScopeLine;
import loopwright.plant.Channels;
import loopwright.plant.PointId;
import loopwright.register.Component;
import loopwright.register.FamilyBook;
import loopwright.register.Register;
import loopwright.remedy.Remedies;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Gathers what all open outages want from the stock. */
final class Wants {
  private final SpareStore store = new SpareStore();
  private final WishStore wishes = new WishStore();
  private final KeptTogether kits;
  private final Sources sources;

  Wants(Sources sources) {
    this.sources = sources;
    this.kits = Kits.keptTogether(sources.register());
  }

  /** Where the facts come from. */
  record Sources(
      Outages outages,
      Register register,
      FamilyBook families,
      Channels channels,
      Remedies remedies,
      Judging judging,
      InstantSource clock) {}

  /**
   * All wants, who goes first first.
   *
   * @param outOfReach parts put aside that are not dealt anew, with why
   */
  record Gathered(List<Want> wants, Map<Long, String> outOfReach) {}

  private record Request(
      Outage outage, long point, String tag, String slot, String why, @Nullable Held held) {}

  /** Outages that nobody has closed: under way first, then by their first day. */
  List<Outage> open(DSLContext sql) {
    return sources.outages().newest(sql).stream()
        .filter(outage -> !outage.isClosed())
        .sorted(
            Comparator.comparing((Outage outage) -> outage.state() != OutageState.UNDER_WAY)
                .thenComparing(Outage::begins)
                .thenComparing(Outage::id))
        .toList();
  }

  Gathered gather(DSLContext sql) {
    List<Outage> open = open(sql);
    Map<Long, String> outOfReach = new HashMap<>();
    Set<Long> withKit = new HashSet<>();
    List<Request> requests = new ArrayList<>();
    for (Outage outage : open) {
      requests.addAll(asked(sql, outage, outOfReach, withKit));
    }
    requests.addAll(offBalance(sql, open, requests, withKit));
    List<Want> wants = wants(sql, requests, outOfReach);
    return new Gathered(wants.stream().sorted(Want.ORDER).toList(), outOfReach);
  }

  /** Slots with something put aside, and slots that somebody wants a spare for. */
  private List<Request> asked(
      DSLContext sql, Outage outage, Map<Long, String> outOfReach, Set<Long> withKit) {
    Map<Long, String> scope =
        sources.outages().scope(sql, outage.id()).stream()
            .collect(Collectors.toMap(ScopeLine::point, ScopeLine::tag));
    Map<String, Request> requests = new LinkedHashMap<>();
    for (WishStore.Standing wish : wishes.standing(sql, outage.id())) {
      if (scope.containsKey(wish.point())) {
        requests.put(
            key(wish.point(), wish.slot()),
            new Request(outage, wish.point(), wish.tag(), wish.slot(), wish.reason(), null));
      }
    }
    for (Held held : store.ofOutage(sql, outage.id())) {
      String key = key(held.point(), held.slot());
      Request wished = requests.get(key);
      String why = wished == null ? "put aside by " + held.who() : wished.why();
      Request request = new Request(outage, held.point(), held.tag(), held.slot(), why, held);
      KeptTogether.Kit kit = kits.of(sql, List.of(held.component())).get(held.component());
      if (isFittedThere(sql, held)) {
        requests.remove(key);
      } else if (kit != null) {
        requests.remove(key);
        withKit.add(held.point());
        outOfReach.put(held.component(), "put aside for " + held.tag() + " with " + kit.words());
      } else if (scope.containsKey(held.point())) {
        requests.put(key, request);
      } else {
        outOfReach.put(
            held.component(),
            "put aside for " + held.tag() + ", which " + outage.number() + " takes no longer");
      }
      if (outage.state() == OutageState.UNDER_WAY) {
        outOfReach.put(
            held.component(),
            "put aside for " + held.tag() + " in " + outage.number() + ", which is under way");
      }
    }
    return List.copyOf(requests.values());
  }

  private static String key(long point, String slot) {
    return point + "|" + slot;
  }

  private boolean isFittedThere(DSLContext sql, Held held) {
    return sources
        .register()
        .now(sql, new loopwright.register.ComponentId(held.component()))
        .stream()
        .anyMatch(stay -> stay.point() == held.point());
  }

  /** Loops that no swap puts right, each once, in the first outage that takes it. */
  private List<Request> offBalance(
      DSLContext sql, List<Outage> open, List<Request> asked, Set<Long> withKit) {
    Map<Long, Map<String, String>> byTrain = new HashMap<>();
    Set<Long> seen =
        asked.stream().map(Request::point).collect(Collectors.toCollection(HashSet::new));
    seen.addAll(withKit);
    List<Request> requests = new ArrayList<>();
    for (Outage outage : open) {
      Map<String, String> why = new HashMap<>();
      outage
          .trains()
          .forEach(
              train ->
                  why.putAll(
                      byTrain.computeIfAbsent(train.train(), number -> waiting(sql, number))));
      for (ScopeLine line : sources.outages().scope(sql, outage.id())) {
        if (why.containsKey(line.tag()) && seen.add(line.point())) {
          requests.add(
              new Request(
                  outage, line.point(), line.tag(), "", why.getOrDefault(line.tag(), ""), null));
        }
      }
    }
    return requests;
  }

  private Map<String, String> waiting(DSLContext sql, long train) {
    Proposal proposal = sources.remedies().propose(sql, OptionalLong.of(train));
    Map<String, String> why = new HashMap<>();
    proposal
        .fromStock()
        .forEach(one -> why.put(one.loop(), "balance " + one.balance().signedMetres()));
    proposal
        .shortages()
        .forEach(
            shortage ->
                shortage
                    .loops()
                    .forEach(
                        one -> why.put(one.loop(), "balance " + one.balance().signedMetres())));
    return why;
  }

  private List<Want> wants(DSLContext sql, List<Request> requests, Map<Long, String> outOfReach) {
    Map<Long, Judging.Judged> judged = judged(sql, requests);
    Map<Long, LoopAsFitted> fitted = new HashMap<>();
    judged.forEach((point, loop) -> fitted.put(point, LoopAsFitted.of(loop)));
    Set<String> families = new TreeSet<>();
    fitted.values().forEach(loop -> families.addAll(loop.families()));
    List<StockPart> stock =
        new loopwright.register.Stock()
            .lying(sql, families).stream().map(Remedies::stocked).toList();
    keptTogether(sql, stock, outOfReach);
    Suiting suiting = new Suiting(sources.families().asJudged(sql), Weights.USUAL, stock);
    List<Want> wants = new ArrayList<>();
    for (Request request : requests) {
      LoopAsFitted loop = Objects.requireNonNull(fitted.get(request.point()));
      wants.add(want(sql, request, loop, suiting, outOfReach));
    }
    return wants;
  }

  /** A kit isn't taken apart for a dealing; who wants one of its parts dissolves it first. */
  private void keptTogether(DSLContext sql, List<StockPart> stock, Map<Long, String> outOfReach) {
    List<Long> parts = stock.stream().map(lying -> lying.part().number()).toList();
    for (List<Long> some : Chunks.of(parts, 500)) {
      kits.of(sql, some)
          .forEach((part, kit) -> outOfReach.putIfAbsent(part, "kept together in " + kit.words()));
    }
  }

  private Map<Long, Judging.Judged> judged(DSLContext sql, List<Request> requests) {
    Set<Judging.Subject> subjects =
        requests.stream()
            .map(request -> new Judging.Subject(request.point(), request.tag()))
            .collect(Collectors.toSet());
    Map<Long, Judging.Judged> judged = new HashMap<>();
    for (List<Judging.Subject> some : Chunks.of(subjects, 500)) {
      sources
          .judging()
          .judge(sql, some, sources.clock().instant())
          .forEach(one -> judged.put(one.subject().point(), one));
    }
    return judged;
  }

  private Want want(
      DSLContext sql,
      Request request,
      LoopAsFitted loop,
      Suiting suiting,
      Map<Long, String> outOfReach) {
    List<Suiting.Place> places =
        suiting.places(loop.lengths()).stream()
            .filter(
                place -> request.slot().isEmpty() || loop.slot(place).word().equals(request.slot()))
            .toList();
    Held held = request.held();
    boolean fixed = held != null && request.outage().state() == OutageState.UNDER_WAY;
    List<Want.Option> options = new ArrayList<>();
    if (held != null) {
      own(sql, held).ifPresent(options::add);
    }
    for (Suiting.Place place : fixed ? List.<Suiting.Place>of() : places) {
      for (StockPart lying : place.fitting()) {
        long part = lying.part().number();
        boolean known = options.stream().anyMatch(option -> option.part() == part);
        if (!known && !outOfReach.containsKey(part)) {
          options.add(loop.option(place, lying));
        }
      }
    }
    return new Want(
        request.outage(),
        request.point(),
        request.tag(),
        request.slot(),
        request.why(),
        held,
        votes(sql, request.point()),
        loop.judged(),
        places,
        options);
  }

  /** What is put aside stays an option as long as it lies in stock, of whatever family it is. */
  private java.util.Optional<Want.Option> own(DSLContext sql, Held held) {
    Component part =
        sources
            .register()
            .component(sql, new loopwright.register.ComponentId(held.component()))
            .orElseThrow();
    return part.state() != PartState.IN_STOCK
        ? java.util.Optional.empty()
        : java.util.Optional.of(
            new Want.Option(
                held.component(),
                held.label(),
                held.words(),
                held.where(),
                Slot.named(held.slot()).orElseThrow(),
                Weights.USUAL.of(part.kind()),
                "put aside " + held.component()));
  }

  private boolean votes(DSLContext sql, long point) {
    return sources.channels().ofPoint(sql, new PointId(point)).stream()
        .anyMatch(fed -> !sources.channels().groupsOf(sql, fed.channel().id()).isEmpty());
  }
}
