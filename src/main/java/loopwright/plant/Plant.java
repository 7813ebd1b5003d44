package loopwright.plant;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jooq.DSLContext;

/**
 * Sites, trains, machines and points. Reads take the context that {@code Database.read} or {@code
 * Tx.sql} gives; writes happen inside the caller's change. Codes and tags are found in any case.
 */
public final class Plant {
  private final PlantStore store = new PlantStore();
  private final PointStore points = new PointStore();
  private final PointWatch watch;

  /**
   * @param watch told of each point that is added or changed
   */
  public Plant(PointWatch watch) {
    this.watch = watch;
  }

  public List<Site> sites(DSLContext sql) {
    return store.sites(sql);
  }

  public Optional<Site> site(DSLContext sql, SiteId id) {
    return store.site(sql, id);
  }

  public Optional<Site> siteNamed(DSLContext sql, String code) {
    return store.siteNamed(sql, code);
  }

  /** The trains of a site with the number of their machines and of their points in use. */
  public List<TrainRow> trains(DSLContext sql, SiteId site) {
    return store.trains(sql, site);
  }

  public Optional<Train> train(DSLContext sql, TrainId id) {
    return store.train(sql, id);
  }

  public Optional<Train> trainNamed(DSLContext sql, SiteId site, String code) {
    return store.trainNamed(sql, site, code);
  }

  /** The machines of a train in their order along the shaft. */
  public List<Machine> machines(DSLContext sql, TrainId train) {
    return store.machines(sql, train);
  }

  public Optional<Machine> machine(DSLContext sql, MachineId id) {
    return store.machine(sql, id);
  }

  public Optional<Machine> machineNamed(DSLContext sql, TrainId train, String code) {
    return store.machineNamed(sql, train, code);
  }

  /** Machine by machine along the shaft, each with its points by tag; retired points too. */
  public List<MachineWalk> walk(DSLContext sql, TrainId train) {
    Map<Long, List<Point>> byMachine = points.ofTrain(sql, train);
    return machines(sql, train).stream()
        .map(
            machine ->
                new MachineWalk(machine, byMachine.getOrDefault(machine.id().number(), List.of())))
        .toList();
  }

  public Optional<Point> point(DSLContext sql, PointId id) {
    return points.point(sql, id);
  }

  public Optional<Point> pointTagged(DSLContext sql, String tag) {
    return points.tagged(sql, tag);
  }

  /**
   * Many at once, for files.
   *
   * @return by {@link #tagKey}; tags that no point has are not in it
   */
  public Map<String, Point> pointsTagged(DSLContext sql, Collection<String> tags) {
    return points.tagged(sql, tags);
  }

  /**
   * As {@link #pointsTagged}, by the tags as they were given. Not more than a thousand at a time.
   */
  public Map<String, Point> pointsAsTyped(DSLContext sql, Collection<String> tags) {
    return points.asTyped(sql, tags);
  }

  /** Those that are there, in no order. */
  public List<Point> points(DSLContext sql, Collection<Long> numbers) {
    return points.points(sql, numbers);
  }

  /** A tag in the form in which all its spellings are one. */
  public String tagKey(DSLContext sql, String tag) {
    return PointStore.key(sql, tag);
  }

  /**
   * Numbers of all points in use.
   *
   * @param knowingAlloy only those whose shaft's alloy is recorded
   */
  public Set<Long> pointsInUse(DSLContext sql, boolean knowingAlloy) {
    return points.inUse(sql, knowingAlloy);
  }

  /** Points whose tag or place holds that text, best first. */
  public List<Point> pointsHolding(DSLContext sql, String text, int most) {
    return points.holding(sql, text, most);
  }

  /** Points in the order of their numbers, after that one; for passes over all of them. */
  public List<Point> pointsAfter(DSLContext sql, PointId last, int most) {
    return points.after(sql, last, most);
  }

  /** Site, train and machine of a point. */
  public Optional<PointPlace> place(DSLContext sql, PointId point) {
    return points.place(sql, point);
  }

