package loopwright.search;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.db.Database;
import loopwright.label.LabelBase;
import loopwright.label.LabelCode;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.register.Component;
import loopwright.register.PartRow;
import loopwright.register.PartSearch;
import loopwright.register.Register;
import loopwright.web.AskedAddress;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** Finds a tag or a serial from the box on every page; an exact hit goes straight there. */
public final class FindPages implements Pages {
  private static final int MOST = 40;
  private static final int LONGEST = 200;

  /** What a label of ours says when it is scanned into the box. */
  private static final Pattern ADDRESS = Pattern.compile(".*(/parts/\\d+|/loops/[^/?#\\s]+)");

  /** The short address on a label; that of another register means another part. */
  private static final Pattern LABEL = Pattern.compile("(?i)https?://.*/c/[0-9A-Za-z]+");

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final PartSearch search;
  private final LabelBase base;

  public FindPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      PartSearch search,
      LabelBase base) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.search = search;
    this.base = base;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/find", Permission.READ, this::find);
  }

  private void find(Context http) {
    String asked = Optional.ofNullable(http.queryParam("q")).orElse("").strip();
    String q = asked.substring(0, Math.min(asked.length(), LONGEST));
    if (LABEL.matcher(q).matches()) {
      page.go(http, base.path(q, AskedAddress.of(http)));
      return;
    }
    Optional<String> exact = q.isEmpty() ? Optional.empty() : database.read(sql -> exact(sql, q));
    if (exact.isPresent()) {
      page.go(http, exact.get());
      return;
    }
    page.show(http, "search/find", database.read(sql -> held(sql, q)));
  }

  private Optional<String> exact(DSLContext sql, String q) {
    Matcher address = ADDRESS.matcher(q);
    if (address.matches()) {
      return Optional.of(address.group(1));
    }
    Optional<Point> point = plant.pointTagged(sql, q);
    List<Component> parts = register.labelled(sql, q);
    if (point.isEmpty() && parts.isEmpty() && LabelCode.looksLikeOne(q)) {
      return Optional.of("/c/" + PathSegment.of(q));
    }
    if (point.isPresent() && parts.isEmpty()) {
      return point.map(found -> "/loops/" + PathSegment.of(found.tag()));
    }
    return point.isEmpty() && parts.size() == 1
        ? Optional.of("/parts/" + parts.get(0).id().number())
        : Optional.empty();
  }

  private Map<String, Object> held(DSLContext sql, String q) {
    List<Point> points = q.isEmpty() ? List.of() : plant.pointsHolding(sql, q, MOST + 1);
    List<PartRow> parts = q.isEmpty() ? List.of() : search.holding(sql, q, MOST + 1);
    Map<String, Object> model = new HashMap<>();
    model.put("q", q);
    model.put("points", points.stream().limit(MOST).toList());
    model.put("parts", parts.stream().limit(MOST).toList());
    model.put("morePoints", points.size() > MOST);
    model.put("moreParts", parts.size() > MOST);
    return model;
  }
}
