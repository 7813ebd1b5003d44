package loopwright.importing;

import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import org.jooq.DSLContext;

/** Points by their tags, recorded and planned, each with its site's clock. */
final class Tags {
  /** A point by its number, below zero while it is planned. */
  record Tagged(long number, String tag, ZoneId zone) {}

  private final Planning planning;
  private final Map<Long, Tagged> points = new HashMap<>();

  Tags(Planning planning) {
    this.planning = planning;
  }

  World.Key key(String tag) {
    return new World.Key(World.Thing.POINT, plant().tagKey(planning.sql, tag));
  }

  private Plant plant() {
    return planning.features.plant();
  }

  void planned(long number, String tag, ZoneId zone) {
    points.put(number, new Tagged(number, tag, zone));
  }

  /** The point that a cell names; empty when the cell is, or was complained of. */
  Optional<Tagged> named(RowCells row, String heading) {
    String tag = row.neededName(heading, "the tag of the point");
    if (tag.isEmpty()) {
      return Optional.empty();
    }
    Optional<World.Entry> entry = planning.world.find(key(tag)).or(() -> recorded(tag));
    if (entry.isEmpty()) {
      row.complain(
          heading,
          ImportProblem.NOT_THERE,
          "point",
          Shown.cell(tag),
          "Check the tag, or import the points first or together with this file.");
      return Optional.empty();
    }
    if (entry.get().refused()) {
      row.complainOfRow(ImportProblem.LEFT_UNREAD, "point " + tag + " (" + entry.get().row() + ")");
      return Optional.empty();
    }
    return Optional.ofNullable(points.get(entry.get().number()));
  }

  private Optional<World.Entry> recorded(String tag) {
    DSLContext sql = planning.sql;
    Optional<Point> point = plant().pointTagged(sql, tag);
    point.ifPresent(
        found -> {
          planning.world.recorded(key(tag), found.id().number());
          plant()
              .place(sql, found.id())
              .ifPresent(at -> planned(found.id().number(), found.tag(), at.site().zone()));
        });
    return planning.world.find(key(tag));
  }

  /** The tag of a point that was named before, else of one in the register. */
  String shown(long number) {
    Tagged known = points.get(number);
    return known == null
        ? planning.features.configuration().tag(planning.sql, number)
        : known.tag();
  }
}
