package loopwright.loop;

import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.journal.JournalStore;
import loopwright.loop.PaintedHistory.Place;
import loopwright.loop.PaintedHistory.Run;
import loopwright.matching.Families;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.RuleBook;
import loopwright.matching.Verdict;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Random histories of surveys, assemblies, corrections, displaced and disputed parts. Three
 * accounts of each must agree: the tables that the program reads, the journal's entries read one
 * after the other into plain lists, and {@link PaintedHistory}, which knows only what people said.
 */
class HistoriesTest {
  private static final Instant DAY_0 = Instant.parse("2024-01-01T00:00:00Z");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int POINTS = 3;
  private static final int STEPS = 9;

  @Test
  void twoHundredOnTheEmbeddedEngine() {
    try (World world = new World(Engine.H2)) {
      world.run(200, new Random(20260301));
    }
  }

  @Test
  void someOnTheServer() {
    try (World world = new World(Engine.POSTGRESQL)) {
      world.run(40, new Random(7));
    }
  }

  @Tag("long")
  @Test
  void aThousandOnTheEmbeddedEngine() {
    try (World world = new World(Engine.H2)) {
      world.run(1_000, new Random(1));
    }
  }

  private static Instant day(int number) {
    return number >= PaintedHistory.DAYS ? Span.OPEN : DAY_0.plus(Duration.ofDays(number));
  }

  private static int number(Instant moment) {
    return moment.equals(Span.OPEN)
        ? PaintedHistory.DAYS
        : (int) Duration.between(DAY_0, moment).toDays();
  }

  /** Everything matches: here it is counted what is believed, not how it is judged. */
  private record AlwaysFine() implements Rule {
    @Override
    public String name() {
      return "fine";
    }

    @Override
    public String basis() {
      return "For this test.";
    }

    @Override
    public Finding judge(LoopView loop) {
      return finding(Verdict.MATCHES, "Fine.");
    }
  }

  /** A belief as the journal's entries tell it. */
  private record Told(
      long point, Slot slot, Instant from, Instant until, String content, long made) {
    boolean covers(Instant moment) {
      return !from.isAfter(moment) && moment.isBefore(until);
    }
  }

  private static final class World implements AutoCloseable {
    private final TestClock clock = new TestClock("2026-03-01T10:15:30Z");
    private final Database database;
    private final PlacementStore store = new PlacementStore();
    private final Configuration configuration;
    private final Corrections corrections;
    private final Map<Long, Told> told = new HashMap<>();
    private final Map<Long, Long> ended = new HashMap<>();
    private final Map<Long, List<Long>> ofPoint = new HashMap<>();
    private long read;
    private int corrected;
    private int refused;
    private int disputed;
    private int asked;

    World(Engine engine) {
      database = engine.open(clock);
      PartFacts parts = new NoFacts();
      Judging judging =
          new Judging(
              new Judging.Sources(
                  parts,
                  PlaceFacts.NONE,
                  CircuitFacts.NONE,
                  AlloyFacts.NONE,
                  (sql, loops, viewpoint) -> Map.of(),
                  Allowances.NONE),
              new RuleBook(List.of(new AlwaysFine())));
      Standings standings = new Standings(judging, clock);
      configuration = new Configuration(parts, judging, standings, clock);
      corrections = new Corrections(parts, judging, standings, clock);
    }

    private <R> R write(java.util.function.Function<Tx, R> work) {
      return database.write(new Act(null, "A. Tester", "technician", "try", "at random"), work);
    }

    void run(int histories, Random random) {
      long machine = write(tx -> RawWorld.machine(tx, "M"));
      for (int i = 0; i < histories; i++) {
        new History(this, machine, i, random).run();
      }
      assertThat(corrected).as("corrections").isGreaterThan(histories);
      assertThat(refused).as("refused corrections").isGreaterThan(histories / 10);
      assertThat(disputed).as("disputes").isGreaterThan(histories / 10);
      assertThat(asked).isEqualTo(histories * History.ASKED);
    }

    /** Reads the entries that came since, in their order. */
    void readOn() {
      database
          .read(
              sql ->
                  sql.select(JOURNAL_ENTRY.SEQ, JOURNAL_ENTRY.BODY)
                      .from(JOURNAL_ENTRY)
                      .where(JOURNAL_ENTRY.SEQ.gt(read))
                      .orderBy(JOURNAL_ENTRY.SEQ)
                      .fetch())
          .forEach(row -> read(row.value1(), row.value2()));
    }

