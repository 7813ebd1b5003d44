package loopwright.pack;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import loopwright.db.Database;
import loopwright.label.LabelBase;
import loopwright.label.LabelCode;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.outage.OutagePart;
import loopwright.outage.OutageState;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.AskedAddress;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** A pack's page: issuing revisions, what changed since, and its files. */
public final class PackPages implements Pages, OutagePart {
  private final Database database;
  private final Page page;
  private final Packs packs;
  private final LabelBase base;
  private final Supplier<UUID> register;

  /**
   * @param register identity of this database, carried by every file
   */
  public PackPages(
      Database database, Page page, Packs packs, LabelBase base, Supplier<UUID> register) {
    this.database = database;
    this.page = page;
    this.packs = packs;
    this.base = base;
    this.register = register;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/outages/{number}/pack", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.post("/outages/{number}/pack", Permission.PLAN, this::issue);
    routes.get("/outages/{number}/pack/{revision}.pdf", Permission.READ, this::pdf);
    routes.get("/outages/{number}/pack/{revision}.xlsx", Permission.READ, this::workbook);
    routes.get("/outages/{number}/pack/{revision}.csv", Permission.READ, this::csv);
  }

  record RevisionLine(
      int number, String by, String at, String note, String identity, String href, int loops) {}

  record ChangedLine(String tag, String href, String what) {}

  record Doubt(String tag, String href, String what) {}

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Outage outage = OutagePages.named(sql, packs.outages(), http);
          List<Revision> revisions = packs.revisions(sql, outage);
          List<LoopSheet> now = outage.isClosed() ? List.of() : packs.now(sql, outage);
          model.put("outage", outage);
          model.put("closed", outage.isClosed());
          model.put("revisions", revisions.stream().map(one -> line(sql, outage, one)).toList());
          model.put(
              "changed",
              revisions.isEmpty() || outage.isClosed()
                  ? List.of()
                  : packs.changedSince(sql, outage, revisions.get(0), now).stream()
                      .map(
                          one ->
                              new ChangedLine(
                                  one.tag(), href(one.tag()), String.join(", ", one.what())))
                      .toList());
          model.put(
              "emergent",
              packs.outages().emergent(sql, outage.id()).stream()
                  .map(
                      one ->
                          new ChangedLine(one.tag(), href(one.tag()), one.inWords(outage.zone())))
                  .toList());
          model.put("underway", outage.state() == OutageState.UNDER_WAY);
          model.put("doubts", doubts(now));
          model.put("head", packs.head(sql, outage));
          model.put("scope", packs.outages().scope(sql, outage.id()).size());
          return outage;
        });
    model.put("cautions", Packs.CAUTIONS);
    model.put("form", form);
    page.show(http, status, "pack/pack", model);
  }

  private static String href(String tag) {
    return "/loops/" + PathSegment.of(tag);
  }

  private RevisionLine line(DSLContext sql, Outage outage, Revision revision) {
    return new RevisionLine(
        revision.number(),
        revision.by(),
        SiteMoment.shown(revision.at(), outage.zone()),
        revision.note(),
        Identity.of(register.get(), revision).toString(),
        outage.href() + "/pack/" + revision.number(),
        packs.loops(sql, revision).size());
  }

  /** What the sheets would leave open, said before they are printed. */
  private static List<Doubt> doubts(List<LoopSheet> sheets) {
    List<Doubt> doubts = new ArrayList<>();
    for (LoopSheet sheet : sheets) {
      List<String> missing = new ArrayList<>();
      if (sheet.limits() == null) {
        missing.add("no tolerance profile is known, so no gaps and limits");
      }
      if (sheet.targetGap().isEmpty()) {
        missing.add("no gap is approved");
      }
      if (!missing.isEmpty()) {
        doubts.add(new Doubt(sheet.tag(), href(sheet.tag()), String.join("; ", missing)));
      }
    }
    return doubts;
  }

  private void issue(Context http) {
    Form form = Form.from(http);
    String note = form.read("note", text -> Text.needed("a note", text, 2000));
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    Outage outage = database.read(sql -> OutagePages.named(sql, packs.outages(), http));
    try {
      int number =
          database.write(
              People.act(actor, "issue work pack", note),
              tx -> packs.issue(tx, outage.id(), Long.parseLong(actor.id()), note));
      page.go(http, outage.href() + "/pack", "Revision " + number + " is issued.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  /** A revision with what belongs to it. */
  private record Asked(
      Outage outage, Revision revision, Identity identity, List<Revision.Loop> loops) {
    List<LoopSheet> sheets() {
      return loops.stream().map(Revision.Loop::sheet).toList();
    }

    String fileName() {
      return outage.number() + "-R" + revision.number();
    }
  }

  private Asked asked(Context http) {
    String typed = http.pathParam("revision");
    if (!typed.matches("\\d{1,6}")) {
      throw new NotFoundResponse();
    }
    return database.read(
        sql -> {
          Outage outage = OutagePages.named(sql, packs.outages(), http);
          Revision revision =
              packs.revisions(sql, outage).stream()
                  .filter(one -> one.number() == Integer.parseInt(typed))
                  .findFirst()
                  .orElseThrow(NotFoundResponse::new);
          return new Asked(
              outage, revision, Identity.of(register.get(), revision), packs.loops(sql, revision));
        });
  }

  private void pdf(Context http) {
    Asked asked = asked(http);
    String under = AskedAddress.of(http);
    byte[] bytes =
        PackDocument.of(
            asked.revision(),
            asked.identity(),
            asked.loops(),
            new PackDocument.Codes(
                point -> base.said(LabelCode.ofPoint(point), under),
                base.known(under).map(known -> known + asked.outage().href() + "/take-along")));
    file(http, "application/pdf", "inline", asked.fileName() + ".pdf", bytes);
  }

  private void workbook(Context http) {
    Asked asked = asked(http);
    byte[] bytes = PackWorkbook.of(asked.identity(), asked.revision().head(), asked.sheets());
    file(
        http,
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        "attachment",
        asked.fileName() + ".xlsx",
        bytes);
  }

  private void csv(Context http) {
    Asked asked = asked(http);
    byte[] bytes = PackCsv.of(asked.identity(), asked.sheets());
    file(http, "text/csv; charset=utf-8", "attachment", asked.fileName() + ".csv", bytes);
  }

  private static void file(Context http, String type, String how, String name, byte[] bytes) {
    http.contentType(type);
    http.header("Content-Disposition", how + "; filename=\"" + name + "\"");
    http.result(bytes);
  }

  @Override
  public Link link(DSLContext sql, Outage outage) {
    String sentence =
        packs
            .newest(sql, outage)
            .map(
                revision ->
                    "Revision %s, issued %s by %s."
                        .formatted(
                            revision.number(),
                            SiteMoment.shown(revision.at(), outage.zone()),
                            revision.by()))
            .orElse("No revision is issued yet.");
    return new Link("Work pack", outage.href() + "/pack", sentence);
  }
}
