package loopwright.loop;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
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
  private static final List<String> ROLES = List.of("shop", "planner", "engineer", "administrator");

  private final Database database;
  private final Page page;
  private final Standings kept;
  private final List<Need.Source> sources;
  private final InstantSource clock;
  private final StandingStore standings = new StandingStore();
  private final PointStore points = new PointStore();

  public NeedsPages(
      Database database,
      Page page,
      Standings kept,
      List<Need.Source> sources,
      InstantSource clock) {
    this.kept = kept;
    this.sources = List.copyOf(sources);
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

  record TrainCount(String href, String name, int count) {}

  record Needs(
      List<Row> rows,
      int listed,
      int loops,
      boolean cut,
      List<Chip> chips,
      List<Chip> roles,
      List<TrainCount> byTrain) {}

  /** What the address asks for. */
  private record Filter(String verdict, @Nullable Long train, String who) {

    static Filter of(Context http) {
      return new Filter(
          known(VERDICTS, http.queryParam("verdict")),
          number(http.queryParam("train")),
          known(ROLES, http.queryParam("who")));
    }

    private static String known(List<String> words, @Nullable String word) {
      return word != null && words.contains(word) ? word : "";
    }

    private static @Nullable Long number(@Nullable String text) {
      return text != null && text.matches("\\d{1,18}") ? Long.valueOf(text) : null;
    }

    boolean takes(Need need) {
      return (verdict.isEmpty() || verdict.equals(need.verdict())) && mayStand(need);
    }

    /** Of that train and that role, whatever its verdict. */
    boolean mayStand(Need need) {
      return (train == null || train.equals(need.train()))
          && (who.isEmpty() || who.equals(need.who()));
    }

    Condition inSql() {
      Condition where = train == null ? DSL.noCondition() : StandingStore.inTrain(train);
      return who.isEmpty() ? where : where.and(StandingStore.owner(who));
    }

    String address() {
      List<String> query = new ArrayList<>();
      if (!verdict.isEmpty()) {
        query.add("verdict=" + verdict);
      }
      if (train != null) {
        query.add("train=" + train);
      }
      if (!who.isEmpty()) {
        query.add("who=" + who);
      }
      return query.isEmpty() ? "/" : "/?" + String.join("&", query);
    }
  }

  private void show(Context http) {
    Filter filter = Filter.of(http);
    kept.refreshDue(database);
    Needs needs = database.read(sql -> needs(sql, filter));
    page.show(http, "loop/needs", Map.of("needs", needs));
  }

  private Needs needs(DSLContext sql, Filter filter) {
    Map<String, Integer> counts = new HashMap<>(standings.needing(sql, filter.inSql()));
    List<Need> others =
        sources.stream()
            .flatMap(source -> source.needs(sql, clock.instant()).stream())
            .filter(filter::mayStand)
            .toList();
    others.forEach(need -> counts.merge(need.verdict(), 1, Integer::sum));
    List<Need> found = new ArrayList<>(loops(sql, filter));
    others.stream().filter(filter::takes).forEach(found::add);
    found.sort(
        Comparator.comparingInt(Need::urgency)
            .thenComparing(Need::since, Comparator.nullsFirst(Comparator.naturalOrder())));
    List<Need> listed = found.subList(0, Math.min(MOST, found.size()));
    int needing = VERDICTS.stream().mapToInt(word -> counts.getOrDefault(word, 0)).sum();
    Instant now = clock.instant();
    return new Needs(
        listed.stream().map(need -> row(need, now)).toList(),
        filter.verdict().isEmpty() ? needing : counts.getOrDefault(filter.verdict(), 0),
        standings.counts(sql, DSL.noCondition()).values().stream().mapToInt(n -> n).sum(),
        found.size() > MOST,
        chips(filter, counts, needing),
        roles(filter),
        byTrain(sql));
  }

  /**
   * Loops; those of a site still being read in, of which a fact is missing, come as one a train.
   */
  private List<Need> loops(DSLContext sql, Filter filter) {
    Condition which =
        filter.verdict().isEmpty()
            ? filter.inSql()
            : filter.inSql().and(StandingStore.verdict(filter.verdict()));
    List<Standing> worst = standings.needingSomebody(sql, which, MOST + 1);
    Map<Long, PointStore.Located> located =
        points.located(sql, worst.stream().map(Standing::point).toList()).stream()
            .collect(Collectors.toMap(PointStore.Located::point, Function.identity()));
    List<Need> needs = new ArrayList<>();
    Map<Long, List<Standing>> grouped = new LinkedHashMap<>();
    for (Standing standing : worst) {
      PointStore.Located at = located.get(standing.point());
      if (at != null && at.adopting() && standing.verdict().equals("unknown")) {
        grouped.computeIfAbsent(at.train(), train -> new ArrayList<>()).add(standing);
      } else if (at != null) {
        needs.add(need(standing, at));
      }
    }
    grouped.values().forEach(group -> needs.add(adoption(sql, group, located)));
    return needs;
  }

  private static Need need(Standing standing, PointStore.Located at) {
    return new Need(
        standing.verdict(),
        standing.urgency(),
        "/loops/" + PathSegment.of(at.tag()),
        at.tag(),
        at.trainCode() + ", " + at.site(),
        at.train(),
        standing.headline(),
        standing.since(),
        standing.ownerRole(),
        standing.nextStep());
  }

  private Need adoption(
      DSLContext sql, List<Standing> group, Map<Long, PointStore.Located> located) {
    Standing first = group.get(0);
    PointStore.Located at = Objects.requireNonNull(located.get(first.point()));
    if (group.size() == 1) {
      return need(first, at);
    }
    Map<String, Integer> all = standings.counts(sql, StandingStore.inTrain(at.train()));
    int loops = all.values().stream().mapToInt(n -> n).sum();
    return new Need(
        "unknown",
        first.urgency(),
        "/plant/trains/" + at.train(),
        group.size() + " loops",
        at.trainCode() + ", " + at.site(),
        at.train(),
        "Being read in: %s of %s loops are known. Facts are missing, for instance: %s"
            .formatted(loops - all.getOrDefault("unknown", 0), loops, first.headline()),
        null,
        "shop",
        "Read labels at the next stop; the train's page lists what is missing.");
  }

  private static Row row(Need need, Instant now) {
    return new Row(
        need.verdict(),
        need.href(),
        need.where(),
        need.place(),
        need.why(),
        Shown.ago(need.since(), now),
        need.who(),
        need.nextStep());
  }

  private static List<Chip> chips(Filter filter, Map<String, Integer> counts, int needing) {
    List<Chip> chips = new ArrayList<>();
    chips.add(
        new Chip(
            "all",
            new Filter("", filter.train(), filter.who()).address(),
            filter.verdict().isEmpty(),
            needing));
    for (String word : VERDICTS) {
      chips.add(
          new Chip(
              word,
              new Filter(word, filter.train(), filter.who()).address(),
              word.equals(filter.verdict()),
              counts.getOrDefault(word, 0)));
    }
    if (filter.train() != null) {
      String without = new Filter(filter.verdict(), null, filter.who()).address();
      chips.add(new Chip("one train only \u00d7", without, true, null));
    }
    return chips;
  }

  private static List<Chip> roles(Filter filter) {
    List<Chip> chips = new ArrayList<>();
    chips.add(
        new Chip(
            "everybody",
            new Filter(filter.verdict(), filter.train(), "").address(),
            filter.who().isEmpty(),
            null));
    for (String role : ROLES) {
      String address = new Filter(filter.verdict(), filter.train(), role).address();
      chips.add(new Chip(role, address, role.equals(filter.who()), null));
    }
    return chips;
  }

  /** Every train of which some loop needs somebody, most first. */
  private List<TrainCount> byTrain(DSLContext sql) {
    return standings.needingByTrain(sql).stream()
        .map(count -> new TrainCount("/?train=" + count.train(), count.code(), count.loops()))
        .toList();
  }
}