    private void read(long seq, byte[] body) {
      read = seq;
      try {
        for (JsonNode fact : JSON.readTree(body).path("facts")) {
          JsonNode row = fact.path("rows").path(0);
          switch (fact.path("table").asText()) {
            case "placement" -> begun(seq, row);
            case "placement_retired" -> ended.put(row.path("placement_id").asLong(), seq);
            default -> {}
          }
        }
      } catch (IOException broken) {
        throw new UncheckedIOException(broken);
      }
    }

    private void begun(long seq, JsonNode row) {
      long point = row.path("point_id").asLong();
      String content = row.path("content").asText();
      long id = row.path("id").asLong();
      ofPoint.computeIfAbsent(point, p -> new ArrayList<>()).add(id);
      told.put(
          id,
          new Told(
              point,
              Slot.ofWord(row.path("slot").asText()),
              Instant.parse(row.path("valid_from").asText()),
              Instant.parse(row.path("valid_until").asText()),
              content.equals("part") ? "part:" + row.path("component_id").asText() : content,
              seq));
    }

    /** What the entries up to that one say is believed of these points. */
    List<Told> replayed(Collection<Long> points, long entry) {
      return points.stream()
          .flatMap(point -> ofPoint.getOrDefault(point, List.of()).stream())
          .filter(id -> Objects.requireNonNull(told.get(id)).made() <= entry)
          .filter(id -> ended.getOrDefault(id, Long.MAX_VALUE) > entry)
          .map(told::get)
          .toList();
    }

    @Override
    public void close() {
      database.close();
    }
  }

  /** One history, at points and with parts of its own. */
  private static final class History {
    static final int ASKED = 6;

    private final World world;
    private final Random random;
    private final List<Long> points = new ArrayList<>();
    private final List<Long> probes = new ArrayList<>();
    private final List<Long> cables = new ArrayList<>();
    private final PaintedHistory painted = new PaintedHistory();
    private final List<Long> entries = new ArrayList<>();
    private final List<Map<Place, @Nullable String[]>> pictures = new ArrayList<>();

    History(World world, long machine, int number, Random random) {
      this.world = world;
      this.random = random;
      world.write(
          tx -> {
            for (int i = 0; i < POINTS; i++) {
              points.add(RawWorld.point(tx, machine, "V-" + number + "-" + i));
              cables.add(RawWorld.component(tx, "extension cable", "C-" + number + "-" + i));
            }
            probes.add(RawWorld.component(tx, "probe", "P-" + number + "-0"));
            probes.add(RawWorld.component(tx, "probe", "P-" + number + "-1"));
            return null;
          });
    }

    void run() {
      for (int step = 0; step < STEPS; step++) {
        step();
        pictures.add(painted.picture());
        entries.add(world.database.read(JournalStore::head));
        world.readOn();
        compareNow();
      }
      world.disputed += painted.openDisputes();
      for (int i = 0; i < ASKED; i++) {
        compareThen(random.nextInt(STEPS), random.nextInt(PaintedHistory.DAYS));
      }
    }

    private void step() {
      int point = random.nextInt(POINTS);
      int day = random.nextInt(PaintedHistory.DAYS);
      if (random.nextInt(3) == 0) {
        correct(point, day);
      } else {
        see(point, day);
      }
    }

    private String any(List<Long> parts) {
      int choice = random.nextInt(parts.size() + 2);
      return choice < parts.size()
          ? "part:" + parts.get(choice)
          : choice == parts.size() ? "none" : "unknown";
    }

    private void see(int point, int day) {
      String first = any(cables);
      String second = random.nextInt(3) == 0 ? any(cables) : null;
      if (second != null && PaintedHistory.isPart(second) && second.equals(first)) {
        second = null;
      }
      Map<Slot, String> chain = PaintedHistory.chain(any(probes), first, second);
      Map<Slot, Content> contents = new HashMap<>();
      chain.forEach((slot, content) -> contents.put(slot, content(content)));
      boolean survey = random.nextBoolean();
      world.write(
          tx ->
              survey
                  ? world.configuration.survey(
                      tx, points.get(point), new Chain(contents), day(day), "")
                  : world.configuration.assembly(
                      tx, points.get(point), new Chain(contents), day(day), ""));
      painted.seen(point, day, chain);
    }

