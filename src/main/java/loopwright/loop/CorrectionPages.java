package loopwright.loop;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.plant.Plant;
import loopwright.problem.Refused;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/**
 * Corrects what is on record of a loop. The effects are shown first; the correction is recorded
 * when the same is sent again.
 */
public final class CorrectionPages implements Pages, Need.Source {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final PartFacts parts;
  private final Configuration configuration;
  private final Corrections corrections;
  private final CorrectionPreview previews;
  private final Disputes disputes;
  private final InstantSource clock;

  public CorrectionPages(
      Database database,
      Page page,
      Plant plant,
      PartFacts parts,
      Judging judging,
      Configuration configuration,
      Corrections corrections,
      CurvesTaken curves,
      Disputes disputes,
      InstantSource clock) {
    this.disputes = disputes;
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.parts = parts;
    this.configuration = configuration;
    this.corrections = corrections;
    this.previews = new CorrectionPreview(parts, judging, corrections, curves, clock);
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/correction", Permission.RECORD, this::open);
    routes.post("/loops/{tag}/correction", Permission.RECORD, this::record);
  }

  /** Disputes wait for a correction. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return disputes.needs(sql, now);
  }

  private Opened opened(DSLContext sql, String tag) {
    return Opened.read(sql, plant, parts, configuration, clock.instant(), tag);
  }

  private void open(Context http) {
    Opened opened = database.read(sql -> opened(sql, http.pathParam("tag")));
    Form form = Form.blank().at(opened.version());
    Form.fromQuery(http).everything().forEach((name, values) -> form.put(name, values.get(0)));
    show(http, 200, opened, form.at(opened.version()), Optional.empty());
  }

  private void show(
      Context http,
      int status,
      Opened opened,
      Form form,
      Optional<CorrectionPreview.Shown> preview) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("tag", opened.point().tag());
    model.put("href", opened.href());
    model.put("zone", opened.zone().getId());
    model.put("whats", CorrectionForm.whats());
    model.put("preview", preview.orElse(null));
    model.put("said", new CorrectionForm(form, parts, opened, clock.instant()).said());
    database.read(
        sql -> {
          List<Placed> ever = configuration.ofPoint(sql, opened.number());
          List<Placed> all = new ArrayList<>(ever);
          all.addAll(opened.chain());
          StayWords words = StayWords.of(sql, parts, all, opened.zone());
          model.put("slots", CorrectionForm.slots(opened, words, ever));
          model.put("stays", StayLines.of(ever, words, corrections.made(sql, ever), opened.href()));
          return model;
        });
    page.show(http, status, "loop/correction", model);
  }

  private void record(Context http) {
    Form form = Form.from(http);
    Opened opened = database.read(sql -> opened(sql, http.pathParam("tag")));
    if (form.stale(opened.version())) {
      showChanged(http, form);
      return;
    }
    CorrectionForm typed = new CorrectionForm(form, parts, opened, clock.instant());
    Optional<Correction> correction = database.read(typed::read);
    if (correction.isEmpty()) {
      show(http, 422, opened, form, Optional.empty());
      return;
    }
    try {
      if (typed.wasSeen()) {
        recordSeen(http, form, opened, correction.get());
      } else {
        CorrectionPreview.Shown preview =
            database.read(sql -> previews.of(sql, opened, correction.get()));
        show(http, 200, opened, form, Optional.of(preview));
      }
    } catch (Refused refused) {
      refuse(http, form, refused);
    }
  }

  private void recordSeen(Context http, Form form, Opened opened, Correction correction) {
    Actor actor = Actor.of(http);
    String reason = form.text("reason", CorrectionForm.LONGEST_REASON);
    Judging.Judged judged =
        database.write(
            new Act(
                Long.valueOf(actor.id()), actor.name(), actor.role().word(), "correction", reason),
            tx -> {
              configuration.holdStill(tx, opened.number(), correction.content());
              Opened now = opened(tx.sql(), opened.point().tag());
              if (form.stale(now.version())) {
                throw new Refused(LoopProblem.CHANGED_MEANWHILE, now.lastChange());
              }
              return corrections.correct(tx, correction);
            });
    page.go(
        http,
        opened.href(),
        "The record is corrected; the loop is judged: %s."
            .formatted(judged.judgement().verdict().word()));
  }

  private void refuse(Context http, Form form, Refused refused) {
    if (refused.problem() == LoopProblem.CHANGED_MEANWHILE) {
      showChanged(http, form);
      return;
    }
    form.complain(refused);
    Opened now = database.read(sql -> opened(sql, http.pathParam("tag")));
    show(http, 422, now, form.at(now.version()), Optional.empty());
  }

  private void showChanged(Context http, Form form) {
    Opened now = database.read(sql -> opened(sql, http.pathParam("tag")));
    form.complain(new Refused(LoopProblem.CHANGED_MEANWHILE, now.lastChange()));
    show(http, 409, now, form.at(now.version()), Optional.empty());
  }
}
