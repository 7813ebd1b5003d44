package loopwright.demo;

import java.time.LocalDate;
import java.util.List;

/** A train of the invented plant, with the outages in which its loops were calibrated. */
record DemoTrain(
    Site site,
    String code,
    String name,
    LocalDate commissioned,
    List<LocalDate> outages,
    int intervalMonths,
    Levels levels,
    List<Machine> machines) {

  record Site(String code, String name, String zone, boolean inMil, String area) {}

  /** Radial alert and danger, in the site's unit. */
  record Levels(String alert, String danger) {}

  /**
   * @param bearings radial bearings, each with an XY pair
   * @param thrust has a thrust bearing with two axial probes
   * @param phase has a phase reference
   * @param expansion has a pair of probes that measure differential expansion together
   */
  record Machine(
      String code,
      String name,
      int bearings,
      boolean thrust,
      boolean phase,
      boolean expansion,
      DemoFamily radial,
      String radialSystem,
      DemoFamily axial,
      String axialSystem) {

    /** A machine whose axial loops are made like its radial ones. */
    static Machine of(
        String code,
        String name,
        int bearings,
        boolean thrust,
        boolean phase,
        DemoFamily family,
        String system) {
      return new Machine(
          code, name, bearings, thrust, phase, false, family, system, family, system);
    }

    Machine withAxial(DemoFamily family, String system) {
      return new Machine(
          code, name, bearings, thrust, phase, expansion, radial, radialSystem, family, system);
    }

    Machine withExpansion() {
      return new Machine(
          code, name, bearings, thrust, phase, true, radial, radialSystem, axial, axialSystem);
    }
  }

  static List<LocalDate> days(String... days) {
    return List.of(days).stream().map(LocalDate::parse).toList();
  }
}
