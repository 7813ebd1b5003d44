package loopwright.fieldcheck;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointPlace;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.PathSegment;
import org.jooq.DSLContext;

/** The loop whose page a form was opened from, on its site's clock. */
record OpenedLoop(Point point, ZoneId zone) {

  static OpenedLoop of(DSLContext sql, Plant plant, Context http) {
    Point point = plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
    PointPlace place = plant.place(sql, point.id()).orElseThrow(NotFoundResponse::new);
    return new OpenedLoop(point, place.site().zone());
  }

  long number() {
    return point.id().number();
  }

  public String tag() {
    return point.tag();
  }

  public String href() {
    return hrefOf(tag());
  }

  static String hrefOf(String tag) {
    return "/loops/" + PathSegment.of(tag);
  }

  public String zoneName() {
    return zone.getId();
  }

  /** A form begun: now, by whoever is signed in. */
  Form fresh(Instant now, Actor actor) {
    List<String> moment = List.of(SiteMoment.shown(now, zone).split(" "));
    return Form.of(Map.of("on", moment.get(0), "time", moment.get(1), "taken-by", actor.name()));
  }
}
