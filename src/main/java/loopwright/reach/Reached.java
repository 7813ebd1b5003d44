package loopwright.reach;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Evidence;
import loopwright.standard.Standard;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import org.jooq.DSLContext;

/** Everything that the error of a standard touched: directly, and through what rests on it. */
final class Reached {
  private final Standards standards;
  private final Calibrations calibrations;
  private final Evidence.Book book;
  private final int most;

  /**
   * @param most results of each standard on the way, newest first
   */
  Reached(Standards standards, Calibrations calibrations, Evidence.Book book, int most) {
    this.standards = standards;
    this.calibrations = calibrations;
    this.book = book;
    this.most = most;
  }

  /**
   * What is asked.
   *
   * @param error empty where the standard says no quantity
   */
  record Asked(Optional<StandardError> error, LocalDate from, LocalDate until) {}

  /** The ways by which one record was reached. */
  private static final class Ways {
    private final Calibrated record;
    private final List<String> paths = new ArrayList<>();
    private String whyNot = "";
    private boolean carries;

    private Ways(Calibrated record) {
      this.record = record;
    }

    private void add(Affected by) {
      paths.add(by.pathInWords());
      carries |= by.carries();
      whyNot = whyNot.isEmpty() ? by.whyNot() : whyNot;
    }
  }

  /** Worst first. */
  List<Touched> touched(DSLContext sql, Standard standard, Asked asked, ZoneId zone) {
    Map<Long, Ways> found = new LinkedHashMap<>();
    for (Affected by :
        Downstream.of(
            standard, asked.from(), asked.until(), standards.all(sql), standards.traces(sql))) {
      for (Calibrated record : records(sql, by, zone)) {
        found.computeIfAbsent(record.id(), any -> new Ways(record)).add(by);
      }
    }
    return found.values().stream()
        .map(ways -> touched(book.of(sql, ways.record), ways, asked))
        .sorted(Touched.WORST_FIRST)
        .toList();
  }

  private List<Calibrated> records(DSLContext sql, Affected by, ZoneId zone) {
    Long certificate = by.certificate();
    return certificate == null
        ? calibrations.madeWith(
            sql,
            by.standard().id(),
            SiteMoment.startOf(by.from(), zone),
            SiteMoment.startOf(by.until(), zone),
            most)
        : calibrations.madeOn(sql, certificate, most);
  }

  private static Touched touched(Evidence evidence, Ways ways, Asked asked) {
    return ways.carries && asked.error().isPresent()
        ? Touched.of(evidence, asked.error().get(), ways.paths)
        : Touched.only(evidence, ways.paths, ways.whyNot);
  }
}
