package loopwright.calibration;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import loopwright.loop.Combinations;
import loopwright.loop.Placed;
import loopwright.plant.Point;
import loopwright.web.PathSegment;

/**
 * The loop a curve is typed for.
 *
 * @param zone of its site
 * @param chain as fitted now
 */
record OpenedLoop(Point point, ZoneId zone, List<Placed> chain) {
  long number() {
    return point.id().number();
  }

  String href() {
    return "/loops/" + PathSegment.of(point.tag());
  }

  Optional<String> fingerprint() {
    return Combinations.fingerprint(chain);
  }

  /** The register's numbers of the parts fitted, in chain order. */
  List<Long> parts() {
    return chain.stream().flatMap(p -> p.content().component().stream().boxed()).toList();
  }
}
