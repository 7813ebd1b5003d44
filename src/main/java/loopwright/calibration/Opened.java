package loopwright.calibration;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import loopwright.loop.Combinations;
import loopwright.loop.Placed;
import loopwright.plant.Point;
import loopwright.web.PathSegment;
import org.jspecify.annotations.Nullable;

/**
 * What a curve is typed for: a loop as fitted, a loop with a part standing in, or a set on a bench.
 *
 * @param point null on the bench
 * @param zone of its site
 * @param chain the parts that are measured
 */
record Opened(@Nullable Point point, ZoneId zone, TakenWith with, List<Placed> chain) {

  /** For profiles that a point calls for; 0 on the bench. */
  long number() {
    return point == null ? 0 : point.id().number();
  }

  String name() {
    return point == null ? "bench set" : point.tag();
  }

  /** Of the page on which it is typed. */
  String href() {
    return CurveAddress.of(
        point == null ? null : point.tag(),
        with.parts().map(set -> set.fingerprint()).orElse(null));
  }

  String judgedHref() {
    return point == null ? "/bench/curve/judged" : backHref() + "/curve/judged";
  }

  /** Where one goes on. */
  String backHref() {
    return point == null ? "/scan" : "/loops/" + PathSegment.of(point.tag());
  }

  /** What a target is of, as far as the point says. */
  String shaftAlloy() {
    return point == null ? "" : point.details().surroundings().shaftAlloy();
  }

  Optional<String> fingerprint() {
    return Combinations.fingerprint(chain);
  }

  /** The register's numbers of the parts measured, in chain order. */
  List<Long> parts() {
    return chain.stream().flatMap(p -> p.content().component().stream().boxed()).toList();
  }
}
