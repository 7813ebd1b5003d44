package loopwright.outage;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
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

/** Which loops an outage takes: what the record suggests, with reasons, taken in and out. */
public final class ScopePages implements Pages {
  private final Database database;
  private final Page page;
  private final Outages outages;
  private final Suggestions suggestions;
  private final InstantSource clock;

  public ScopePages(
      Database database, Page page, Outages outages, Suggestions suggestions, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.outages = outages;
    this.suggestions = suggestions;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/outages/{number}/scope", Permission.READ, http -> show(http, 200, blank()));
    routes.post("/outages/{number}/scope", Permission.PLAN, this::settle);
  }

  private static Form blank() {
    return Form.blank().put("work", Work.usual().stream().map(Work::word).toList());
  }

  record ReasonLine(String kind, String sentence, String href) {}

  record Row(
      long point,
      String tag,
      String href,
      String machine,
      String verdict,
      List<ReasonLine> reasons,
      boolean taken,
      String works,
      String settled) {}

  record Chip(String label, String href, boolean on, int count) {}

  record WorkChoice(String word, String label, boolean chosen) {}

  /** What the address asks for. */
  private record Filter(String kind, String holding) {
    static Filter of(Context http) {
      Form asked = Form.fromQuery(http);
      return new Filter(asked.typed("show"), asked.typed("holding").strip());
    }

    boolean takes(Row row) {
      String text = (row.tag() + " " + row.machine()).toLowerCase(Locale.ROOT);
      return isShown(row) && text.contains(holding.toLowerCase(Locale.ROOT));
    }

    private boolean isShown(Row row) {
      return switch (kind) {
        case "all" -> true;
        case "taken" -> row.taken();
        case "" -> row.taken() || !row.reasons().isEmpty();
        default -> row.reasons().stream().anyMatch(reason -> reason.kind().equals(kind));
      };
    }

    String query(String otherKind) {
      return "?show="
          + URLEncoder.encode(otherKind, StandardCharsets.UTF_8)
          + (holding.isEmpty()
              ? ""
              : "&holding=" + URLEncoder.encode(holding, StandardCharsets.UTF_8));
    }
  }

  private void show(Context http, int status, Form form) {
    Filter filter = Filter.of(http);
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Outage outage = OutagePages.named(sql, outages, http);
          List<Row> all = rows(sql, outage);
          model.put("outage", outage);
          model.put("closed", outage.isClosed());
          model.put("rows", all.stream().filter(filter::takes).toList());
          model.put("taken", all.stream().filter(Row::taken).count());
          model.put("gone", gone(sql, outage, all));
          model.put("chips", chips(outage, all, filter));
          return outage;
        });
    model.put("here", filter.query(filter.kind()));
    model.put("kind", filter.kind());
    model.put("holding", filter.holding());
    model.put(
        "works",
        Stream.of(Work.values())
            .map(
                work -> new WorkChoice(work.word(), work.label(), form.chosen("work", work.word())))
            .toList());
    model.put("form", form);
    page.show(http, status, "outage/scope", model);
  }

  private List<Row> rows(DSLContext sql, Outage outage) {
    Map<Long, ScopeLine> settled = new HashMap<>();
    outages.everSettled(sql, outage.id()).forEach(line -> settled.put(line.point(), line));
    LocalDate today = SiteMoment.day(clock.instant(), outage.zone());
    return suggestions.of(sql, outages.loops(sql, outage), outage.ends(), today).stream()
        .map(one -> row(one, settled.get(one.loop().point().id().number())))
        .toList();
  }

  private static Row row(Suggestion suggestion, @Nullable ScopeLine line) {
    String tag = suggestion.loop().point().tag();
    return new Row(
        suggestion.loop().point().id().number(),
        tag,
        "/loops/" + PathSegment.of(tag),
        suggestion.loop().train() + ", " + suggestion.loop().machine(),
        suggestion.verdict(),
        suggestion.reasons().stream()
            .map(reason -> new ReasonLine(reason.kind().word(), reason.sentence(), reason.href()))
            .toList(),
        line != null && line.taken(),
        line == null
            ? ""
            : line.works().stream().map(Work::label).collect(Collectors.joining(", ")),
        line == null
            ? ""
            : (line.taken() ? "taken in" : "left out")
                + " by "
                + line.who()
                + ": "
                + line.reason());
  }

  /** Loops of the scope that are no longer in use on these trains. */
  private List<String> gone(DSLContext sql, Outage outage, List<Row> rows) {
    Set<Long> there = rows.stream().map(Row::point).collect(Collectors.toSet());
    return outages.scope(sql, outage.id()).stream()
        .filter(line -> !there.contains(line.point()))
        .map(ScopeLine::tag)
        .toList();
  }

  private static List<Chip> chips(Outage outage, List<Row> rows, Filter filter) {
    Map<String, String> kinds = new LinkedHashMap<>();
    kinds.put("", "suggested and taken");
    kinds.put("taken", "taken");
    Stream.of(Suggestion.Kind.values()).forEach(kind -> kinds.put(kind.word(), kind.word()));
    kinds.put("all", "all loops");
    List<Chip> chips = new ArrayList<>();
    kinds.forEach(
        (kind, label) -> {
          Filter other = new Filter(kind, filter.holding());
          int count = (int) rows.stream().filter(other::takes).count();
          chips.add(
              new Chip(
                  label,
                  outage.href() + "/scope" + filter.query(kind),
                  kind.equals(filter.kind()),
                  count));
        });
    return chips;
  }

  private void settle(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> OutagePages.named(sql, outages, http));
    boolean out = form.typed("do").equals("out");
    List<Long> points =
        form.every("loop").stream()
            .filter(text -> text.matches("\\d{1,15}"))
            .map(Long::valueOf)
            .toList();
    Set<Work> works = EnumSet.noneOf(Work.class);
    form.every("work").forEach(word -> Work.named(word).ifPresent(works::add));
    String typed = form.typed("reason").strip();
    try {
      String reason =
          Text.needed(out ? "why they are left out" : "why they are taken", typed, 2000);
      database.write(
          People.act(Actor.of(http), out ? "take out of outage" : "take into outage", reason),
          tx -> {
            if (out) {
              outages.leaveOut(tx, outage.id(), points, reason);
            } else {
              outages.refuseEmergent(tx.sql(), outages.one(tx.sql(), outage.id()), points);
              outages.take(tx, outage.id(), points, works, reason);
            }
            return outage;
          });
      page.go(
          http,
          outage.href() + "/scope" + query(http),
          points.size() + (points.size() == 1 ? " loop " : " loops ") + (out ? "out." : "in."));
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  private static String query(Context http) {
    Filter filter = Filter.of(http);
    return filter.query(filter.kind());
  }
}
