package loopwright.pack;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.outage.Emergent;
import loopwright.outage.Outage;
import loopwright.outage.OutageState;
import loopwright.outage.Outages;
import loopwright.outage.ScopeLine;
import loopwright.outage.WorkSteps;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/** Issues packs and says what changed since. */
public final class Packs {
  /** Printed on every sheet whatever the shop's steps say. */
  static final List<String> CAUTIONS =
      List.of(
          "This sheet is no permission to work. Permit, isolation and bypass follow the site's own"
              + " procedure and the judgement of the licensed people responsible.",
          "Before touching a live channel: bypass or inhibit it as the site's procedure says, and"
              + " write its number into the bypass log.",
          "Work on one channel of a voting group at a time.",
          "Afterwards restore the channel, prove it, and have a second person prove that the bypass"
              + " is off.");

  private static final int MOST_NOTE = 2_000;

  private final PackStore store = new PackStore();
  private final WorkSteps steps = new WorkSteps();
  private final Outages outages;
  private final SheetWriter writer;
  private final Map<Long, List<Revision.Loop>> frozen = Collections.synchronizedMap(new Newest());

  /**
   * @param facts where sheets get what they say from
   */
  public Packs(Outages outages, SheetWriter.Facts facts) {
    this.outages = outages;
    this.writer = new SheetWriter(facts);
  }

  PackStore store() {
    return store;
  }

  Outages outages() {
    return outages;
  }

  /** The sheets as they would be issued now. */
  List<LoopSheet> now(DSLContext sql, Outage outage) {
    return writer.sheets(
        sql,
        outage,
        outages.loops(sql, outage),
        outages.scope(sql, outage.id()),
        outages.emergent(sql, outage.id()),
        steps.all(sql));
  }

  /** Newest first. */
  List<Revision> revisions(DSLContext sql, Outage outage) {
    return store.revisions(sql, outage.id());
  }

  Optional<Revision> newest(DSLContext sql, Outage outage) {
    return revisions(sql, outage).stream().findFirst();
  }

  /**
   * @throws Refused {@link PackProblem#NO_SUCH_REVISION}
   */
  Revision revision(DSLContext sql, Outage outage, int number) {
    return revisions(sql, outage).stream()
        .filter(revision -> revision.number() == number)
        .findFirst()
        .orElseThrow(() -> new Refused(PackProblem.NO_SUCH_REVISION, outage.number(), number));
  }

  /** In the order of the pack. What is frozen never changes, so it is read once. */
  List<Revision.Loop> loops(DSLContext sql, Revision revision) {
    List<Revision.Loop> known = frozen.get(revision.id());
    if (known == null) {
      known = store.loops(sql, revision.id());
      frozen.put(revision.id(), known);
    }
    return known;
  }

  /** All that came back, oldest first. */
  List<Returned> returns(DSLContext sql, Outage outage) {
    return store.returns(sql, outage.id());
  }

  /** Of each loop the last word that came back, but for loops that emergent work opened again. */
  public Map<Long, Returned> latest(DSLContext sql, Outage outage) {
    Map<Long, Returned> latest = new LinkedHashMap<>();
    returns(sql, outage).forEach(returned -> latest.put(returned.point(), returned));
    latest.keySet().removeAll(openedAgain(sql, outage));
    return latest;
  }

  /** Loops of which nothing came back since emergent work was added to them. */
  Set<Long> openedAgain(DSLContext sql, Outage outage) {
    Map<Long, Long> returned = store.lastReturned(sql, outage.id());
    Set<Long> opened = new HashSet<>();
    outages.emergent(sql, outage.id()).stream()
        .filter(one -> returned.getOrDefault(one.point(), 0L) < one.change())
        .forEach(one -> opened.add(one.point()));
    return opened;
  }

  /**
   * Adds emergent work and issues a revision for it at once, in which this loop alone is written
   * anew: the other sheets are those of the last revision, byte by byte, so that what is out in the
   * field stays good.
   *
   * @return number of the revision
   * @throws Refused if the outage isn't under way, or the loop can't be taken
   */
  int addEmergent(Tx tx, long id, long person, Emergent.Said said) {
    outages.addEmergent(tx, id, said);
    Outage outage = outages.one(tx.sql(), id);
    Revision last =
        newest(tx.sql(), outage)
            .orElseThrow(() -> new Refused(PackProblem.NOTHING_TO_ISSUE, outage.number()));
    Map<Long, String> kept = store.contents(tx.sql(), last.id());
    Set<Long> scope =
        outages.scope(tx.sql(), id).stream().map(ScopeLine::point).collect(Collectors.toSet());
    Map<Long, String> contents = new LinkedHashMap<>();
    String tag = "";
    for (Outages.Loop loop : outages.loops(tx.sql(), outage)) {
      long point = loop.point().id().number();
      if (point == said.point()) {
        tag = loop.point().tag();
        contents.put(point, written(tx.sql(), outage, tag));
      } else if (scope.contains(point) && kept.containsKey(point)) {
        contents.put(point, Objects.requireNonNull(kept.get(point)));
      }
    }
    String note = "Emergent work on " + tag + ": " + said.reason();
    return add(tx, id, person, note, last.number() + 1, Frozen.write(last.head()), contents);
  }

