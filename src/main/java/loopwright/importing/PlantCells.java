package loopwright.importing;

import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import loopwright.plant.Machine;
import loopwright.plant.MachineId;
import loopwright.plant.Plant;
import loopwright.plant.Site;
import loopwright.plant.SiteDetails;
import loopwright.plant.SiteId;
import loopwright.plant.Train;
import loopwright.plant.TrainId;
import loopwright.plant.Zones;

/**
 * Finds or plans the site, train and machine that a row of a points file names. Names and the zone
 * need to stand in one row only; where several rows give them, they have to agree.
 */
final class PlantCells {
  private final Planning planning;
  private final Plant plant;
  private final Map<World.Key, ZoneId> zones = new HashMap<>();

  /** What was said of a thing, and where. */
  private final Map<String, Said> said = new HashMap<>();

  private record Said(String text, String by) {}

  PlantCells(Planning planning) {
    this.planning = planning;
    this.plant = planning.features.plant();
    for (Site site : plant.sites(planning.sql)) {
      World.Key key = siteKey(site.code());
      planning.world.recorded(key, site.id().number());
      zones.put(key, site.zone());
      said.put(key + " name", new Said(site.name(), "the register"));
      said.put(key + " zone", new Said(site.zone().getId(), "the register"));
    }
  }

  /** Where a point is, all planned or recorded. */
  record Where(World.Key siteKey, long site, ZoneId zone, long machine, String machineName) {}

  private static World.Key siteKey(String code) {
    return World.Key.of(World.Thing.SITE, code);
  }

  Optional<Where> read(RowCells row) {
    String site = row.neededName("site", "the site's code");
    String train = row.neededName("train", "the train's code");
    String machine = row.neededName("machine", "the machine's code");
    Optional<ZoneId> zone = row.read("site_zone", Zones::read);
    Optional<Integer> place = row.whole("machine_place");
    if (site.isEmpty() || train.isEmpty() || machine.isEmpty()) {
      return Optional.empty();
    }
    World.Key siteKey = siteKey(site);
    agree(row, "site_name", siteKey + " name", row.text("site_name"));
    zone.ifPresent(z -> agree(row, "site_zone", siteKey + " zone", z.getId()));
    Optional<Long> siteNumber = site(row, siteKey, site, zone);
    if (siteNumber.isEmpty() || !row.isGood()) {
      return Optional.empty();
    }
    World.Key trainKey = World.Key.of(World.Thing.TRAIN, site, train);
    agree(row, "train_name", trainKey + " name", row.text("train_name"));
    Optional<Long> trainNumber = train(row, siteNumber.get(), trainKey, train);
    World.Key machineKey = World.Key.of(World.Thing.MACHINE, site, train, machine);
    agree(row, "machine_name", machineKey + " name", row.text("machine_name"));
    Optional<Long> machineNumber =
        trainNumber.flatMap(t -> machine(row, t, machineKey, machine, place));
    ZoneId clock = zones.get(siteKey);
    return machineNumber.isEmpty() || clock == null
        ? Optional.empty()
        : Optional.of(
            new Where(
                siteKey, siteNumber.get(), clock, machineNumber.get(), train + " " + machine));
  }

  /** Two rows, or a row and the register, must not say different things of one thing. */
  private void agree(RowCells row, String heading, String about, String text) {
    if (text.isEmpty() || (!heading.equals("site_zone") && tooLong(row, heading, text, 120))) {
      return;
    }
    Said before = said.putIfAbsent(about, new Said(text, row.place().toString()));
    if (before != null && !before.text().equals(text)) {
      row.complain(heading, ImportProblem.DISAGREES, Shown.cell(text), before.text(), before.by());
    }
  }

  private String name(World.Key key, String code) {
    Said name = said.get(key + " name");
    return name == null ? code : name.text();
  }

  private Optional<Long> site(RowCells row, World.Key key, String code, Optional<ZoneId> zone) {
    Optional<World.Entry> entry = planning.world.find(key);
    if (entry.isPresent()) {
      return Optional.of(entry.get().number());
    }
    if (zone.isEmpty()) {
      if (!row.isFilled("site_zone")) {
        row.complain(
            "site_zone",
            ImportProblem.EMPTY_CELL,
            "the time zone of the new site, such as Europe/Berlin or America/Chicago");
      }
      return Optional.empty();
    }
    if (tooLong(row, "site", code, 20)) {
      return Optional.empty();
    }
    zones.put(key, zone.get());
    long planned = planning.world.plan(key, row.place());
    planning.steps.add(
        (tx, ids) -> {
          SiteDetails site = new SiteDetails(code, name(key, code), zone.get(), true);
          ids.made(planned, plant.addSite(tx, site).number());
        });
    return Optional.of(planned);
  }

  private Optional<Long> train(RowCells row, long site, World.Key key, String code) {
    Optional<World.Entry> entry = planning.world.find(key);
    if (entry.isPresent()) {
      return Optional.of(entry.get().number());
    }
    Optional<Train> known =
        site < 0 ? Optional.empty() : plant.trainNamed(planning.sql, new SiteId(site), code);
    if (known.isPresent()) {
      planning.world.recorded(key, known.get().id().number());
      said.put(key + " name", new Said(known.get().name(), "the register"));
      agree(row, "train_name", key + " name", row.text("train_name"));
      return Optional.of(known.get().id().number());
    }
    if (tooLong(row, "train", code, 30)) {
      return Optional.empty();
    }
    long planned = planning.world.plan(key, row.place());
    planning.steps.add(
        (tx, ids) -> {
          SiteId at = new SiteId(ids.real(site));
          ids.made(planned, plant.addTrain(tx, at, code, name(key, code)).number());
        });
    return Optional.of(planned);
  }

  private Optional<Long> machine(
      RowCells row, long train, World.Key key, String code, Optional<Integer> place) {
    Optional<World.Entry> entry = planning.world.find(key);
    if (entry.isPresent()) {
      return Optional.of(entry.get().number());
    }
    Optional<Machine> known =
        train < 0 ? Optional.empty() : plant.machineNamed(planning.sql, new TrainId(train), code);
    if (known.isPresent()) {
      planning.world.recorded(key, known.get().id().number());
      said.put(key + " name", new Said(known.get().name(), "the register"));
      agree(row, "machine_name", key + " name", row.text("machine_name"));
      return Optional.of(known.get().id().number());
    }
    if (place.filter(p -> p < 1 || p > 999).isPresent()) {
      row.complain(
          "machine_place",
          ImportProblem.OUT_OF_RANGE,
          place.get(),
          "Give its order along the shaft, counted from 1.");
      return Optional.empty();
    }
    if (tooLong(row, "machine", code, 30)) {
      return Optional.empty();
    }
    long planned = planning.world.plan(key, row.place());
    planning.steps.add(
        (tx, ids) -> {
          TrainId in = new TrainId(ids.real(train));
          MachineId made = plant.addMachine(tx, in, code, name(key, code), place.orElse(1));
          ids.made(planned, made.number());
        });
    return Optional.of(planned);
  }

  private static boolean tooLong(RowCells row, String heading, String text, int most) {
    return row.attempt(heading, () -> loopwright.problem.Text.needed("a name", text, most))
        .isEmpty();
  }
}
