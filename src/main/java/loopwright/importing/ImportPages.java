package loopwright.importing;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.db.Act;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.sheet.Complaint;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jspecify.annotations.Nullable;

/** Files are chosen, their plan is looked at, and exactly that plan is written. */
public final class ImportPages implements Pages {
  private static final int ROWS_A_PAGE = 200;
  private static final int MOST_PROBLEMS = 500;

  private final Importing importing;
  private final Page page;

  public ImportPages(Importing importing, Page page) {
    this.importing = importing;
    this.page = page;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/import", Permission.PLAN, http -> choose(http, 200, Form.blank()));
    routes.post("/import", Permission.PLAN, this::plan);
    routes.get("/import/{plan}", Permission.PLAN, this::show);
    routes.post("/import/{plan}", Permission.PLAN, this::run);
    routes.post("/import/{plan}/again", Permission.PLAN, this::again);
  }

  private void choose(Context http, int status, Form form) {
    page.show(
        http,
        status,
        "importing/choose",
        Map.of("form", form, "kinds", Kinds.ALL, "marks", marks()));
  }

  private void plan(Context http) {
    Form form = Form.from(http);
    List<ImportFile> files =
        http.uploadedFiles("files").stream()
            .filter(file -> !file.filename().isBlank())
            .map(ImportPages::file)
            .toList();
    try {
      ImportPlan plan = importing.plan(files, DecimalMark.named(form.typed("mark")));
      page.go(http, address(plan.id()));
    } catch (Refused refused) {
      form.complain("files", String.valueOf(refused.getMessage()));
      choose(http, 422, form);
    }
  }

