package loopwright.loop;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** The first page: every loop that needs somebody, worst first, with reason and next step. */
public final class NeedsPages implements Pages {
  private static final int MOST = 200;
  private static final List<String> VERDICTS = List.of("refused", "unknown", "attention");

  private final Database database;
  private final Page page;
  private final Standings kept;
  private final InstantSource clock;
  private final StandingStore standings = new StandingStore();
  private final PointStore points = new PointStore();

  public NeedsPages(Database database, Page page, Standings kept, InstantSource clock) {
    this.kept = kept;
    this.database = database;
    this.page = page;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/", Permission.READ, this::show);
  }

  record Row(
      String verdict,
      String href,
      String where,
      String place,
      String why,
      String since,
      String who,
      String nextStep) {}

  record Chip(String label, String href, boolean on, @Nullable Integer count) {}

  record TrainCount(long id, String name, int count) {}

  record Needs(
      List<Row> rows,
      int listed,
      int loops,
      boolean cut,
      List<Chip> chips,
      List<TrainCount> byTrain) {}

  private void show(Context http) {
    String verdict = known(http.queryParam("verdict"));
    Long train = number(http.queryParam("train"));
    kept.refreshDue(database);
    Needs needs = database.read(sql -> needs(sql, verdict, train));
    page.show(http, "loop/needs", Map.of("needs", needs));
  }

  private static String known(@Nullable String verdict) {
    return verdict != null && VERDICTS.contains(verdict) ? verdict : "";
  }

  private static @Nullable Long number(@Nullable String text) {
    return text != null && text.matches("\\d{1,18}") ? Long.valueOf(text) : null;
  }

  private Needs needs(DSLContext sql, String verdict, @Nullable Long train) {
    Condition inTrain = train == null ? DSL.noCondition() : StandingStore.inTrain(train);
    Map<String, Integer> counts = standings.counts(sql, inTrain);
    Condition which = verdict.isEmpty() ? inTrain : inTrain.and(StandingStore.verdict(verdict));
    List<Standing> worst = standings.needingSomebody(sql, which, MOST + 1);
    boolean cut = worst.size() > MOST;
    List<Standing> listed = cut ? worst.subList(0, MOST) : worst;
    Map<Long, PointStore.Located> located =
        points.located(sql, listed.stream().map(Standing::point).toList()).stream()
            .collect(Collectors.toMap(PointStore.Located::point, Function.identity()));
    int needing = VERDICTS.stream().mapToInt(word -> counts.getOrDefault(word, 0)).sum();
    int shown = verdict.isEmpty() ? needing : counts.getOrDefault(verdict, 0);
    return new Needs(
        rows(listed, located),
        shown,
        counts.values().stream().mapToInt(Integer::intValue).sum(),
        cut,
        chips(verdict, train, counts, needing),
        byTrain(listed, located));
  }

  /** Loops of a site that is still being read in, of which a fact is missing, come as one row. */
  private List<Row> rows(List<Standing> listed, Map<Long, PointStore.Located> located) {
    Instant now = clock.instant();
    List<Row> rows = new ArrayList<>();
    Map<Long, List<Standing>> grouped = new LinkedHashMap<>();
    for (Standing standing : listed) {
      PointStore.Located at = located.get(standing.point());
      if (at == null) {
        continue;
      }
      if (at.adopting() && standing.verdict().equals("unknown")) {
        grouped.computeIfAbsent(at.train(), train -> new ArrayList<>()).add(standing);
      } else {
        rows.add(row(standing, at, now));
      }
    }
    grouped.values().forEach(group -> rows.add(adoption(group, located, now)));
    return rows;
  }

  private static Row row(Standing standing, PointStore.Located at, Instant now) {
    return new Row(
        standing.verdict(),
        "/loops/" + PathSegment.of(at.tag()),
        at.tag(),
        at.trainCode() + ", " + at.site(),
        standing.headline(),
        Shown.ago(standing.since(), now),
        standing.ownerRole(),
        standing.nextStep());
  }

  private static Row adoption(
      List<Standing> group, Map<Long, PointStore.Located> located, Instant now) {
    Standing first = group.get(0);
    PointStore.Located at = Objects.requireNonNull(located.get(first.point()));
    if (group.size() == 1) {
      return row(first, at, now);
    }
    return new Row(
        "unknown",
        "/plant/trains/" + at.train(),
        group.size() + " loops",
        at.trainCode() + ", " + at.site(),
        "Facts are missing, for instance: " + first.headline(),
        "adoption",
        "shop",
        "Read labels at the next stop; the train's page lists what is missing.");
  }

  private static List<Chip> chips(
      String verdict, @Nullable Long train, Map<String, Integer> counts, int needing) {
    List<Chip> chips = new ArrayList<>();
    chips.add(new Chip("all", address("", train), verdict.isEmpty(), needing));
    for (String word : VERDICTS) {
      chips.add(
          new Chip(word, address(word, train), word.equals(verdict), counts.getOrDefault(word, 0)));
    }
    if (train != null) {
      chips.add(new Chip("one train only ×", address(verdict, null), true, null));
    }
    return chips;
  }

  private static String address(String verdict, @Nullable Long train) {
    List<String> query = new ArrayList<>();
    if (!verdict.isEmpty()) {
      query.add("verdict=" + URLEncoder.encode(verdict, StandardCharsets.UTF_8));
    }
    if (train != null) {
      query.add("train=" + train);
    }
    return query.isEmpty() ? "/" : "/?" + String.join("&", query);
  }

  private static List<TrainCount> byTrain(
      List<Standing> listed, Map<Long, PointStore.Located> located) {
    Map<Long, TrainCount> counts = new LinkedHashMap<>();
    for (Standing standing : listed) {
      PointStore.Located at = located.get(standing.point());
      if (at != null) {
        counts.merge(
            at.train(),
            new TrainCount(at.train(), at.trainCode(), 1),
            (one, more) -> new TrainCount(one.id(), one.name(), one.count() + 1));
      }
    }
    return List.copyOf(counts.values());
  }
}
