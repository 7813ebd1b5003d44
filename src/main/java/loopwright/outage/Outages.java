package loopwright.outage;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.db.Tx;
import loopwright.plant.MachineWalk;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.plant.SiteId;
import loopwright.plant.Train;
import loopwright.plant.TrainId;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/** Plans outages, moves them on, and says which loops they take. */
public final class Outages {
  private static final int MOST = 500;

  private final OutageStore store = new OutageStore();
  private final ScopeStore scope = new ScopeStore();
  private final Plant plant;

  public Outages(Plant plant) {
    this.plant = plant;
  }

  /**
   * Plans one.
   *
   * @param trains numbers of the trains that stand still
   * @throws Refused without a train, or with trains of two sites
   */
  public long plan(Tx tx, Outage.Details details, Collection<Long> trains, long person) {
    List<Train> standing = trains.stream().distinct().map(train -> train(tx.sql(), train)).toList();
    if (standing.isEmpty()) {
      throw new Refused(OutageProblem.NO_TRAIN);
    }
    SiteId site = standing.get(0).site();
    standing.stream()
        .filter(train -> !train.site().equals(site))
        .findFirst()
        .ifPresent(
            other -> {
              throw new Refused(OutageProblem.OTHER_SITE, other.code());
            });
    refuseSame(tx.sql(), details, standing);
    long outage = store.add(tx, site.number(), details);
    standing.forEach(train -> store.addTrain(tx, outage, train.id().number()));
    store.step(tx, outage, OutageState.PLANNED, person, tx.act().reason());
    return outage;
  }

  /** A form sent twice plans nothing twice. */
  private void refuseSame(DSLContext sql, Outage.Details details, List<Train> standing) {
    List<Long> trains = standing.stream().map(train -> train.id().number()).sorted().toList();
    store.ofTrain(sql, trains.get(0)).stream()
        .filter(other -> other.isPlanned(details, trains))
        .findFirst()
        .ifPresent(
            same -> {
              throw new Refused(OutageProblem.SAME, same.number());
            });
  }

  private Train train(DSLContext sql, long number) {
    return plant
        .train(sql, new TrainId(number))
        .orElseThrow(() -> new Refused(OutageProblem.NO_TRAIN));
  }

  /**
   * Changes name, window and team, and adds trains; what is closed stays.
   *
   * @param version that the changer saw
   */
  public void change(Tx tx, long id, int version, Outage.Details details, Collection<Long> trains) {
    store.hold(tx, id);
    Outage outage = one(tx.sql(), id);
    refuseClosed(outage);
    store.change(tx, outage.id(), version, details);
    List<Long> there = outage.trains().stream().map(Outage.Standing::train).toList();
    for (long added : trains) {
      if (!there.contains(added)) {
        Train train = train(tx.sql(), added);
        if (train.site().number() != outage.site()) {
          throw new Refused(OutageProblem.OTHER_SITE, train.code());
        }
        store.addTrain(tx, outage.id(), added);
      }
    }
  }

  /**
   * Moves an outage on.
   *
   * @throws Refused {@link OutageProblem#NOT_NEXT} unless that is the next state, or work begins
   *     without a pack
   */
  public void moveOn(Tx tx, long outage, OutageState to, long person, String note) {
    store.hold(tx, outage);
    Outage now = one(tx.sql(), outage);
    if (to.ordinal() != now.state().ordinal() + 1) {
      throw new Refused(OutageProblem.NOT_NEXT, now.number(), now.state().word(), to.word());
    }
    store.step(tx, outage, to, person, note);
  }

  /** Makes other changes of this outage wait until this change is through. */
  public void hold(Tx tx, long outage) {
    store.hold(tx, outage);
  }

  /**
   * @throws Refused {@link OutageProblem#NO_SUCH}
   */
  public Outage one(DSLContext sql, long id) {
    return store
        .one(sql, id)
        .orElseThrow(() -> new Refused(OutageProblem.NO_SUCH, Outage.number(id)));
  }

  /** The one of that number, such as O-12; empty if there is none. */
  public Optional<Outage> numbered(DSLContext sql, String number) {
    return number.matches("O-\\d{1,15}")
        ? store.one(sql, Long.parseLong(number.substring(2)))
        : Optional.empty();
  }

  /** Those that begin last first. */
  public List<Outage> newest(DSLContext sql) {
    return store.newest(sql, MOST);
  }

  /** Outages on that train that nobody has closed. */
  public List<Outage> ofTrain(DSLContext sql, long train) {
    return store.ofTrain(sql, train);
  }

