package loopwright.pack;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.outage.OutagePart;
import loopwright.outage.OutageProblem;
import loopwright.outage.ScopeLine;
import loopwright.outage.Work;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.sheet.Complaint;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Bringing filled sheets back: a report first, then loop by loop into the record. */
public final class ReturnPages implements Pages, OutagePart {
  private static final int NAME_CHARACTERS = 200;

  private final Database database;
  private final Page page;
  private final Returns returns;
  private final HeldFiles files = new HeldFiles();

  public ReturnPages(Database database, Page page, Returns returns) {
    this.database = database;
    this.page = page;
    this.returns = returns;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/outages/{number}/returns", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.post("/outages/{number}/returns", Permission.RECORD, this::look);
    routes.get("/outages/{number}/returns/{held}", Permission.RECORD, this::look);
    routes.post("/outages/{number}/returns/{held}", Permission.RECORD, this::keep);
    routes.post("/outages/{number}/say", Permission.RECORD, this::say);
  }

  record BackLine(
      String tag,
      String href,
      String outcome,
      String reason,
      String told,
      List<String> calibrations,
      String who,
      String at,
      String file) {}

  /**
   * @param said the last word on it; empty when nothing is said
   */
  record OpenLine(String choice, String tag, String href, String works, String said) {}

  private Outage outage(DSLContext sql, Context http) {
    return OutagePages.named(sql, returns.packs().outages(), http);
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Outage outage = outage(sql, http);
          List<Returned> all = new ArrayList<>(returns.packs().returns(sql, outage));
          Collections.reverse(all);
          model.put("outage", outage);
          model.put("closed", outage.isClosed());
          model.put("issued", returns.packs().newest(sql, outage).isPresent());
          model.put("back", all.stream().map(one -> back(outage, one)).toList());
          Map<Long, Returned> latest = returns.packs().latest(sql, outage);
          model.put(
              "open",
              returns.packs().outages().scope(sql, outage.id()).stream()
                  .map(line -> open(line, latest.get(line.point())))
                  .sorted(Comparator.comparing(line -> !line.said().isEmpty()))
                  .toList());
          return outage;
        });
    model.put("form", form);
    Map<String, String> outcomes = new LinkedHashMap<>();
    outcomes.put("", "choose");
    outcomes.put(Returned.NOT_DONE, Returned.NOT_DONE);
    outcomes.put(Returned.FAILED, Returned.FAILED);
    model.put("outcomes", outcomes);
    page.show(http, status, "pack/returns", model);
  }

  private static String href(String tag) {
    return "/loops/" + PathSegment.of(tag);
  }

  private static OpenLine open(ScopeLine line, @Nullable Returned last) {
    return new OpenLine(
        line.point() + ":" + Returns.mark(last),
        line.tag(),
        href(line.tag()),
        line.works().stream().map(Work::label).collect(Collectors.joining(", ")),
        last == null ? "" : last.outcome());
  }

  private static BackLine back(Outage outage, Returned returned) {
    return new BackLine(
        returned.tag(),
        href(returned.tag()),
        returned.outcome(),
        returned.reason(),
        returned.told(),
        Stream.of(returned.foundCalibration(), returned.leftCalibration())
            .filter(number -> !number.isEmpty())
            .toList(),
        returned.who(),
        SiteMoment.shown(returned.at(), outage.zone()),
        returned.fileName());
  }

  private void look(Context http) {
    Optional<String> held = held(http);
    if (held.isEmpty()) {
      Form form = Form.blank();
      form.complain(
          "file",
          http.method() == HandlerType.POST
              ? "Choose the filled workbook, or the CSV."
              : PackProblem.FORGOTTEN.sentence());
      show(http, http.method() == HandlerType.POST ? 422 : 404, form);
      return;
    }
    if (http.method() == HandlerType.POST) {
      page.go(http, database.read(sql -> outage(sql, http)).href() + "/returns/" + held.get());
    } else {
      showPlan(http, 200, held.get(), Form.blank());
    }
  }

  /** The file sent now, or the one that the address names. */
  private Optional<String> held(Context http) {
    if (http.method() != HandlerType.POST || http.pathParamMap().containsKey("held")) {
      String key = http.pathParam("held");
      return files.held(key).map(any -> key);
    }
    UploadedFile sent = http.uploadedFile("file");
    if (sent == null || sent.size() == 0) {
      return Optional.empty();
    }
    String name = sent.filename().substring(lastSlash(sent.filename()) + 1);
    return Optional.of(
        files.hold(name.substring(0, Math.min(NAME_CHARACTERS, name.length())), bytes(sent)));
  }

  private static int lastSlash(String name) {
    return Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\'));
  }

  private static byte[] bytes(UploadedFile file) {
    try (InputStream in = file.content()) {
      return in.readAllBytes();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  /** A problem with its place in columns of its own. */
  record ProblemLine(String row, String column, String sentence) {
    static ProblemLine of(Complaint complaint) {
      int place = complaint.message().indexOf(": ");
      return new ProblemLine(
          complaint.row() == 0 ? "" : Integer.toString(complaint.row()),
          complaint.column(),
          Text.capital(complaint.message().substring(place < 0 ? 0 : place + 2))
              + " ("
              + complaint.code()
              + ")");
    }
  }

  record PlanLine(
      String tag,
      String href,
      String fate,
      List<String> told,
      List<String> questions,
      List<ProblemLine> problems) {}

  private void showPlan(Context http, int status, String key, Form form) {
    HeldFiles.Held file = files.held(key).orElseThrow(() -> new Refused(PackProblem.FORGOTTEN));
    Map<String, Object> model = new HashMap<>();
    database.snapshot(
        sql -> {
          Outage outage = outage(sql, http);
          ReturnPlan plan = returns.plan(sql, outage, file.name(), file.bytes());
          model.put("outage", outage);
          model.put("file", file.name());
          model.put("problems", plan.problems().stream().map(ProblemLine::of).toList());
          model.put("loops", plan.loops().stream().map(ReturnPages::line).toList());
          model.put("asks", plan.count(ReturnPlan.Fate.ASK) > 0);
          model.put("keeps", plan.canKeep() && !outage.isClosed());
          model.put("sentence", sentence(plan));
          return outage;
        });
    model.put("held", key);
    model.put("form", form);
    page.show(http, status, "pack/returned", model);
  }

  private static PlanLine line(ReturnPlan.LoopPlan loop) {
    return new PlanLine(
        loop.tag(),
        href(loop.tag()),
        loop.fate().word(),
        loop.told(),
        loop.questions(),
        loop.problems().stream().map(ProblemLine::of).toList());
  }

  private static String sentence(ReturnPlan plan) {
    List<String> parts = new ArrayList<>();
    for (ReturnPlan.Fate fate : ReturnPlan.Fate.values()) {
      long count = plan.count(fate);
      if (count > 0) {
        parts.add(count + (count == 1 ? " loop " : " loops ") + fate.word());
      }
    }
    return parts.isEmpty()
        ? "No loop of this pack could be found in the file."
        : "Nothing is written yet. " + String.join("; ", parts) + ".";
  }

  private void keep(Context http) {
    Form form = Form.from(http);
    String key = http.pathParam("held");
    Optional<HeldFiles.Held> file = files.held(key);
    if (file.isEmpty()) {
      form.complain(new Refused(PackProblem.FORGOTTEN));
      show(http, 404, form);
      return;
    }
    Outage outage = database.read(sql -> outage(sql, http));
    boolean confirmed = form.chosen("confirmed", "yes");
    ReturnPlan plan =
        database.read(sql -> returns.plan(sql, outage, file.get().name(), file.get().bytes()));
    int kept = 0;
    for (ReturnPlan.LoopPlan loop : plan.loops()) {
      boolean takes = loop.fate() == ReturnPlan.Fate.KEEP || loop.fate() == ReturnPlan.Fate.ASK;
      if (takes && keep(http, outage, plan.file(), loop.tag(), confirmed, form)) {
        kept++;
      }
    }
    if (form.ok()) {
      page.go(
          http,
          outage.href() + "/returns",
          kept == 0
              ? "Nothing new was in this file."
              : kept + (kept == 1 ? " loop is" : " loops are") + " kept; look them over.");
    } else {
      showPlan(http, 422, key, form);
    }
  }

  private boolean keep(
      Context http, Outage outage, FilledFile file, String tag, boolean confirmed, Form form) {
    try {
      database.write(
          People.act(Actor.of(http), "bring work pack back", outage.number() + ", " + tag),
          tx -> returns.keep(tx, outage, file, tag, confirmed));
      return true;
    } catch (Refused refused) {
      form.complain(refused);
      return false;
    }
  }

  private void say(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> outage(sql, http));
    String outcome =
        form.read(
            "outcome",
            word ->
                Stream.of(Returned.NOT_DONE, Returned.FAILED)
                    .filter(word::equals)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("Choose not done or failed.")));
    String reason = form.read("reason", text -> Text.needed("the reason", text, 2000));
    List<String[]> chosen =
        form.every("loop").stream()
            .filter(text -> text.matches("\\d{1,15}:[0-9a-f-]{1,12}"))
            .map(text -> text.split(":", 2))
            .toList();
    if (chosen.isEmpty()) {
      form.complain(new Refused(OutageProblem.NO_LOOP));
    }
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    try {
      database.write(
          People.act(Actor.of(http), "say outcome", reason),
          tx -> {
            chosen.forEach(
                one ->
                    returns.say(tx, outage.id(), Long.parseLong(one[0]), one[1], outcome, reason));
            return chosen;
          });
      page.go(http, outage.href() + "/returns", "Kept.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  @Override
  public Link link(DSLContext sql, Outage outage) {
    Map<Long, Returned> latest = returns.packs().latest(sql, outage);
    long done = latest.values().stream().filter(Returned::isDone).count();
    return new Link(
        "What came back",
        outage.href() + "/returns",
        latest.isEmpty()
            ? "Nothing came back yet."
            : "%s done, %s not done or failed."
                .formatted(Long.toString(done), Long.toString(latest.size() - done)));
  }
}
