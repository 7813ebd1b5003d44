package loopwright.calibration;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import loopwright.plant.Plant;
import loopwright.plant.SiteClocks;
import loopwright.time.SiteMoment;
import loopwright.web.PathSegment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Calibrations as lines of a list. */
final class CalibrationLines {
  private CalibrationLines() {}

  record Row(
      String href,
      String number,
      String day,
      String tag,
      @Nullable String tagHref,
      String stage,
      String verdict,
      String said) {}

  /** Lines of a list, each moment by the clock of its site. */
  static List<Row> rows(DSLContext sql, Plant plant, List<Calibrated> all, UnitsShown units) {
    SiteClocks clocks = clocks(sql, plant, all);
    return all.stream().map(c -> row(c, clocks.shown(c.measuredAt(), c.point()), units)).toList();
  }

  static SiteClocks clocks(DSLContext sql, Plant plant, List<Calibrated> all) {
    return plant.clocks(sql, all.stream().map(Calibrated::point).filter(Objects::nonNull).toList());
  }

  static Row row(Calibrated c, ZoneId zone, UnitsShown units) {
    return row(c, SiteMoment.shown(c.measuredAt(), zone), units);
  }

  private static Row row(Calibrated c, String taken, UnitsShown units) {
    return new Row(
        "/calibrations/" + c.number(),
        c.number(),
        taken,
        c.place(),
        c.tag() == null ? null : "/loops/" + PathSegment.of(c.tag()),
        c.stage().word(),
        c.outcome(),
        said(c, new Figures(units)));
  }

  static String said(Calibrated c, Figures figures) {
    if (c.noCurveReason() != null) {
      return c.noCurveReason();
    }
    List<String> words = new ArrayList<>();
    c.numbers().asf().ifPresent(asf -> words.add("ASF " + figures.slope(asf)));
    c.numbers().worstIsfPercent().ifPresent(p -> words.add("worst ISF " + Figures.percent(p)));
    c.numbers().maxDsl().ifPresent(dsl -> words.add("DSL " + figures.deviation(dsl)));
    String trend = c.numbers().isfTrend();
    if (trend != null && !trend.equals("no trend")) {
      words.add("ISF " + trend + " along the gap");
    }
    return String.join(", ", words);
  }
}
