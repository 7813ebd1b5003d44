package loopwright.demo;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.demo.LoopStory.Fitting;

/** The played scenario as files: what stands in {@code demo-data/}, by path below it. */
final class DemoFiles {
  private static final String[] CURVES_FOR_ANALYSE = {
    DemoFaults.CONFORMS_AFTER_EXCHANGE,
    DemoFaults.DRIFTING,
    DemoFaults.TOO_LONG_AND_REGAPPED,
    "K201-A1",
    "P401-V1X"
  };

  private DemoFiles() {}

  static Map<String, String> of(DemoScenario scenario) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("families.csv", families());
    files.put("components.csv", components(scenario));
    files.put("points.csv", points(scenario));
    files.put("placements.csv", placements(scenario));
    files.put("calibrations.csv", calibrations(scenario));
    files.put("register.csv", register(scenario));
    for (String tag : CURVES_FOR_ANALYSE) {
      LoopStory loop = scenario.story(tag);
      for (LoopStory.Curve curve : lastDay(loop)) {
        String stage = curve.stage().equals("as found and as left") ? "as found" : curve.stage();
        files.put("curves/" + tag + "-" + stage.replace(' ', '-') + ".csv", curve(loop, curve));
      }
    }
    return files;
  }

  private static List<LoopStory.Curve> lastDay(LoopStory loop) {
    DemoMoment last = loop.curves.get(loop.curves.size() - 1).at();
    return loop.curves.stream().filter(curve -> curve.at().day().equals(last.day())).toList();
  }

  private static String families() {
    Sheet sheet =
        new Sheet(
            "family",
            "name",
            "maker",
            "scale_factor_mv_mil",
            "linear_range_from_um",
            "linear_range_to_um",
            "start_volts",
            "tip_mm",
            "probe_lengths_m",
            "cable_lengths_m",
            "system_lengths_m",
            "cable_use",
            "two_cables_allowed",
            "target_alloy",
            "profile");
    for (DemoFamily family : DemoFamily.values()) {
      VoltageModel.Nature nature = family.nature;
      Map<String, String> row = new LinkedHashMap<>();
      row.put("family", family.code);
      row.put("name", family.title);
      row.put("maker", family.maker);
      row.put("scale_factor_mv_mil", String.valueOf(family.millivoltsPerMil));
      row.put("linear_range_from_um", whole(nature.fromMicrometres()));
      row.put("linear_range_to_um", whole(nature.toMicrometres()));
      row.put("start_volts", String.valueOf(-nature.voltsAtFrom()));
      row.put("tip_mm", family.tipMillimetres);
      row.put("probe_lengths_m", metres(family, family.leads));
      row.put("cable_lengths_m", metres(family, family.cables));
      row.put("system_lengths_m", metres(family, family.systems));
      row.put("cable_use", family.cableUse);
      row.put("two_cables_allowed", "no");
      row.put("target_alloy", "4140");
      row.put("profile", family.profile);
      sheet.row(row);
    }
    return sheet.text();
  }

  /** A list of families gives its lengths in one unit; a foot is 0.3048 m exactly. */
  private static String metres(DemoFamily family, List<String> lengths) {
    return lengths.stream()
        .map(
            length ->
                family.unit.equals("m")
                    ? length
                    : new BigDecimal(length).multiply(new BigDecimal("0.3048")).toPlainString())
        .collect(Collectors.joining(" "));
  }

  private static String whole(double micrometres) {
    return String.valueOf(Math.round(micrometres));
  }

  private static String components(DemoScenario scenario) {
    Sheet sheet =
        new Sheet(
            "kind",
            "maker",
            "model",
            "serial",
            "shop_number",
            "family",
            "length_m",
            "length_ft",
            "length_evidence",
            "physical_length_m",
            "condition",
            "condition_reason",
            "store",
            "bin",
            "since",
            "note");
    for (DemoPart part : scenario.shop.all()) {
      Map<String, String> row = new LinkedHashMap<>();
      row.put("kind", part.kind);
      row.put("maker", part.family.maker);
      row.put("model", part.model);
      row.put("serial", part.serial);
      row.put("shop_number", part.shopNumber);
      row.put("family", part.family.code);
      if (part.length != null) {
        row.put("length_" + part.family.unit, part.length);
        row.put("length_evidence", part.evidence);
      }
      row.put("physical_length_m", part.physicalMetres);
      row.put("condition", part.condition);
      row.put("condition_reason", part.conditionReason);
      row.put("store", part.store);
      row.put("bin", part.bin);
      row.put("since", part.since.day().toString());
      row.put("note", part.note);
      sheet.row(row);
    }
    return sheet.text();
  }

  private static String points(DemoScenario scenario) {
    Set<String> headings = new LinkedHashSet<>();
    scenario.all().forEach(loop -> headings.addAll(loop.point.cells().keySet()));
    Sheet sheet = new Sheet(headings.toArray(String[]::new));
    scenario.all().forEach(loop -> sheet.row(loop.point.cells()));
    return sheet.text();
  }

  private static String placements(DemoScenario scenario) {
    Sheet sheet =
        new Sheet(
            "tag",
            "slot",
            "content",
            "maker",
            "model",
            "serial",
            "shop_number",
            "from",
            "until",
            "note");
    for (LoopStory loop : scenario.all()) {
      for (String slot : List.of("probe", "path-1", "driver")) {
        slot(loop, slot, sheet);
      }
    }
    return sheet.text();
  }

  /** One row for each stay of a part in the slot. */
  private static void slot(LoopStory loop, String slot, Sheet sheet) {
    List<Fitting> changes = new ArrayList<>();
    for (Fitting fitting : loop.fittings) {
      boolean same =
          !changes.isEmpty()
              && part(changes.get(changes.size() - 1), slot).equals(part(fitting, slot));
      if (!same) {
        changes.add(fitting);
      }
    }
    for (int i = 0; i < changes.size(); i++) {
      Fitting fitting = changes.get(i);
      Optional<DemoPart> part = part(fitting, slot);
      Map<String, String> row = new LinkedHashMap<>();
      row.put("tag", loop.point.tag());
      row.put("slot", slot);
      row.put("content", part.isPresent() ? "part" : "none");
      part.ifPresent(fitted -> identity(row, fitted));
      row.put("from", fitting.from().toString());
      row.put("until", i + 1 < changes.size() ? changes.get(i + 1).from().toString() : "");
      row.put("note", fitting.note());
      sheet.row(row);
    }
  }

  private static Optional<DemoPart> part(Fitting fitting, String slot) {
    return switch (slot) {
      case "probe" -> Optional.of(fitting.probe());
      case "driver" -> Optional.of(fitting.driver());
      default -> Optional.ofNullable(fitting.cable());
    };
  }

  private static void identity(Map<String, String> row, DemoPart part) {
    row.put("maker", part.family.maker);
    row.put("model", part.model);
    row.put("serial", part.serial);
    row.put("shop_number", part.shopNumber);
  }

  private static String calibrations(DemoScenario scenario) {
    Sheet sheet =
        new Sheet(
            "tag",
            "stage",
            "measured_at",
            "performed_by",
            "profile",
            "zero",
            "target_alloy",
            "run",
            "gap_um",
            "gap_mil",
            "volts",
            "no_curve_reason");
    for (LoopStory loop : scenario.all()) {
      for (LoopStory.Curve curve : loop.curves) {
        calibration(loop, curve, sheet);
      }
    }
    return sheet.text();
  }

  private static void calibration(LoopStory loop, LoopStory.Curve curve, Sheet sheet) {
    Map<String, String> head = new LinkedHashMap<>();
    head.put("tag", loop.point.tag());
    head.put("stage", curve.stage());
    head.put("measured_at", curve.at().toString());
    head.put(
        "performed_by",
        (loop.point.inMil() ? "Brindle technician " : "Halvenmouth technician ")
            + (1 + Math.floorMod(curve.at().toString().hashCode(), 3)));
    if (!curve.noCurve().isEmpty()) {
      head.put("no_curve_reason", curve.noCurve());
      sheet.row(head);
      return;
    }
    head.put("profile", curve.fitting().driver().family.profile);
    head.put("zero", curve.gapsFromVolts() ? "electrical zero" : "mechanical touch");
    head.put("target_alloy", "4140");
    for (DemoReadings.Reading reading : DemoReadings.of(loop, curve)) {
      Map<String, String> row = new LinkedHashMap<>(head);
      row.put("run", reading.run());
      row.put(loop.point.inMil() ? "gap_mil" : "gap_um", reading.gap());
      row.put("volts", reading.volts());
      sheet.row(row);
    }
  }

  private static String curve(LoopStory loop, LoopStory.Curve curve) {
    Sheet sheet = new Sheet(loop.point.inMil() ? "gap_mil" : "gap_um", "volts", "run");
    for (DemoReadings.Reading reading : DemoReadings.of(loop, curve)) {
      sheet.row(
          Map.of(
              loop.point.inMil() ? "gap_mil" : "gap_um",
              reading.gap(),
              "volts",
              reading.volts(),
              "run",
              reading.run()));
    }
    return sheet.text();
  }

  /** The present configuration, in the form that {@code check} reads. */
  private static String register(DemoScenario scenario) {
    Sheet sheet =
        new Sheet(
            "tag",
            "family",
            "probe_serial",
            "probe_length_m",
            "cable_serial",
            "cable_length_m",
            "driver_serial",
            "system_length_m");
    for (LoopStory loop : scenario.all()) {
      Fitting now = loop.now();
      Map<String, String> row = new LinkedHashMap<>();
      row.put("tag", loop.point.tag());
      row.put("family", now.driver().family.code);
      row.put("probe_serial", now.probe().label());
      row.put("probe_length_m", now.probe().lengthInMetres());
      if (now.cable() != null) {
        row.put("cable_serial", now.cable().label());
        row.put("cable_length_m", now.cable().lengthInMetres());
      }
      row.put("driver_serial", now.driver().label());
      row.put("system_length_m", now.driver().lengthInMetres());
      sheet.row(row);
    }
    return sheet.text();
  }

  /** Rows under headings; a heading that a row doesn't fill stays empty. */
  private static final class Sheet {
    private final String[] headings;
    private final StringWriter out = new StringWriter();
    private final CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out);

    Sheet(String... headings) {
      this.headings = headings;
      csv.writeRecord(headings);
    }

    void row(Map<String, String> cells) {
      csv.writeRecord(
          Arrays.stream(headings).map(h -> Objects.toString(cells.get(h), "")).toList());
    }

    String text() {
      try {
        csv.close();
      } catch (IOException cannotHappen) {
        throw new UncheckedIOException(cannotHappen);
      }
      return out.toString();
    }
  }
}
