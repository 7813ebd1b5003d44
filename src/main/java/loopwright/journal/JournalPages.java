package loopwright.journal;

import io.javalin.http.Context;
import java.io.IOException;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import loopwright.db.Database;
import loopwright.db.Fact;
import loopwright.problem.Refused;
import loopwright.time.SiteMoment;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.WebProblem;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** The record: who changed what, when and why, entry by entry. */
public final class JournalPages implements Pages {
  private static final int CHANGES_A_PAGE = 50;
  private static final int FACTS_A_PAGE = 100;

  private final Database database;
  private final Page page;
  private final Supplier<ZoneId> zone;
  private final RecordStore store = new RecordStore();

  /**
   * @param zone whose clock moments are shown on
   */
  public JournalPages(Database database, Page page, Supplier<ZoneId> zone) {
    this.database = database;
    this.page = page;
    this.zone = zone;
  }

  @Override
  public void mount(Routes routes) {
    routes.get(RecordFilter.PATH, Permission.READ, this::list);
    routes.get(RecordFilter.PATH + "/{seq}", Permission.READ, this::entry);
  }

  /** A change in the list. */
  record Row(long seq, String at, String actor, String role, String what, String reason) {}

  private void list(Context http) {
    Form form = Form.fromQuery(http);
    RecordFilter filter = RecordFilter.of(form);
    ZoneId shownIn = zone.get();
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("filter", filter);
    model.put("zone", shownIn.getId());
    database.<Void>read(
        sql -> {
          fillList(sql, filter, shownIn, model);
          return null;
        });
    page.show(http, form.ok() ? 200 : 422, "journal/list", model);
  }

  private void fillList(
      DSLContext sql, RecordFilter filter, ZoneId shownIn, Map<String, Object> model) {
    List<RecordStore.Listed> found = store.list(sql, filter, shownIn, CHANGES_A_PAGE + 1);
    boolean more = found.size() > CHANGES_A_PAGE;
    List<RecordStore.Listed> shown = more ? found.subList(0, CHANGES_A_PAGE) : found;
    model.put("rows", shown.stream().map(change -> row(change, shownIn)).toList());
    model.put("older", more ? filter.olderThan(shown.get(CHANGES_A_PAGE - 1).position()) : null);
    model.put("newest", filter.before().isPresent() ? filter.newest() : null);
    model.put("head", store.head(sql));
    model.put("people", choices("everybody", store.actors(sql)));
    model.put("kinds", choices("every kind", store.kinds(sql)));
  }

  private static Row row(RecordStore.Listed change, ZoneId zone) {
    return new Row(
        change.seq(),
        SiteMoment.shown(change.at(), zone),
        change.actor(),
        change.role(),
        change.what(),
        change.reason());
  }

  private static Map<String, String> choices(String all, List<String> words) {
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", all);
    words.forEach(word -> choices.put(word, word));
    return choices;
  }

  /** An entry on its page; the hashes in hex. */
  record Shown(
      long seq,
      long change,
      String at,
      String zone,
      String actor,
      String role,
      String what,
      String reason,
      List<Long> parts,
      String leafHash,
      String chainHash,
      int facts,
      int from,
      List<Told> told) {

    public int to() {
      return from + told.size();
    }

    public @Nullable Integer nextFrom() {
      return to() < facts ? to() : null;
    }

    public @Nullable Integer previousFrom() {
      return from > 0 ? Math.max(0, from - FACTS_A_PAGE) : null;
    }

    /** Enough to compare two hashes by eye. */
    public String shortHash() {
      return chainHash.substring(0, 12);
    }
  }

  private void entry(Context http) {
    String typed = http.pathParam("seq");
    long seq = number(typed);
    int from = (int) Math.min(number(String.valueOf(http.queryParam("from"))), Integer.MAX_VALUE);
    Map<String, Object> model = new HashMap<>();
    database.<Void>read(
        sql -> {
          StoredEntry stored =
              store
                  .entry(sql, seq)
                  .orElseThrow(() -> new Refused(WebProblem.MISSING, "entry", typed));
          model.put("entry", shown(sql, stored, from));
          model.put("head", store.head(sql));
          return null;
        });
    page.show(http, "journal/entry", model);
  }

  private static long number(String typed) {
    return typed.matches("\\d{1,18}") ? Long.parseLong(typed) : 0;
  }

  private Shown shown(DSLContext sql, StoredEntry stored, int from) {
    ZoneId shownIn = zone.get();
    List<Fact> facts = facts(stored);
    int begin = Math.min(from, facts.size());
    int end = Math.min(begin + FACTS_A_PAGE, facts.size());
    return new Shown(
        stored.seq(),
        stored.change(),
        SiteMoment.shown(stored.at(), shownIn),
        shownIn.getId(),
        stored.made().actorName(),
        stored.made().actorRole(),
        stored.made().what(),
        stored.made().reason(),
        store.parts(sql, stored.change()),
        HexFormat.of().formatHex(stored.leafHash()),
        HexFormat.of().formatHex(stored.chainHash()),
        facts.size(),
        begin,
        Telling.of(sql, facts.subList(begin, end), shownIn));
  }

  private static List<Fact> facts(StoredEntry stored) {
    try {
      return EntryBody.read(stored.seq(), stored.body()).facts();
    } catch (IOException noEntry) {
      throw new IllegalStateException("Entry " + stored.seq() + " can't be read.", noEntry);
    }
  }
}
