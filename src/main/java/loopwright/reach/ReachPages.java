package loopwright.reach;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.math.BigDecimal;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Evidence;
import loopwright.curve.CurveResult;
import loopwright.db.Database;
import loopwright.problem.Refused;
import loopwright.standard.Certificate;
import loopwright.standard.CertifiedRange;
import loopwright.standard.Standard;
import loopwright.standard.StandardKind;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import loopwright.units.Numbers;
import loopwright.units.Unit;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** How far a standard's error reaches: what it touched, worked out again. Nothing is stored. */
public final class ReachPages implements Pages {
  static final int MOST = 2000;
  private static final int ROWS = 3;
  private static final List<String> CELLS = List.of("low", "high", "offset", "percent");

  private final Database database;
  private final Page page;
  private final Standards standards;
  private final Calibrations calibrations;
  private final Evidence.Book book;
  private final Supplier<ZoneId> zone;
  private final InstantSource clock;

  /**
   * @param zone whose calendar counts
   */
  public ReachPages(
      Database database,
      Page page,
      Standards standards,
      Calibrations calibrations,
      Evidence.Book book,
      Supplier<ZoneId> zone,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.standards = standards;
    this.calibrations = calibrations;
    this.book = book;
    this.zone = zone;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/standards/{code}/reach", Permission.READ, this::show);
  }

  /** A row of the form. */
  record Row(int number, List<String> cells) {}

  /** One that it touched, in words. */
  record Line(
      String href,
      String number,
      String taken,
      String tag,
      String stage,
      String verdict,
      String without,
      boolean flips,
      String why,
      String asf,
      String dsl) {}

  /** What the form asks for. */
  private record Asked(StandardError error, LocalDate from, LocalDate until) {}

  private void show(Context http) {
    Standard standard =
        database
            .read(sql -> standards.find(sql, http.pathParam("code")))
            .orElseThrow(NotFoundResponse::new);
    Form form = Form.fromQuery(http);
    boolean asked = !form.typed("from").isEmpty();
    if (!asked) {
      form.put("from", since(standard)).put("until", today().plusDays(1).toString());
      standard.kind().units().stream().findFirst().ifPresent(u -> form.put("unit", u.symbol()));
    }
    Map<String, Object> model = new HashMap<>();
    Optional<Asked> read = asked ? asked(standard, form) : Optional.empty();
    model.put("standard", standard);
    model.put("href", "/standards/" + PathSegment.of(standard.code()));
    model.put("form", form);
    model.put("rows", rows(form));
    model.put("rangeUnits", units(standard.kind()));
    model.put("asked", read.isPresent());
    model.put("most", MOST);
    UnitsShown units = UnitsShown.of(http);
    List<Touched> touched =
        read.map(a -> database.read(sql -> touched(sql, standard, a))).orElse(List.of());
    model.put("touched", touched.stream().map(t -> line(t, units)).toList());
    model.put("flips", touched.stream().filter(Touched::flips).count());
    page.show(http, asked && read.isEmpty() ? 422 : 200, "reach/reach", model);
  }

  /** Since the certificate before the newest: up to then it was found good. */
  private static String since(Standard standard) {
    return standard.newest().map(Certificate::issuedOn).map(LocalDate::toString).orElse("");
  }

  private LocalDate today() {
    return SiteMoment.day(clock.instant(), zone.get());
  }

  private static Map<String, String> units(StandardKind kind) {
    Map<String, String> units = new LinkedHashMap<>();
    kind.units().forEach(unit -> units.put(unit.symbol(), unit.symbol()));
    return units;
  }

