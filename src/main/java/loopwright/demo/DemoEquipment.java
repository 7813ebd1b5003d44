package loopwright.demo;

import java.math.BigDecimal;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.standard.Certificate;
import loopwright.standard.CertifiedRange;
import loopwright.standard.Standard;
import loopwright.standard.StandardEvent;
import loopwright.standard.StandardKind;
import loopwright.standard.Standards;
import loopwright.units.Reported;
import loopwright.units.Unit;

/** The invented shop's measuring equipment, in date as of today, to try a budget with. */
public final class DemoEquipment {
  private static final int MONTHS_AGO = 5;
  private static final String ISSUER = "Halvenmouth Calibration Room";

  private DemoEquipment() {}

  /** Registers a micrometer and a voltmeter with a certificate and a check each. */
  public static void register(Database database, Standards standards, InstantSource clock) {
    LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    database.write(
        Act.ofProgram("reference standards", "The invented shop's equipment, as of today."),
        tx -> {
          Maker maker = new Maker(tx, standards, today);
          maker.add("MIC-1", StandardKind.MICROMETER, micrometer());
          maker.add("DVM-1", StandardKind.VOLTMETER, voltmeter());
          return null;
        });
  }

  private static CertifiedRange micrometer() {
    return new CertifiedRange(
        1,
        of("0", Unit.MICROMETRE),
        of("13000", Unit.MICROMETRE),
        of("0", Unit.MICROMETRE),
        of("2.0", Unit.MICROMETRE),
        Optional.of(new CertifiedRange.Percent("0.05", new BigDecimal("0.05"))),
        Optional.of(of("1", Unit.MICROMETRE)));
  }

  private static CertifiedRange voltmeter() {
    return new CertifiedRange(
        1,
        of("0", Unit.VOLT),
        of("30", Unit.VOLT),
        of("0", Unit.VOLT),
        of("0.004", Unit.VOLT),
        Optional.of(new CertifiedRange.Percent("0.02", new BigDecimal("0.02"))),
        Optional.of(of("0.001", Unit.VOLT)));
  }

  private static Reported of(String typed, Unit unit) {
    return Reported.read(typed, unit).orElseThrow();
  }

  private record Maker(Tx tx, Standards standards, LocalDate today) {

    void add(String code, StandardKind kind, CertifiedRange range) {
      LocalDate issued = today.minusMonths(MONTHS_AGO);
      standards.add(
          tx,
          new Standard(
              0, code, kind, "Brackwater", "B-20", "77-" + code, "", List.of(), List.of()));
      Standard standard = standards.coded(tx.sql(), code);
      standards.add(
          tx,
          standard,
          new Certificate(
              0,
              "HC-" + issued.getYear() + "-" + code,
              ISSUER,
              issued,
              issued.plusYears(1),
              BigDecimal.valueOf(2),
              List.of(range),
              ""),
          today);
      standards.add(
          tx,
          standard,
          new StandardEvent(
              StandardEvent.Kind.CHECK_PASSED,
              today.minusMonths(1),
              "Compared with the room's second one: nothing to see.",
              ""),
          today);
    }
  }
}