  /** By whose clock moments at these points are shown; without a point, by the first site's. */
  public SiteClocks clocks(DSLContext sql, Collection<Long> points) {
    List<ZoneId> zones = sites(sql).stream().map(Site::zone).distinct().toList();
    ZoneId first = zones.isEmpty() ? ZoneOffset.UTC : zones.get(0);
    return zones.size() < 2
        ? new SiteClocks(Map.of(), first, false)
        : new SiteClocks(this.points.zones(sql, points), first, true);
  }

  /**
   * @throws Refused {@link PlantProblem#CODE_TAKEN} if the code stands for another site
   */
  public SiteId addSite(Tx tx, SiteDetails details) {
    refuseTaken("Site", details.code(), siteNamed(tx.sql(), details.code()).isPresent());
    return store.insert(tx, details);
  }

  /**
   * Moments stored before stay the same moments when the zone changes.
   *
   * @param version that the changer saw
   */
  public void changeSite(Tx tx, SiteId id, int version, SiteDetails details) {
    Optional<Site> sameCode = siteNamed(tx.sql(), details.code());
    refuseTaken("Site", details.code(), sameCode.filter(site -> !site.id().equals(id)).isPresent());
    store.update(tx, id, version, details);
  }

  /**
   * @throws Refused {@link PlantProblem#CODE_TAKEN} if the site has a train of that code
   */
  public TrainId addTrain(Tx tx, SiteId site, String code, String name) {
    String kept = Text.needed("the train's code", code, 30);
    refuseMissing("site", site.number(), site(tx.sql(), site).isEmpty());
    refuseTaken("Train", kept, trainNamed(tx.sql(), site, kept).isPresent());
    return store.insert(tx, site, kept, Text.needed("the train's name", name, 120));
  }

  /**
   * @param place order along the shaft, counted from 1 at the drive end
   * @throws Refused {@link PlantProblem#CODE_TAKEN} if the train has a machine of that code
   */
  public MachineId addMachine(Tx tx, TrainId train, String code, String name, int place) {
    String kept = Text.needed("the machine's code", code, 30);
    refuseMissing("train", train.number(), train(tx.sql(), train).isEmpty());
    refuseTaken("Machine", kept, machineNamed(tx.sql(), train, kept).isPresent());
    if (place < 1 || place > 999) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE, "The place along the shaft", place, "a number from 1 to 999");
    }
    return store.insert(tx, train, kept, Text.needed("the machine's name", name, 120), place);
  }

  /**
   * @throws Refused {@link PlantProblem#TAG_TAKEN} if any point, in use or retired, has that tag
   */
  public PointId addPoint(Tx tx, MachineId machine, PointDetails details) {
    refuseMissing("machine", machine.number(), machine(tx.sql(), machine).isEmpty());
    pointTagged(tx.sql(), details.tag()).ifPresent(other -> refuseTag(tx.sql(), other));
    PointId added = points.insert(tx, machine, details);
    watch.pointChanged(tx, added);
    return added;
  }

  /**
   * @param version that the changer saw
   */
  public void changePoint(Tx tx, PointId id, int version, MachineId machine, PointDetails details) {
    refuseMissing("machine", machine.number(), machine(tx.sql(), machine).isEmpty());
    pointTagged(tx.sql(), details.tag())
        .filter(other -> !other.id().equals(id))
        .ifPresent(other -> refuseTag(tx.sql(), other));
    points.update(tx, id, version, machine, details);
    watch.pointChanged(tx, id);
  }

  private void refuseTag(DSLContext sql, Point other) {
    String where =
        place(sql, other.id())
            .map(at -> at.train().code() + " / " + at.machine().name())
            .orElse("another machine");
    throw new Refused(PlantProblem.TAG_TAKEN, other.tag(), where);
  }

  private static void refuseTaken(String what, String code, boolean taken) {
    if (taken) {
      throw new Refused(PlantProblem.CODE_TAKEN, what, code);
    }
  }

  private static void refuseMissing(String what, long number, boolean missing) {
    if (missing) {
      throw new Refused(PlantProblem.NOT_THERE, what + " number", number);
    }
  }
}
