package loopwright.demo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.demo.DemoTrain.Machine;

/** Lays out the points of one train, with the monitor channels they are wired to. */
final class DemoPoints {
  private final DemoTrain train;
  private final String stem;
  private final boolean inMil;
  private final List<DemoPoint> points = new ArrayList<>();
  private int bearing;
  private int axial;
  private int phase;
  private int slot = 1;
  private int channel;
  private String phaseTag = "";

  private DemoPoints(DemoTrain train) {
    this.train = train;
    this.stem = train.code().replace("-", "");
    this.inMil = train.site().inMil();
  }

  static List<DemoPoint> of(DemoTrain train) {
    DemoPoints layout = new DemoPoints(train);
    for (int i = 0; i < train.machines().size(); i++) {
      layout.machine(train.machines().get(i), i + 1);
    }
    return layout.points;
  }

  private void machine(Machine machine, int place) {
    if (machine.phase()) {
      phaseReference(machine, place);
    }
    nextSlot();
    for (int i = 0; i < machine.bearings(); i++) {
      radialPair(machine, place, i == 0 ? "drive end" : i == 1 ? "non-drive end" : "wheel side");
    }
    if (machine.thrust()) {
      axialPair(machine, place);
    }
    if (machine.expansion()) {
      expansionPair(machine, place);
    }
  }

  private void nextSlot() {
    slot++;
    channel = 0;
  }

  private void phaseReference(Machine machine, int place) {
    phaseTag = stem + "-P" + ++phase;
    nextSlot();
    Map<String, String> cells =
        cells(machine, place, phaseTag, "phase reference", machine.name() + ", drive end shaft");
    cells.put("mark", phase == 1 ? "notch" : "projection");
    cells.put("events_per_turn", "1");
    cells.put("threshold_v", "-7.0");
    channel(cells);
    cells.put("ok_low_v", "-17.5");
    cells.put("ok_high_v", "-1.5");
    add(cells, machine.radial(), machine.radialSystem(), 0);
  }

  private void radialPair(Machine machine, int place, String end) {
    bearing++;
    for (String axis : List.of("X", "Y")) {
      String tag = stem + "-V" + bearing;
      Map<String, String> cells =
          cells(machine, place, tag + axis, "radial vibration", "bearing " + bearing + ", " + end);
      cells.put("pair", tag + (axis.equals("X") ? "Y" : "X"));
      cells.put("angle_deg", axis.equals("X") ? "-45" : "45");
      cells.put("viewing_end", "drive end");
      cells.put("rotation", "counter-clockwise");
      channel(cells);
      vibrationSettings(cells);
      cells.put("phase_reference", phaseTag);
      add(cells, machine.radial(), machine.radialSystem(), bearing);
    }
  }

  private void vibrationSettings(Map<String, String> cells) {
    cells.put("full_scale_low", "0");
    cells.put("full_scale_high", inMil ? "10" : "250");
    cells.put("alert_high", train.levels().alert());
    cells.put("danger_high", train.levels().danger());
    cells.put("level_unit", inMil ? "mil" : "µm");
    cells.put("alert_delay_s", "3");
    cells.put("danger_delay_s", "1");
    cells.put("ok_low_v", "-16.75");
    cells.put("ok_high_v", "-2.75");
  }

  private void axialPair(Machine machine, int place) {
    nextSlot();
    int first = axial + 1;
    for (int i = 0; i < 2; i++) {
      axial++;
      Map<String, String> cells =
          cells(machine, place, stem + "-A" + axial, "axial position", "thrust collar");
      cells.put("pair", stem + "-A" + (i == 0 ? axial + 1 : axial - 1));
      channel(cells);
      axialSettings(cells, machine.axial());
      cells.put("voting_group", stem + " thrust " + (first + 1) / 2);
      cells.put("voting_logic", "2oo2");
      add(cells, machine.axial(), machine.axialSystem(), 0);
    }
  }

  private void axialSettings(Map<String, String> cells, DemoFamily family) {
    boolean wide = family.hasLongRange();
    // less than half the linear range, since the zero voltage is told to a tenth of a volt
    String fullScale = inMil ? "36" : wide ? "1800" : "900";
    cells.put("full_scale_low", "-" + fullScale);
    cells.put("full_scale_high", fullScale);
    twoSided(cells, "alert", inMil ? "18" : "450");
    twoSided(cells, "danger", inMil ? "28" : "700");
    cells.put("level_unit", inMil ? "mil" : "µm");
    cells.put("alert_delay_s", "1");
    cells.put("danger_delay_s", "1");
    cells.put("ok_low_v", "-19");
    cells.put("ok_high_v", "-1.3");
    cells.put("zero_v", String.valueOf(family.midVolts()));
    cells.put("positive_direction", "toward");
  }

