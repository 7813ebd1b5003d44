package loopwright.loop;

import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.matching.PartView;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointPlace;
import loopwright.time.SiteMoment;
import loopwright.web.PathSegment;
import org.jooq.DSLContext;

/** A loop as the form was opened on it. */
record Opened(
    Point point,
    ZoneId zone,
    List<Placed> chain,
    Map<Long, PartView> views,
    Map<Slot, String> texts,
    Optional<LoopEvent> last) {
  static Opened read(
      DSLContext sql,
      Plant plant,
      PartFacts parts,
      Configuration configuration,
      Instant now,
      String tag) {
    Point point = plant.pointTagged(sql, tag).orElseThrow(NotFoundResponse::new);
    ZoneId zone =
        plant
            .place(sql, point.id())
            .map(PointPlace::site)
            .orElseThrow(NotFoundResponse::new)
            .zone();
    List<Placed> chain = configuration.at(sql, point.id().number(), now);
    List<Long> components =
        chain.stream().flatMap(p -> p.content().component().stream().boxed()).toList();
    Map<Long, PartView> views = parts.parts(sql, components);
    Optional<LoopEvent> last =
        configuration.events(sql, point.id().number()).stream()
            .filter(event -> !event.kind().equals(WithoutLeave.NOT_RECORDED))
            .max(Comparator.comparingLong(LoopEvent::id));
    return new Opened(point, zone, chain, views, TypedPart.texts(sql, parts, chain, views), last);
  }

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