  /** The loops that an outage takes, by tag. */
  public List<ScopeLine> scope(DSLContext sql, long outage) {
    return scope.lines(sql, outage).stream().filter(ScopeLine::taken).toList();
  }

  /** The last word on each loop that anything was said of, by tag. */
  public List<ScopeLine> everSettled(DSLContext sql, long outage) {
    return scope.lines(sql, outage);
  }

  /**
   * Takes loops in, or says anew what is done on them.
   *
   * @throws Refused if the outage is closed, no work is chosen or a loop is not on its trains
   */
  public void take(Tx tx, long outage, Collection<Long> points, Set<Work> works, String reason) {
    Outage now = open(tx, outage, points);
    if (works.isEmpty()) {
      throw new Refused(OutageProblem.NO_WORK);
    }
    Set<Long> there = new HashSet<>();
    loops(tx.sql(), now).forEach(loop -> there.add(loop.point().id().number()));
    for (long point : points) {
      if (!there.contains(point)) {
        throw new Refused(OutageProblem.NOT_IN_TRAINS, tag(tx.sql(), point), now.number());
      }
      scope.put(tx, outage, point, true, works, reason);
    }
  }

  /**
   * Adds work that was found to be needed while the outage is under way: to a loop that it takes,
   * or with one that it did not take.
   *
   * @throws Refused if it isn't under way, no work is chosen or the loop is not on its trains
   */
  public void addEmergent(Tx tx, long outage, Emergent.Said said) {
    Outage now = open(tx, outage, List.of(said.point()));
    if (now.state() != OutageState.UNDER_WAY) {
      throw new Refused(OutageProblem.NOT_UNDER_WAY, now.number(), now.state().word());
    }
    if (said.works().isEmpty()) {
      throw new Refused(OutageProblem.NO_WORK);
    }
    Set<Work> works = EnumSet.copyOf(said.works());
    scope(tx.sql(), outage).stream()
        .filter(line -> line.point() == said.point())
        .forEach(line -> works.addAll(line.works()));
    take(tx, outage, List.of(said.point()), works, "emergent: " + said.reason());
    scope.addEmergent(tx, outage, said);
  }

  /** What was found while it was under way, oldest first. */
  public List<Emergent> emergent(DSLContext sql, long outage) {
    return scope.emergent(sql, outage);
  }

  /**
   * What is taken in while an outage is under way is emergent work, but for a loop that was taken
   * out before.
   *
   * @throws Refused {@link OutageProblem#IS_EMERGENT}
   */
  void refuseEmergent(DSLContext sql, Outage outage, Collection<Long> points) {
    if (outage.state() != OutageState.UNDER_WAY) {
      return;
    }
    Set<Long> takenOut = new HashSet<>();
    everSettled(sql, outage.id()).stream()
        .filter(line -> !line.taken())
        .forEach(line -> takenOut.add(line.point()));
    if (!takenOut.containsAll(points)) {
      throw new Refused(OutageProblem.IS_EMERGENT, outage.number());
    }
  }

  /** Takes loops out again. */
  public void leaveOut(Tx tx, long outage, Collection<Long> points, String reason) {
    open(tx, outage, points);
    Set<Long> taken = new HashSet<>();
    scope(tx.sql(), outage).forEach(line -> taken.add(line.point()));
    points.stream()
        .filter(taken::contains)
        .forEach(point -> scope.put(tx, outage, point, false, Set.of(), reason));
  }

  private Outage open(Tx tx, long outage, Collection<Long> points) {
    store.hold(tx, outage);
    Outage now = one(tx.sql(), outage);
    refuseClosed(now);
    if (points.isEmpty()) {
      throw new Refused(OutageProblem.NO_LOOP);
    }
    return now;
  }

  /**
   * @throws Refused {@link OutageProblem#CLOSED}
   */
  public static void refuseClosed(Outage outage) {
    if (outage.isClosed()) {
      throw new Refused(OutageProblem.CLOSED, outage.number());
    }
  }

  private String tag(DSLContext sql, long point) {
    return plant.point(sql, new PointId(point)).map(Point::tag).orElse("loop " + point);
  }

  /** A loop on a train that stands still. */
  public record Loop(Point point, String machine, String train) {}

  /** Every loop in use on its trains, in the order of a walk along the shafts. */
  public List<Loop> loops(DSLContext sql, Outage outage) {
    List<Loop> loops = new ArrayList<>();
    for (Outage.Standing train : outage.trains()) {
      for (MachineWalk walk : plant.walk(sql, new TrainId(train.train()))) {
        walk.points().stream()
            .filter(Point::inUse)
            .forEach(point -> loops.add(new Loop(point, walk.machine().name(), train.code())));
      }
    }
    return loops;
  }
}
