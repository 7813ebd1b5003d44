package loopwright.scan;

import java.time.InstantSource;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loopwright.loop.Chain;
import loopwright.loop.Configuration;
import loopwright.loop.Content;
import loopwright.loop.Judging;
import loopwright.loop.PartSet;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.matching.Verdict;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.register.Whereabouts;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Judges scanned parts as if they were to be left together, in the loop they are meant for. */
final class ScanCheck {
  private static final String NO_LOOP = "these parts";

  private final Judging judging;
  private final Configuration configuration;
  private final Register register;
  private final Plant plant;
  private final InstantSource clock;

  ScanCheck(
      Judging judging,
      Configuration configuration,
      Register register,
      Plant plant,
      InstantSource clock) {
    this.judging = judging;
    this.configuration = configuration;
    this.register = register;
    this.plant = plant;
    this.clock = clock;
  }

  /**
   * The answer.
   *
   * @param bench with the path in the order that was judged
   * @param loop that they are meant for; null while that isn't known
   * @param chosen whether somebody named the loop; else it is where the fitted ones stand
   * @param missing what is still to be scanned
   */
  record Answer(
      Bench bench,
      @Nullable Point loop,
      boolean chosen,
      List<Bench.Place> missing,
      Chain chain,
      Judging.Judged judged) {

    Verdict verdict() {
      return judged.judgement().verdict();
    }

    /** Whether an assembly with these parts would be refused, or not enough is known of them. */
    boolean blocked() {
      return !judged.judgement().againstAssembly().isEmpty();
    }
  }

  Answer answer(DSLContext sql, Scan scan, Bench bench) {
    Optional<Point> chosen =
        scan.loop().isEmpty() ? Optional.empty() : plant.pointTagged(sql, scan.loop());
    @Nullable Point loop = chosen.or(() -> whereFitted(sql, bench)).orElse(null);
    List<Bench.Place> missing = bench.missing(scan.noCable());
    return bench.orders().stream()
        .map(bench::inOrder)
        .map(
            ordered -> {
              Chain chain = chain(sql, ordered, missing, loop);
              return new Answer(
                  ordered, loop, chosen.isPresent(), missing, chain, judge(sql, loop, chain));
            })
        .min(Comparator.comparingInt(ScanCheck::badness))
        .orElseThrow();
  }

  /** Whether the loop they are meant for is known and holds other parts now. */
  boolean differsFromFitted(DSLContext sql, Answer answer) {
    Point loop = answer.loop();
    return loop != null
        && PartSet.of(configuration.at(sql, loop.id().number(), clock.instant()))
            .filter(fitted -> !PartSet.of(answer.chain()).equals(Optional.of(fitted)))
            .isPresent();
  }

  private Judging.Judged judge(DSLContext sql, @Nullable Point loop, Chain chain) {
    Judging.Subject subject =
        loop == null
            ? new Judging.Subject(0, NO_LOOP)
            : new Judging.Subject(loop.id().number(), loop.tag());
    return judging.judge(sql, subject, chain, clock.instant());
  }

  private static int badness(Answer answer) {
    return answer.judged().judgement().findings().stream()
        .mapToInt(
            finding ->
                switch (finding.verdict()) {
                  case REFUSED -> 10_000;
                  case UNKNOWN -> 100;
                  case ATTENTION -> 1;
                  default -> 0;
                })
        .sum();
  }

  /** The one loop that holds all of them that are fitted anywhere. */
  private Optional<Point> whereFitted(DSLContext sql, Bench bench) {
    Set<Long> points =
        bench.parts().stream()
            .flatMap(part -> register.now(sql, part.id()).stream())
            .map(Whereabouts::point)
            .collect(Collectors.toSet());
    return points.size() == 1
        ? plant.point(sql, new PointId(points.iterator().next()))
        : Optional.empty();
  }

  private Chain chain(
      DSLContext sql, Bench bench, List<Bench.Place> missing, @Nullable Point loop) {
    List<Placed> present =
        loop == null ? List.of() : configuration.at(sql, loop.id().number(), clock.instant());
    Map<Slot, Content> slots = new EnumMap<>(Slot.class);
    put(sql, slots, Slot.PROBE, bench.probe(), present);
    for (int i = 0; i < bench.path().size(); i++) {
      put(sql, slots, Slot.values()[Slot.PATH_1.ordinal() + i], bench.path().get(i), present);
    }
    put(sql, slots, Slot.DRIVER, bench.driver(), present);
    if (missing.contains(Bench.Place.PATH)) {
      slots.put(Slot.PATH_1, new Content.Unknown());
    }
    return new Chain(slots);
  }

  private void put(
      DSLContext sql,
      Map<Slot, Content> slots,
      Slot slot,
      @Nullable Component part,
      List<Placed> present) {
    if (part != null) {
      slots.put(slot, content(sql, slot, part, present));
    }
  }

  /** Of a driver box, the channel that serves this loop, else the first that serves none. */
  private Content content(DSLContext sql, Slot slot, Component part, List<Placed> present) {
    long number = part.id().number();
    return present.stream()
        .filter(placed -> placed.slot() == slot)
        .map(Placed::content)
        .filter(content -> content.component().orElse(0) == number)
        .findFirst()
        .orElseGet(() -> new Content.Part(number, freeChannel(sql, part)));
  }

  private int freeChannel(DSLContext sql, Component part) {
    int channels = part.details().channels();
    if (channels == 1) {
      return 1;
    }
    Set<Integer> taken =
        register.now(sql, part.id()).stream().map(Whereabouts::channel).collect(Collectors.toSet());
    return IntStream.rangeClosed(1, channels)
        .filter(channel -> !taken.contains(channel))
        .findFirst()
        .orElse(1);
  }
}
