package loopwright.calibration;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.plant.Plant;
import loopwright.plant.SiteClocks;
import loopwright.web.Actor;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** The list of calibrations, newest first, and what the reader has begun to type. */
public final class CalibrationListPages implements Pages {
  private static final int PAGE = 50;
  private static final List<String> VERDICTS =
      List.of("conforms", "does not conform", CalibrationStore.NO_CURVE);

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Calibrations calibrations;
  private final List<RecordPanel> panels;
  private final DraftStore drafts = new DraftStore();

  /**
   * @param panels that have a word or two on each record
   */
  public CalibrationListPages(
      Database database,
      Page page,
      Plant plant,
      Calibrations calibrations,
      List<RecordPanel> panels) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.calibrations = calibrations;
    this.panels = List.copyOf(panels);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/calibrations", Permission.READ, this::list);
  }

  record DraftLine(String tag, String href, String savedAt) {

    static DraftLine of(DraftStore.Waiting draft, String savedAt) {
      String tag = draft.tag();
      return new DraftLine(
          tag == null ? "bench set" : draft.parts() == null ? tag : tag + ", part stood in",
          CurveAddress.of(tag, draft.parts()),
          savedAt);
    }
  }

  record Chip(String label, String href, boolean on) {}

  private void list(Context http) {
    UnitsShown units = UnitsShown.of(http);
    String verdict = String.valueOf(http.queryParam("verdict"));
    String before = http.queryParam("before");
    List<Calibrated> found =
        database.read(
            sql ->
                calibrations.store().latest(sql, which(verdict).and(older(sql, before)), PAGE + 1));
    List<Calibrated> shown = found.size() > PAGE ? found.subList(0, PAGE) : found;
    Map<String, Object> model = new HashMap<>();
    model.put("rows", database.read(sql -> CalibrationLines.rows(sql, plant, shown, units)));
    model.put("marks", marks(shown));
    model.put("drafts", database.read(sql -> drafts(sql, Actor.of(http))));
    model.put("chips", chips(verdict));
    model.put(
        "older",
        found.size() > PAGE ? address(verdict) + "before=" + shown.get(PAGE - 1).number() : null);
    model.put("newest", before == null ? null : address(verdict));
    page.show(http, "calibration/list", model);
  }

  /** What other features have to say of each, by the record's number. */
  private Map<String, String> marks(List<Calibrated> shown) {
    Map<Long, String> byId = new HashMap<>();
    database.read(
        sql -> {
          panels.forEach(panel -> byId.putAll(panel.marks(sql, shown)));
          return byId;
        });
    return shown.stream()
        .collect(Collectors.toMap(Calibrated::number, c -> byId.getOrDefault(c.id(), "")));
  }

  private static Condition which(String verdict) {
    return VERDICTS.contains(verdict) ? CalibrationStore.verdict(verdict) : DSL.noCondition();
  }

  private Condition older(DSLContext sql, @Nullable String before) {
    if (before == null) {
      return DSL.noCondition();
    }
    Calibrated last = calibrations.find(sql, before).orElseThrow(NotFoundResponse::new);
    return CalibrationStore.before(last.measuredAt(), last.id());
  }

  /** Curves the reader has begun to type. */
  private List<DraftLine> drafts(DSLContext sql, Actor actor) {
    List<DraftStore.Waiting> begun = drafts.of(sql, Long.parseLong(actor.id()));
    SiteClocks clocks =
        plant.clocks(
            sql, begun.stream().map(DraftStore.Waiting::point).filter(Objects::nonNull).toList());
    return begun.stream()
        .map(draft -> DraftLine.of(draft, clocks.shown(draft.savedAt(), draft.point())))
        .toList();
  }

  private static List<Chip> chips(String verdict) {
    List<Chip> chips = new ArrayList<>();
    chips.add(new Chip("all", "/calibrations", !VERDICTS.contains(verdict)));
    for (String word : VERDICTS) {
      chips.add(
          new Chip(word, "/calibrations?verdict=" + word.replace(" ", "+"), word.equals(verdict)));
    }
    return chips;
  }

  private static String address(String verdict) {
    return VERDICTS.contains(verdict)
        ? "/calibrations?verdict=" + verdict.replace(" ", "+") + "&"
        : "/calibrations?";
  }
}