  private static ImportFile file(UploadedFile upload) {
    try (InputStream in = upload.content()) {
      return new ImportFile(lastPart(upload.filename()), in.readAllBytes());
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  /** Some browsers send the whole path. */
  private static String lastPart(String name) {
    return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  }

  private static String address(String plan) {
    return "/import/" + plan;
  }

  private void show(Context http) {
    show(http, 200, Form.blank());
  }

  private void show(Context http, int status, Form form) {
    String id = http.pathParam("plan");
    try {
      ImportPlan plan = importing.planned(id);
      Map<String, Object> model = new HashMap<>();
      model.put("form", form);
      model.put("plan", shown(plan, http));
      model.put("receipt", importing.receipt(id).orElse(null));
      page.show(http, status, "importing/plan", model);
    } catch (Refused forgotten) {
      Form fresh = Form.blank();
      fresh.complain(forgotten);
      choose(http, 404, fresh);
    }
  }

  private void run(Context http) {
    Form form = Form.from(http);
    String id = http.pathParam("plan");
    String reason = form.typed("reason").strip();
    try {
      if (reason.isEmpty() && importing.receipt(id).isEmpty()) {
        form.complain("reason", ImportProblem.NO_REASON.sentence());
        show(http, 422, form);
        return;
      }
      Actor actor = Actor.of(http);
      if (importing.planned(id).touchesFamilies() && !actor.may(Permission.DECIDE)) {
        throw new Refused(ImportProblem.NEEDS_ENGINEER);
      }
      importing.run(id, why -> act(actor, why), reason);
      page.go(http, address(id));
    } catch (Refused refused) {
      form.complain(refused);
      boolean moved = refused.problem() == ImportProblem.MOVED_ON;
      if (moved) {
        form.put("moved", "yes");
      }
      show(http, moved ? 409 : 422, form);
    }
  }

  private static Act act(Actor actor, String reason) {
    return new Act(
        Long.valueOf(actor.id()), actor.name(), actor.role().word(), Importing.ACT, reason);
  }

  private void again(Context http) {
    try {
      page.go(http, address(importing.planAgain(http.pathParam("plan")).id()));
    } catch (Refused forgotten) {
      Form form = Form.blank();
      form.complain(forgotten);
      choose(http, 404, form);
    }
  }

  /** A filter of the rows. */
  record Chip(String label, int count, String href, boolean on) {}

  /** A problem whose place stands in columns of its own. */
  record Problem(String file, String row, String column, String sentence) {
    static Problem of(Complaint complaint) {
      String row = complaint.row() == 0 ? "" : String.valueOf(complaint.row());
      int place = complaint.message().indexOf(": ");
      String sentence = complaint.message().substring(place < 0 ? 0 : place + 2);
      String capital = Text.capital(sentence);
      return new Problem(
          complaint.file(), row, complaint.column(), capital + " (" + complaint.code() + ")");
    }
  }

  /** What the page shows of a plan. */
  record Shown(
      ImportPlan plan,
      String next,
      String sentence,
      List<Chip> chips,
      List<RowFate> rows,
      boolean hasChanges,
      @Nullable String earlier,
      @Nullable String later,
      String range,
      int moreProblems) {

    public List<Problem> problems() {
      return plan.problems().stream().limit(MOST_PROBLEMS).map(Problem::of).toList();
    }
  }

  private static Shown shown(ImportPlan plan, Context http) {
    Optional<Fate> only =
        Stream.of(Fate.values())
            .filter(fate -> fate.word().equals(http.queryParam("fate")))
            .findFirst();
    List<RowFate> rows =
        plan.rows().stream().filter(row -> only.isEmpty() || row.fate() == only.get()).toList();
    int from = Math.min(from(http), Math.max(0, rows.size() - 1));
    int to = Math.min(from + ROWS_A_PAGE, rows.size());
    String path = address(plan.id());
    String filter = only.map(fate -> "fate=" + fate.word() + "&").orElse("");
    return new Shown(
        plan,
        path,
        sentence(plan),
        chips(plan, path, only),
        rows.subList(from, to),
        rows.subList(from, to).stream().anyMatch(row -> !row.changes().isEmpty()),
        from == 0 ? null : path + "?" + filter + "from=" + Math.max(0, from - ROWS_A_PAGE),
        to == rows.size() ? null : path + "?" + filter + "from=" + to,
        rows.isEmpty() ? "no rows" : "rows %s to %s of %s".formatted(from + 1, to, rows.size()),
        plan.problemCount() - Math.min(MOST_PROBLEMS, plan.problems().size()));
  }

  private static int from(Context http) {
    String typed = http.queryParam("from");
    return typed == null || !typed.matches("\\d{1,9}") ? 0 : Integer.parseInt(typed);
  }

  private static List<Chip> chips(ImportPlan plan, String path, Optional<Fate> only) {
    List<Chip> chips = new ArrayList<>();
    chips.add(new Chip("all", plan.rows().size(), path, only.isEmpty()));
    for (Fate fate : List.of(Fate.REFUSED, Fate.CHANGED, Fate.ADDED, Fate.UNCHANGED)) {
      int count = (int) plan.rows().stream().filter(row -> row.fate() == fate).count();
      boolean on = only.filter(fate::equals).isPresent();
      chips.add(new Chip(fate.word(), count, path + "?fate=" + fate.word(), on));
    }
    return chips;
  }

  private static String sentence(ImportPlan plan) {
    RowCounts counts = plan.counts();
    if (!plan.isGood()) {
      return "Nothing was written, and nothing will be until every problem is mended: "
          + count(plan.problemCount(), "problem")
          + ".";
    }
    if (counts.toWrite() == 0) {
      return "Everything in these files is in the register already. There is nothing to write.";
    }
    return "Nothing is written yet. This would add %s and change %s; %s would stay as they are."
        .formatted(
            count(counts.added(), "row"),
            count(counts.changed(), "row"),
            count(counts.unchanged(), "row"));
  }

  static String count(int number, String what) {
    return String.format(Locale.ROOT, "%,d %s%s", number, what, number == 1 ? "" : "s");
  }

  private static Map<String, String> marks() {
    Map<String, String> marks = new LinkedHashMap<>();
    marks.put("", "as the files show");
    marks.put("point", "point, as in 4.5");
    marks.put("comma", "comma, as in 4,5");
    return marks;
  }
}