  private static List<Row> rows(Form form) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < ROWS; i++) {
      int row = i;
      rows.add(new Row(i + 1, CELLS.stream().map(cell -> at(form, cell, row)).toList()));
    }
    return rows;
  }

  private static String at(Form form, String cell, int row) {
    List<String> cells = form.every(cell);
    return row < cells.size() ? cells.get(row).strip() : "";
  }

  private static Optional<Asked> asked(Standard standard, Form form) {
    LocalDate from = form.read("from", SiteMoment::day);
    LocalDate until = form.read("until", SiteMoment::day);
    try {
      if (standard.kind().units().isEmpty()) {
        throw new Refused(ReachProblem.NO_QUANTITY, standard.code());
      }
      StandardError error = error(standard, form);
      if (form.ok() && !from.isBefore(until)) {
        throw new Refused(ReachProblem.DATES, until, from);
      }
      return form.ok() ? Optional.of(new Asked(error, from, until)) : Optional.empty();
    } catch (Refused refused) {
      form.complain(refused);
    } catch (NumberFormatException wrong) {
      form.complain("“" + wrong.getMessage() + "” is not one number. Give it such as -0.5 or 0,2.");
    }
    return Optional.empty();
  }

  private static StandardError error(Standard standard, Form form) {
    Unit unit =
        standard.kind().units().stream()
            .filter(each -> each.symbol().equals(form.typed("unit")))
            .findFirst()
            .orElseGet(
                () -> {
                  form.complain("unit", "Choose the unit of the error.");
                  return standard.kind().units().get(0);
                });
    List<StandardError.Range> ranges = new ArrayList<>();
    for (Row row : rows(form)) {
      boolean noError = row.cells().get(2).isEmpty() && row.cells().get(3).isEmpty();
      if (!noError) {
        ranges.add(range(standard, row, unit));
      }
    }
    return new StandardError(standard.kind(), ranges);
  }

  private static StandardError.Range range(Standard standard, Row row, Unit unit) {
    String low = row.cells().get(0);
    String high = row.cells().get(1);
    if (low.isEmpty() != high.isEmpty()) {
      throw new Refused(ReachProblem.ONE_END, row.number());
    }
    BigDecimal whole =
        standard.newest().stream()
            .flatMap(c -> c.ranges().stream())
            .map(CertifiedRange::high)
            .map(end -> end.unit().toCanonical(end.amount()))
            .max(BigDecimal::compareTo)
            .orElse(BigDecimal.valueOf(1_000_000));
    return new StandardError.Range(
        row.number(),
        low.isEmpty() ? BigDecimal.ZERO : unit.toCanonical(number(low)),
        high.isEmpty() ? whole : unit.toCanonical(number(high)),
        unit.toCanonical(number(row.cells().get(2))),
        number(row.cells().get(3)));
  }

  private static BigDecimal number(String cell) {
    return cell.isEmpty()
        ? BigDecimal.ZERO
        : Numbers.read(cell).orElseThrow(() -> new NumberFormatException(cell));
  }

  private List<Touched> touched(DSLContext sql, Standard standard, Asked asked) {
    return calibrations
        .madeWith(
            sql,
            standard.id(),
            SiteMoment.startOf(asked.from(), zone.get()),
            SiteMoment.startOf(asked.until(), zone.get()),
            MOST)
        .stream()
        .map(c -> Touched.of(book.of(sql, c), asked.error()))
        .sorted(Touched.WORST_FIRST)
        .toList();
  }

  private Line line(Touched touched, UnitsShown units) {
    Calibrated c = touched.record();
    return new Line(
        "/calibrations/" + c.number(),
        c.number(),
        SiteMoment.shown(c.measuredAt(), ZoneOffset.UTC),
        c.place(),
        c.stage().word(),
        c.outcome(),
        touched
            .without()
            .map(r -> r.verdict().label())
            .orElse(touched.kept().isPresent() ? "no curve" : c.outcome()),
        touched.flips(),
        touched.flips() ? String.join(" ", touched.saidAnew()) : "",
        moved(touched, units, true),
        moved(touched, units, false));
  }

  private static String moved(Touched touched, UnitsShown units, boolean slope) {
    if (touched.kept().isEmpty() || touched.without().isEmpty()) {
      return "";
    }
    return said(touched.kept().get(), units, slope)
        + " → "
        + said(touched.without().get(), units, slope);
  }

  private static String said(CurveResult result, UnitsShown units, boolean slope) {
    if (slope) {
      return units.metric()
          ? say("%.3f mV/µm", result.asf())
          : say("%.1f mV/mil", Unit.MILLIVOLT_PER_MIL.fromCanonical(result.asf()));
    }
    return units.metric()
        ? say("%.1f µm", result.maxDsl())
        : say("%.2f mil", Unit.MIL.fromCanonical(result.maxDsl()));
  }

  private static String say(String pattern, double number) {
    return String.format(Locale.ROOT, pattern, number);
  }
}
