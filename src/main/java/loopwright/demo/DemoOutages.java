package loopwright.demo;

import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.outage.Outage;
import loopwright.outage.Outages;
import loopwright.outage.Work;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.spare.Spares;
import loopwright.symptom.Suspicions;
import loopwright.temporary.TemporaryFits;

/**
 * What the invented planner has before him: two outages that want three cables of which two lie in
 * store, a part that should have been out long ago, and a suspicion.
 */
public final class DemoOutages {
  private static final Set<Work> WORKS =
      Set.of(Work.VERIFY, Work.AS_FOUND, Work.EXCHANGE, Work.AS_LEFT, Work.RESTORE);

  private final Tx tx;
  private final Plant plant;
  private final LocalDate today;

  private DemoOutages(Tx tx, Plant plant, LocalDate today) {
    this.tx = tx;
    this.plant = plant;
    this.today = today;
  }

  /**
   * Plans them.
   *
   * @param planner number of the person who did
   */
  public static void plan(
      Database database,
      Plant plant,
      Outages outages,
      TemporaryFits temporary,
      Suspicions suspicions,
      InstantSource clock,
      long planner) {
    LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    database.write(
        Act.ofProgram("plan outages", "The invented planner's next months, as of today."),
        tx -> {
          DemoOutages demo = new DemoOutages(tx, plant, today);
          demo.outage(outages, planner, "Pump stop", 20, 4, List.of("P401-V1X", "P401-V3X"));
          demo.outage(outages, planner, "Compressor turnaround", 70, 21, List.of("K101-V1X"));
          temporary.enter(
              tx,
              demo.point("P401-V3Y").number(),
              "probe",
              "the probe that belongs there",
              today.minusDays(12),
              "lent by the shop until the ordered one comes",
              "P. Lanner");
          suspicions.enter(
              tx,
              demo.point("K101-V2X").number(),
              "a cable half a metre too long",
              64,
              "loop=K101-V2X",
              "read the label at the next stop");
          return planner;
        });
  }

  private PointId point(String tag) {
    return plant
        .pointTagged(tx.sql(), tag)
        .map(Point::id)
        .orElseThrow(() -> new IllegalStateException("The demo has no " + tag));
  }

  private void outage(
      Outages outages, long planner, String name, int inDays, int days, List<String> tags) {
    LocalDate begins = today.plusDays(inDays);
    Outage.Details details =
        new Outage.Details(name, begins, begins.plusDays(days), "the shop's two");
    long train = plant.place(tx.sql(), point(tags.get(0))).orElseThrow().train().id().number();
    long outage = outages.plan(tx, details, List.of(train), planner);
    for (String tag : tags) {
      long point = point(tag).number();
      outages.take(tx, outage, List.of(point), WORKS, "cable crushed in its conduit");
      Spares.want(tx, outage, point, "path-1", "cable crushed in its conduit");
    }
  }
}
