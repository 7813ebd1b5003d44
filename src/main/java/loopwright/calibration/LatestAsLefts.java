package loopwright.calibration;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import loopwright.loop.AsLeftFacts;
import loopwright.loop.PartSet;
import loopwright.matching.Calibration;
import loopwright.register.ToleranceProfiles;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What loops are told of as-lefts; made apart because loops are judged before all else. */
public final class LatestAsLefts implements AsLeftFacts {
  private final CalibrationStore store = new CalibrationStore();
  private final RegisteredProfiles profiles;

  /**
   * @param profiles says which one judges a loop
   */
  public LatestAsLefts(RegisteredProfiles profiles) {
    this.profiles = profiles;
  }

  @Override
  public Map<Long, List<AsLeft>> latest(
      DSLContext sql, Collection<Fitted> loops, Viewpoint viewpoint) {
    Map<Long, Calibrated> byPoint = store.latestAsLeftByPoint(sql, loops, viewpoint);
    Map<String, Calibrated> byCombination = store.latestAsLeftByCombination(sql, loops, viewpoint);
    Map<Long, List<AsLeft>> latest = new HashMap<>();
    for (Fitted loop : loops) {
      List<AsLeft> some =
          Stream.of(
                  Optional.ofNullable(byPoint.get(loop.point())),
                  Optional.ofNullable(byCombination.get(loop.fingerprint())))
              .flatMap(Optional::stream)
              .distinct()
              .sorted(
                  Comparator.comparing(Calibrated::measuredAt)
                      .thenComparing(Calibrated::id)
                      .reversed())
              .map(c -> told(sql, loop, c))
              .toList();
      if (!some.isEmpty()) {
        latest.put(loop.point(), some);
      }
    }
    return latest;
  }

  private AsLeft told(DSLContext sql, Fitted loop, Calibrated c) {
    Instant at = c.measuredAt();
    boolean here = c.setup() == Setup.FITTED && c.point() != null && c.point() == loop.point();
    return new AsLeft(
        c.id(),
        c.fingerprint(),
        at.atZone(ZoneOffset.UTC).toLocalDate(),
        at,
        here,
        outcome(c),
        c.targetAlloy(),
        averageScaleFactor(c),
        here ? List.of() : otherProfile(sql, loop, c));
  }

  /** A curve taken elsewhere was perhaps judged by limits that are not this loop's. */
  private List<String> otherProfile(DSLContext sql, Fitted loop, Calibrated c) {
    Long version = c.profileVersion();
    if (version == null) {
      return List.of();
    }
    Optional<String> own =
        PartSet.read(loop.fingerprint())
            .flatMap(set -> profiles.suiting(sql, loop.point(), set.chain()))
            .map(LatestAsLefts::code);
    Optional<String> judgedBy = profiles.version(sql, version).map(LatestAsLefts::code);
    return own.isEmpty() || Objects.equals(own, judgedBy)
        ? List.of()
        : List.of(
            "it was judged by profile %s, and this loop's is %s"
                .formatted(judgedBy.orElse("?"), own.get()));
  }

  private static String code(ToleranceProfiles.Stored stored) {
    return stored.profile().code();
  }

  private static @Nullable Double averageScaleFactor(Calibrated c) {
    OptionalDouble asf = c.numbers().asf();
    return asf.isPresent() ? (Double) asf.getAsDouble() : null;
  }

  private static Calibration.Outcome outcome(Calibrated c) {
    if (c.verdict() == null) {
      return Calibration.Outcome.NO_CURVE;
    }
    return c.verdict().equals("conforms")
        ? Calibration.Outcome.CONFORMS
        : Calibration.Outcome.DOES_NOT_CONFORM;
  }
}
