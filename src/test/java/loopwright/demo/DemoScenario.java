package loopwright.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import loopwright.demo.LoopStory.Fitting;

/** Lets the invented plant live through its years: built, calibrated in outages, faults and all. */
final class DemoScenario {
  private static final String BOTH = "as found and as left";
  private static final int LOOPS_A_DAY = 6;

  final DemoShop shop = new DemoShop();
  final Map<String, LoopStory> stories = new LinkedHashMap<>();

  static DemoScenario played() {
    DemoScenario scenario = new DemoScenario();
    DemoDesign.TRAINS.forEach(scenario::build);
    scenario.fillStores();
    for (DemoTrain train : DemoDesign.TRAINS) {
      for (int i = 0; i < train.outages().size(); i++) {
        scenario.outage(train, i);
        scenario.afterOutage(train.outages().get(i));
      }
    }
    scenario.betweenOutages();
    return scenario;
  }

  private void build(DemoTrain train) {
    DemoMoment day = DemoMoment.on(train.commissioned());
    for (DemoPoint point : DemoPoints.of(train)) {
      String cable = point.cable();
      Fitting first =
          new Fitting(
              day,
              shop.probe(point.family(), point.lead(), day),
              cable.isEmpty() ? null : shop.cable(point.family(), cable, day),
              shop.driver(point.family(), point.system(), day),
              "");
      stories.put(point.tag(), new LoopStory(point, first));
    }
  }

  private void fillStores() {
    Map<DemoFamily, String> stores = new LinkedHashMap<>();
    for (DemoFamily family : DemoFamily.values()) {
      stores.put(family, family == DemoFamily.TEASEL ? "Brindle Creek shop" : "Halvenmouth store");
    }
    shop.stock(stores, DemoMoment.on(LocalDate.of(2022, 1, 10)));
    shop.stocked("probe", DemoFamily.LINNET_5, "1.0", 2).quarantined("dropped, tip cracked");
    shop.stocked("driver", DemoFamily.BRACKEN_7, "7.0", 1).quarantined("returned, not tested yet");
  }

  private void outage(DemoTrain train, int outage) {
    List<LoopStory> loops = of(train);
    for (int i = 0; i < loops.size(); i++) {
      LocalDate day = train.outages().get(outage).plusDays(i / LOOPS_A_DAY);
      DemoMoment start = DemoMoment.on(day.toString(), "07:30").plusMinutes(90 * (i % LOOPS_A_DAY));
      calibrate(loops.get(i), outage, start);
    }
  }

  private List<LoopStory> of(DemoTrain train) {
    return stories.values().stream().filter(story -> story.point.train() == train).toList();
  }

  private void calibrate(LoopStory loop, int outage, DemoMoment start) {
    Optional<DemoFaults.Exchange> exchange =
        DemoFaults.EXCHANGES.stream()
            .filter(e -> e.tag().equals(loop.point.tag()) && e.outage() == outage)
            .findFirst();
    if (exchange.isPresent()) {
      loop.curve(start, "as found", exchange.get().damage(), exchange.get().noCurve());
      exchange(loop, exchange.get(), start.plusMinutes(30));
      loop.curve(start.plusMinutes(60), "as left");
    } else if (!special(loop, outage, start)) {
      usual(loop, outage, start);
    }
  }

  /** Mostly nothing is touched; sometimes a connector is cleaned and the curve taken again. */
  private static void usual(LoopStory loop, int outage, DemoMoment start) {
    boolean touched = new Random(loop.point.tag().hashCode() * 31L + outage).nextInt(6) == 0;
    loop.curve(start, touched ? "as found" : BOTH);
    if (touched) {
      loop.curve(start.plusMinutes(45), "as left");
    }
  }

  private void exchange(LoopStory loop, DemoFaults.Exchange exchange, DemoMoment at) {
    DemoPart old = loop.now().in(exchange.slot()).scrapped(exchange.why());
    loop.exchange(shop.like(old, at), at, "Exchanged: " + exchange.why() + ".");
  }

  private boolean special(LoopStory loop, int outage, DemoMoment start) {
    String tag = loop.point.tag();
    if (tag.equals(DemoFaults.UNKNOWN_LENGTH) && outage == 2) {
      loop.curve(start, "as found");
      DemoPart old = loop.now().in("path-1").scrapped("armour crushed");
      DemoPart cable =
          shop.unmarkedCable(
              loop.point.family(), old.trueMetres, "SHOP-0417", start.plusMinutes(30));
      loop.exchange(cable, start.plusMinutes(30), "Cable from the bottom drawer, no marking.");
      loop.curve(start.plusMinutes(60), "as left");
      return true;
    }
    if (tag.equals(DemoFaults.TOO_LONG_AND_REGAPPED) && outage == 1) {
      loop.curve(start, "as found");
      loop.now().probe().scrapped("tip cracked");
      DemoPart longer = taken("probe", DemoFamily.BRACKEN_7, "2.0");
      loop.exchange(
          longer, start.plusMinutes(40), "Probe exchanged; gap set again until it read -8.9 V.");
      return true;
    }
    if (tag.equals(DemoFaults.TOO_LONG_AND_REGAPPED) && outage == 2) {
      loop.curveFromVolts(start, BOTH);
      return true;
    }
    return false;
  }

  /** Swaps made while putting the machine together again, after the curves. */
  private void afterOutage(LocalDate outage) {
    if (outage.equals(LocalDate.of(2025, 9, 15))) {
      swap(DemoFaults.CABLES_SWAPPED, "path-1", DemoMoment.on("2025-09-20", "15:10"));
    }
    if (outage.equals(LocalDate.of(2024, 5, 13))) {
      swap(DemoFaults.PROBES_SWAPPED, "probe", DemoMoment.on("2024-05-28", "14:00"));
    }
  }

  private void swap(List<String> pair, String slot, DemoMoment at) {
    LoopStory one = story(pair.get(0));
    LoopStory other = story(pair.get(1));
    DemoPart ofOne = one.now().in(slot);
    DemoPart ofOther = other.now().in(slot);
    one.exchange(ofOther, at, "Found at reassembly.");
    other.exchange(ofOne, at, "Found at reassembly.");
  }

  private void betweenOutages() {
    LoopStory shifted = story(DemoFaults.DRIVER_OF_ANOTHER_LENGTH);
    shifted.now().driver().quarantined("output unsteady, to be examined");
    shifted.exchange(
        taken("driver", DemoFamily.TEASEL, "20"),
        DemoMoment.on("2026-04-11", "09:40"),
        "Driver failed in service; the one at hand was fitted.");
    LoopStory changed = story(DemoFaults.CHANGED_SINCE_CALIBRATION);
    changed.now().probe().quarantined("reads unsteady, to be examined");
    changed.exchange(
        taken("probe", DemoFamily.TEASEL, String.valueOf(changed.now().probe().length)),
        DemoMoment.on("2026-05-06", "11:15"),
        "Probe exchanged like for like on the run.");
    story(DemoFaults.DRIFTING).curve(DemoMoment.on("2026-04-14", "10:20"), BOTH);
  }

  /** Takes a part out of the store. */
  private DemoPart taken(String kind, DemoFamily family, String length) {
    DemoPart part = shop.stocked(kind, family, length, 0);
    part.store = "";
    part.bin = "";
    return part;
  }

  LoopStory story(String tag) {
    return Optional.ofNullable(stories.get(tag)).orElseThrow();
  }

  List<LoopStory> all() {
    return new ArrayList<>(stories.values());
  }
}
