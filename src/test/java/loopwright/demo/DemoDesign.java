package loopwright.demo;

import static loopwright.demo.DemoFamily.BRACKEN_7;
import static loopwright.demo.DemoFamily.GARNET;
import static loopwright.demo.DemoFamily.LINNET_5;
import static loopwright.demo.DemoFamily.LINNET_9;
import static loopwright.demo.DemoFamily.TEASEL;

import java.time.LocalDate;
import java.util.List;
import loopwright.demo.DemoTrain.Levels;
import loopwright.demo.DemoTrain.Machine;
import loopwright.demo.DemoTrain.Site;

/** What the invented plant consists of. Sites, trains and tags are made up. */
final class DemoDesign {
  /** The day the files are as of; loading shifts it to today. */
  static final LocalDate REFERENCE_DAY = LocalDate.of(2026, 6, 30);

  static final Site HALVENMOUTH =
      new Site("HALV", "Halvenmouth refinery", "Europe/London", false, "Zone 2 IIB T3");

  /** West of Greenwich, and a shop that thinks in mil. */
  static final Site BRINDLE =
      new Site("BRIN", "Brindle Creek gas plant", "America/Edmonton", true, "Div 2 group D");

  static final List<DemoTrain> TRAINS =
      List.of(
          new DemoTrain(
              HALVENMOUTH,
              "K-101",
              "Wet gas compressor",
              LocalDate.of(2019, 6, 3),
              DemoTrain.days("2022-09-12", "2024-03-11", "2025-09-15"),
              24,
              new Levels("90", "130"),
              List.of(
                  Machine.of("TURB", "Steam turbine", 2, true, true, LINNET_5, "5.0"),
                  Machine.of("COMP", "Wet gas compressor", 2, true, false, LINNET_5, "5.0"))),
          new DemoTrain(
              HALVENMOUTH,
              "K-201",
              "Hydrogen recycle compressor",
              LocalDate.of(2018, 10, 22),
              DemoTrain.days("2022-07-04", "2024-05-13", "2026-04-13"),
              24,
              new Levels("75", "110"),
              List.of(
                  Machine.of("TURB", "Steam turbine", 2, true, true, LINNET_9, "9.0")
                      .withAxial(GARNET, "9.0")
                      .withExpansion(),
                  Machine.of("LP", "Low-pressure casing", 2, true, false, LINNET_9, "9.0")
                      .withAxial(GARNET, "9.0"),
                  Machine.of("HP", "High-pressure casing", 2, true, false, LINNET_9, "9.0")
                      .withAxial(GARNET, "9.0"))),
          new DemoTrain(
              HALVENMOUTH,
              "G-301",
              "Gas turbine generator",
              LocalDate.of(2020, 3, 9),
              DemoTrain.days("2022-10-03", "2024-10-07", "2026-02-09"),
              24,
              new Levels("100", "150"),
              List.of(
                  Machine.of("GT", "Gas turbine", 2, true, true, BRACKEN_7, "7.0")
                      .withAxial(GARNET, "5.0"),
                  Machine.of("GEAR", "Load gear", 4, true, false, BRACKEN_7, "7.0")
                      .withAxial(GARNET, "5.0"),
                  Machine.of("GEN", "Generator", 2, false, true, BRACKEN_7, "7.0"))),
          new DemoTrain(
              HALVENMOUTH,
              "P-401",
              "Boiler feed pump",
              LocalDate.of(2021, 2, 15),
              DemoTrain.days("2023-03-06", "2024-09-02", "2026-03-02"),
              24,
              new Levels("80", "120"),
              List.of(
                  Machine.of("MOT", "Motor", 2, false, false, LINNET_5, "5.0"),
                  Machine.of("PUMP", "Feed pump", 2, true, true, LINNET_5, "5.0"))),
          new DemoTrain(
              BRINDLE,
              "K-501",
              "Sales gas compressor",
              LocalDate.of(2020, 8, 17),
              DemoTrain.days("2022-08-08", "2023-08-14", "2024-08-12", "2025-08-11"),
              12,
              new Levels("3.0", "4.5"),
              List.of(
                  Machine.of("GT", "Gas turbine", 2, true, true, TEASEL, "20"),
                  Machine.of("COMP", "Compressor", 2, true, false, TEASEL, "20"))),
          new DemoTrain(
              BRINDLE,
              "K-601",
              "Refrigeration compressor",
              LocalDate.of(2019, 11, 4),
              DemoTrain.days("2022-11-07", "2024-06-10", "2026-01-12"),
              24,
              new Levels("2.5", "4.0"),
              List.of(
                  Machine.of("MOT", "Motor", 2, false, true, TEASEL, "15"),
                  Machine.of("GEAR", "Speed increaser", 4, false, false, TEASEL, "15"),
                  Machine.of("COMP", "Screw compressor", 2, true, true, TEASEL, "25"))),
          new DemoTrain(
              BRINDLE,
              "X-701",
              "Expander compressor",
              LocalDate.of(2021, 5, 25),
              DemoTrain.days("2023-05-15", "2025-05-12", "2026-05-11"),
              24,
              new Levels("2.0", "3.0"),
              List.of(Machine.of("EXP", "Expander", 2, true, true, LINNET_5, "5.0"))));

  private DemoDesign() {}
}