  private static void twoSided(Map<String, String> cells, String level, String at) {
    cells.put(level + "_low", "-" + at);
    cells.put(level + "_high", at);
  }

  /** Two probes on the two ramps of one shaft, added up in one channel. */
  private void expansionPair(Machine machine, int place) {
    nextSlot();
    channel++;
    for (int i = 1; i <= 2; i++) {
      Map<String, String> cells =
          cells(
              machine,
              place,
              stem + "-D" + i,
              "differential expansion",
              "expansion ramp, " + (i == 1 ? "turbine side" : "coupling side"));
      cells.put("pair", stem + "-D" + (3 - i));
      cells.put("ramp_deg", "30");
      wired(cells);
      cells.put("full_scale_low", "-4000");
      cells.put("full_scale_high", "4000");
      twoSided(cells, "alert", "3000");
      twoSided(cells, "danger", "3500");
      cells.put("level_unit", "µm");
      cells.put("ok_low_v", "-19");
      cells.put("ok_high_v", "-1.3");
      cells.put("zero_v", String.valueOf(machine.axial().midVolts()));
      cells.put("positive_direction", "toward");
      add(cells, machine.axial(), machine.axialSystem(), 0);
    }
  }

  private Map<String, String> cells(
      Machine machine, int place, String tag, String kind, String where) {
    Map<String, String> cells = new LinkedHashMap<>();
    cells.put("site", train.site().code());
    cells.put("site_name", train.site().name());
    cells.put("site_zone", train.site().zone());
    cells.put("train", train.code());
    cells.put("train_name", train.name());
    cells.put("machine", machine.code());
    cells.put("machine_name", machine.name());
    cells.put("machine_place", String.valueOf(place));
    cells.put("tag", tag);
    cells.put("kind", kind);
    cells.put("place", where);
    cells.put("shaft_alloy", "4140");
    cells.put("area_class", train.site().area());
    cells.put("interval_months", String.valueOf(train.intervalMonths()));
    cells.put("junction_box", "JB-" + stem + "-" + place);
    return cells;
  }

  private void channel(Map<String, String> cells) {
    channel++;
    if (channel > 4) {
      nextSlot();
      channel = 1;
    }
    wired(cells);
  }

  private void wired(Map<String, String> cells) {
    cells.put("rack", "RK-" + stem);
    cells.put("rack_slot", String.valueOf(slot));
    cells.put("rack_channel", String.valueOf(channel));
    cells.put("settings_from", train.commissioned().toString());
    cells.put("authority", "CA-%d-%03d".formatted(train.commissioned().getYear(), 10 + slot));
  }

  private void add(Map<String, String> cells, DemoFamily family, String system, int bearing) {
    cells.put("family", family.code);
    cells.put("scale_factor_mv_mil", String.valueOf(family.millivoltsPerMil));
    if (inMil) {
      cells.put("approved_gap_mil", "50");
    } else {
      cells.put("approved_gap_um", family.hasLongRange() ? "2500" : "1250");
    }
    String lead = lead(family, bearing, String.valueOf(cells.get("tag")));
    points.add(
        new DemoPoint(String.valueOf(cells.get("tag")), train, family, system, lead, inMil, cells));
  }

  /** Short and long leads alternate from bearing to bearing, as the covers call for. */
  private String lead(DemoFamily family, int bearing, String tag) {
    boolean even = bearing % 2 == 0;
    if (DemoFaults.MIXED_PAIRS.contains(tag)) {
      return tag.endsWith("X") ? "1.0" : "0.5";
    }
    return switch (family) {
      case LINNET_5 -> train.code().equals("X-701") ? "5.0" : even ? "0.5" : "1.0";
      case LINNET_9 -> even ? "0.5" : "1.0";
      case BRACKEN_7 -> even ? "2.0" : "1.0";
      case TEASEL -> even ? "6" : "3";
      case GARNET -> "1.0";
    };
  }
}