    private void correct(int point, int from) {
      int until = from + 1 + random.nextInt(PaintedHistory.DAYS - from);
      boolean probe = random.nextInt(3) == 0;
      Slot slot = probe ? Slot.PROBE : random.nextInt(4) == 0 ? Slot.PATH_2 : Slot.PATH_1;
      String content = any(probe ? probes : cables);
      Correction correction =
          new Correction(
              points.get(point), slot, content(content), new Span(day(from), day(until)));
      boolean taken = painted.corrected(new Place(point, slot), from, until, content);
      try {
        world.write(tx -> world.corrections.correct(tx, correction));
        assertThat(taken).as("%s", correction).isTrue();
        world.corrected++;
      } catch (Refused no) {
        assertThat(taken).as("%s: %s", correction, no.getMessage()).isFalse();
        world.refused++;
      }
    }

    private static Content content(String word) {
      return switch (word) {
        case "none" -> new Content.None();
        case "unknown" -> new Content.Unknown();
        default -> new Content.Part(Long.parseLong(word.substring("part:".length())));
      };
    }

    private static String word(Content content) {
      return content instanceof Content.Part part ? "part:" + part.number() : content.word();
    }

    /** The present beliefs, stay by stay, by all three accounts; and no two of them overlap. */
    private void compareNow() {
      List<Placed> now = world.database.read(sql -> world.store.ofAll(sql, points, List.of()));
      List<Run> held = now.stream().map(this::run).sorted(inOrder()).toList();
      List<Run> replayed =
          world.replayed(points, Long.MAX_VALUE - 1).stream()
              .map(this::run)
              .sorted(inOrder())
              .toList();
      assertThat(held).isEqualTo(replayed);
      assertThat(held).isEqualTo(painted.runs());
      for (Run one : held) {
        for (Run other : held) {
          boolean samePart =
              PaintedHistory.isPart(one.content()) && one.content().equals(other.content());
          if (one != other && (samePart || one.place().equals(other.place()))) {
            assertThat(one.from() < other.until() && other.from() < one.until())
                .as("%s and %s", one, other)
                .isFalse();
          }
        }
      }
    }

    private static Comparator<Run> inOrder() {
      return Comparator.comparing(Run::place).thenComparing(Run::from);
    }

    private Run run(Placed placed) {
      return new Run(
          new Place(points.indexOf(placed.point()), placed.slot()),
          number(placed.span().from()),
          number(placed.span().until()),
          word(placed.content()));
    }

    private Run run(Told told) {
      return new Run(
          new Place(points.indexOf(told.point()), told.slot()),
          number(told.from()),
          number(told.until()),
          told.content());
    }

    /** How it was on a day, as it was known after a step. */
    private void compareThen(int step, int day) {
      long entry = entries.get(step);
      Map<Place, String> answered =
          world
              .database
              .read(sql -> world.store.at(sql, points, new Viewpoint(day(day), entry)))
              .stream()
              .collect(Collectors.toMap(p -> run(p).place(), p -> word(p.content())));
      Map<Place, String> replayed =
          world.replayed(points, entry).stream()
              .filter(belief -> belief.covers(day(day)))
              .collect(Collectors.toMap(b -> run(b).place(), Told::content));
      Map<Place, String> said = new TreeMap<>();
      pictures
          .get(step)
          .forEach(
              (place, days) -> {
                if (days[day] != null) {
                  said.put(place, days[day]);
                }
              });
      assertThat(answered).isEqualTo(replayed);
      assertThat(answered).isEqualTo(said);
      world.asked++;
    }
  }

  /** A register that says nothing of parts. */
  private static final class NoFacts implements PartFacts {
    @Override
    public Families families(DSLContext sql) {
      return Families.NOT_GIVEN;
    }

    @Override
    public Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers) {
      return Map.of();
    }

    @Override
    public Map<Long, PartView> parts(
        DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint) {
      return Map.of();
    }

    @Override
    public Map<Long, List<Instant>> lengthChanges(
        DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint) {
      return Map.of();
    }

    @Override
    public Instant knownFrom(DSLContext sql, long number) {
      return Instant.MIN;
    }

    @Override
    public void placementsChanged(Tx tx, Collection<Long> numbers) {}

    @Override
    public void putAway(Tx tx, PutAway how, Instant from) {}

    @Override
    public List<Choice> named(DSLContext sql, String text) {
      return List.of();
    }

    @Override
    public List<Choice> proposals(
        DSLContext sql, PartKind.Place place, String text, @Nullable Length length, int most) {
      return List.of();
    }
  }
}
