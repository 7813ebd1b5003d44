package loopwright.loop;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.matching.PartView;
import loopwright.plant.Point;
import loopwright.time.SiteMoment;
import loopwright.web.PathSegment;

/** A loop as the form was opened on it. */
record Opened(
    Point point,
    ZoneId zone,
    List<Placed> chain,
    Map<Long, PartView> views,
    Map<Slot, String> texts,
    Optional<LoopEvent> last) {
  long number() {
    return point.id().number();
  }

  String href() {
    return "/loops/" + PathSegment.of(point.tag());
  }

  /** Changes whenever something is recorded as fitted, so that one form is taken once. */
  String version() {
    String fitted =
        chain.stream().map(p -> Long.toString(p.placement())).collect(Collectors.joining("-"));
    return fitted + last.map(event -> "." + event.id()).orElse("");
  }

  /** Who recorded the last thing and when. */
  String lastChange() {
    return last.map(
            event ->
                "%s recorded %s here on %s,"
                    .formatted(
                        event.who(),
                        event.kind().matches("[aeiou].*")
                            ? "an " + event.kind()
                            : "a " + event.kind(),
                        SiteMoment.shown(event.enteredAt(), zone)))
        .orElse("Somebody else changed what is recorded here");
  }
}