  private String written(DSLContext sql, Outage outage, String tag) {
    return now(sql, outage).stream()
        .filter(sheet -> sheet.tag().equals(tag))
        .map(Frozen::write)
        .findFirst()
        .orElseThrow();
  }

  private int add(
      Tx tx,
      long id,
      long person,
      String note,
      int number,
      String head,
      Map<Long, String> contents) {
    List<String> hashes = contents.values().stream().map(Frozen::hash).toList();
    String hash = hash(head, hashes);
    String said = note.length() <= MOST_NOTE ? note : note.substring(0, MOST_NOTE - 1) + "\u2026";
    long revision = store.add(tx, id, number, person, said, head, hash);
    int place = 0;
    for (Map.Entry<Long, String> loop : contents.entrySet()) {
      place++;
      store.addLoop(
          tx, revision, place, loop.getKey(), loop.getValue(), Frozen.hash(loop.getValue()));
    }
    return number;
  }

  private static String hash(String head, List<String> hashes) {
    return Frozen.hash(head + "\n" + String.join("\n", hashes));
  }

  /**
   * Freezes a revision of what the register says now. The first one makes a planned outage an
   * issued one.
   *
   * @return its number
   * @throws Refused if the outage is closed, takes no loop, or nothing changed since the last one
   */
  int issue(Tx tx, long id, long person, String note) {
    outages.hold(tx, id);
    Outage outage = outages.one(tx.sql(), id);
    Outages.refuseClosed(outage);
    List<LoopSheet> sheets = now(tx.sql(), outage);
    if (sheets.isEmpty()) {
      throw new Refused(PackProblem.NOTHING_TO_ISSUE, outage.number());
    }
    Map<String, Long> points = new HashMap<>();
    outages
        .loops(tx.sql(), outage)
        .forEach(loop -> points.put(loop.point().tag(), loop.point().id().number()));
    Map<Long, String> contents = new LinkedHashMap<>();
    sheets.forEach(
        sheet ->
            contents.put(Objects.requireNonNull(points.get(sheet.tag())), Frozen.write(sheet)));
    String head = Frozen.write(head(tx.sql(), outage));
    String hash = hash(head, contents.values().stream().map(Frozen::hash).toList());
    Optional<Revision> last = newest(tx.sql(), outage);
    last.filter(revision -> revision.hash().equals(hash))
        .ifPresent(
            same -> {
              throw new Refused(PackProblem.NOTHING_CHANGED, same.number());
            });
    int number = last.map(Revision::number).orElse(0) + 1;
    add(tx, id, person, note, number, head, contents);
    if (outage.state() == OutageState.PLANNED) {
      outages.moveOn(tx, id, OutageState.ISSUED, person, note);
    }
    return number;
  }

  Revision.Head head(DSLContext sql, Outage outage) {
    return new Revision.Head(
        outage.number(),
        outage.name(),
        outage.siteName(),
        outage.begins() + " to " + outage.ends(),
        outage.trainCodes(),
        outage.team(),
        CAUTIONS,
        Needed.hours(sql, outages.scope(sql, outage.id()), writer.facts()),
        Needed.standards(sql, outage, writer.facts()));
  }

  /**
   * A loop that is no longer as it was issued.
   *
   * @param what in words: fields that changed, or that it was added or taken out
   */
  record Changed(String tag, List<String> what) {}

  /**
   * What is no longer as that revision says.
   *
   * @param sheets as they would be issued now
   */
  List<Changed> changedSince(
      DSLContext sql, Outage outage, Revision revision, List<LoopSheet> sheets) {
    Map<String, LoopSheet> now = new LinkedHashMap<>();
    sheets.forEach(sheet -> now.put(sheet.tag(), sheet));
    List<Changed> changed = new ArrayList<>();
    for (Revision.Loop loop : loops(sql, revision)) {
      LoopSheet present = now.remove(loop.sheet().tag());
      List<String> what =
          present == null ? List.of("taken out") : loop.sheet().differences(present);
      if (!what.isEmpty()) {
        changed.add(new Changed(loop.sheet().tag(), what));
      }
    }
    now.keySet().forEach(tag -> changed.add(new Changed(tag, List.of("taken in"))));
    if (!head(sql, outage).equals(revision.head())) {
      changed.add(
          new Changed("first page", List.of("name, window, trains, team, hours or standards")));
    }
    return changed;
  }

  /** Revisions looked at last; older ones are read again when somebody asks. */
  private static final class Newest extends LinkedHashMap<Long, List<Revision.Loop>> {
    private static final long serialVersionUID = 1L;
    private static final int MOST = 8;

    @Override
    protected boolean removeEldestEntry(Map.Entry<Long, List<Revision.Loop>> eldest) {
      return size() > MOST;
    }
  }
}
