package loopwright.pack;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.calibration.Calibrated;
import loopwright.calibration.NewCalibration;
import loopwright.calibration.Setup;
import loopwright.calibration.Stage;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Tx;
import loopwright.loop.Judging;
import loopwright.outage.Outage;
import loopwright.outage.Outages;
import loopwright.problem.Refused;
import loopwright.register.ToleranceProfiles;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import loopwright.sheet.XlsxReader;
import org.jooq.DSLContext;

/**
 * A pack as a device takes it along, and what it sends back read as the rows of a filled sheet: the
 * same checks, surveys and records as for a workbook.
 */
public final class FieldReturns {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int NEWEST = 50;

  /** Where in a file it stands; of what a device sends nobody needs that. */
  private static final String PLACE = "^.*?, row \\d+, column [A-Z]: ";

  private final Packs packs;
  private final Returns returns;

  public FieldReturns(Packs packs, Returns returns) {
    this.packs = packs;
    this.returns = returns;
  }

  /**
   * The newest revision of a pack.
   *
   * @param identity as every row carries it
   * @param last of each loop, by its point, what came back last
   */
  public record TakenAlong(
      int revision,
      String identity,
      String issuedBy,
      Instant issuedAt,
      List<String> cautions,
      List<Loop> loops,
      Map<Long, Returned> last) {}

  /**
   * One loop of it.
   *
   * @param sheet as frozen
   * @param hash of the sheet
   * @param profile that judges the loop; empty when none is known
   */
  public record Loop(
      long point, String tag, JsonNode sheet, String hash, Optional<ToleranceProfile> profile) {}

  /** A cell as typed; line, of and column as in the sheet to fill in. */
  public record Cell(String line, String of, String column, String text) {}

  /**
   * A loop filled in on a device.
   *
   * @param identity of the revision it was filled in on
   * @param from which device
   */
  public record Filled(String identity, String tag, String from, List<Cell> cells) {
    public Filled {
      cells = List.copyOf(cells);
    }
  }

  /**
   * What would become of it.
   *
   * @param nothing no cell is filled in
   * @param before the very same came back before
   * @param against why it can't be recorded as it stands, or should not be without a look
   * @param questions to be confirmed first
   */
  public record Look(
      boolean nothing, boolean before, List<String> against, List<String> questions) {
    public Look {
      against = List.copyOf(against);
      questions = List.copyOf(questions);
    }
  }

  public Outages outages() {
    return packs.outages();
  }

  /** Empty while nothing is issued. */
  public Optional<TakenAlong> newest(DSLContext sql, Outage outage) {
    return packs.newest(sql, outage).map(revision -> taken(sql, outage, revision));
  }

  private TakenAlong taken(DSLContext sql, Outage outage, Revision revision) {
    Map<String, Optional<ToleranceProfile>> profiles = new HashMap<>();
    Function<String, Optional<ToleranceProfile>> read =
        version ->
            returns
                .profiles()
                .version(sql, Long.parseLong(version))
                .map(ToleranceProfiles.Stored::profile);
    Set<Long> still =
        packs.outages().scope(sql, outage.id()).stream()
            .map(line -> line.point())
            .collect(Collectors.toSet());
    return new TakenAlong(
        revision.number(),
        Identity.of(returns.records().register().get(), revision).toString(),
        revision.by(),
        revision.at(),
        revision.head().cautions(),
        packs.loops(sql, revision).stream()
            .filter(loop -> still.contains(loop.point()))
            .map(loop -> loop(loop, version -> profiles.computeIfAbsent(version, read)))
            .toList(),
        packs.latest(sql, outage));
  }

  /**
   * @param profiles by their version in the register
   */
  private static Loop loop(
      Revision.Loop loop, Function<String, Optional<ToleranceProfile>> profiles) {
    LoopSheet sheet = loop.sheet();
    Optional<ToleranceProfile> profile =
        Optional.ofNullable(sheet.limits()).flatMap(limits -> profiles.apply(limits.version()));
    return new Loop(loop.point(), sheet.tag(), JSON.valueToTree(sheet), loop.hash(), profile);
  }

  /** The point of a loop that any revision of the pack holds. */
  public Optional<Long> pointOf(DSLContext sql, Outage outage, String tag) {
    return packs.revisions(sql, outage).stream()
        .flatMap(revision -> packs.loops(sql, revision).stream())
        .filter(loop -> loop.sheet().tag().equalsIgnoreCase(tag))
        .map(Revision.Loop::point)
        .findFirst();
  }

  /** Lines of a sheet in which a bypass is told, with what they are of; times among them. */
  public static List<Cell> bypassCells() {
    return Stream.of(BypassPart.values())
        .map(part -> new Cell(part.item().word(), part.word(), Column.AS_LEFT.heading(), ""))
        .toList();
  }

  /** Whether a sheet has such a cell. */
  public static boolean knows(Cell cell) {
    return Item.named(cell.line())
        .flatMap(
            item ->
                Column.TYPED.stream()
                    .filter(column -> column.heading().equals(cell.column()))
                    .filter(item::takes)
                    .findFirst())
        .isPresent();
  }

  /**
   * What would become of an entry; nothing is written.
   *
   * @param since when the device last heard how things stood: what came in later was not known to
   *     whoever filled it in
   */
  public Look look(DSLContext sql, Outage outage, Filled filled, Instant since) {
    if (outage.isClosed()) {
      return against(List.of(outage.number() + " is closed; its results went into the close-out."));
    }
    Complaints complaints = new Complaints();
    List<ReturnPlan.LoopPlan> plans =
        returns.plans(sql, outage, file(filled), complaints, any -> true);
    if (plans.isEmpty()) {
      return against(said(complaints.kept()));
    }
    ReturnPlan.LoopPlan plan = plans.get(0);
    List<String> against = new ArrayList<>(said(plan.problems()));
    LoopReturn read = plan.read();
    if (read != null) {
      against.addAll(partsThatDiffer(sql, read));
      against.addAll(meanwhile(sql, read, since));
    }
    return new Look(
        plan.fate() == ReturnPlan.Fate.BLANK,
        plan.fate() == ReturnPlan.Fate.BEFORE,
        against,
        plan.questions());
  }

  private static Look against(List<String> why) {
    return new Look(false, false, why, List.of());
  }

  private static List<String> said(List<Complaint> complaints) {
    return complaints.stream().map(c -> c.message().replaceFirst(PLACE, "")).toList();
  }

  /** What a refusal says, without a place in a file. */
  public static String said(Refused refused) {
    return String.valueOf(refused.getMessage()).replaceFirst(PLACE, "");
  }

  /** A curve belongs to what was fitted at its moment: the pack may be out of date about that. */
  private List<String> partsThatDiffer(DSLContext sql, LoopReturn read) {
    List<String> differ = new ArrayList<>();
    Map<String, String> typed = new LinkedHashMap<>();
    for (StageFilled stage : List.of(read.found(), read.left())) {
      typed.putAll(stage.serials());
      Instant at = stage.at();
      if (at != null && stage.hasResult()) {
        Judging.Subject subject = new Judging.Subject(read.loop().point(), read.tag());
        for (Judging.Judged judged : returns.records().judging().judge(sql, List.of(subject), at)) {
          differ.addAll(differences(read, typed, ChainShown.of(judged)));
        }
      }
    }
    return differ.stream().distinct().toList();
  }

  private static List<String> differences(
      LoopReturn read, Map<String, String> typed, List<LoopSheet.Fitted> recorded) {
    return recorded.stream()
        .filter(part -> !part.serial().equalsIgnoreCase(read.loop().sheet().planned(part.slot())))
        .filter(
            part -> {
              String planned = read.loop().sheet().planned(part.slot());
              return typed.getOrDefault(part.slot(), planned).equalsIgnoreCase(planned);
            })
        .map(
            part ->
                "%s: the pack says %s, but on record is %s at that moment. Look which one it was."
                    .formatted(
                        part.slot(),
                        named(read.loop().sheet().planned(part.slot())),
                        named(part.serial())))
        .toList();
  }

  private static String named(String serial) {
    return serial.isEmpty() ? "none with a serial" : serial;
  }

  /** Results of the same stage that came in after the device last heard. */
  private List<String> meanwhile(DSLContext sql, LoopReturn read, Instant since) {
    List<String> came = new ArrayList<>();
    for (NewCalibration fresh : ReturnRecorder.calibrations(read)) {
      if (returns.records().calibrations().same(sql, fresh).isEmpty()) {
        since(sql, read.loop().point(), since).stream()
            .filter(kept -> isFound(kept.stage()) == isFound(fresh.stage()))
            .map(
                kept ->
                    "Another %s came in meanwhile: %s by %s, entered by %s; it %s."
                        .formatted(
                            kept.stage().word(),
                            kept.number(),
                            kept.performedBy(),
                            kept.enteredBy(),
                            inWords(kept)))
            .forEach(came::add);
      }
    }
    return came;
  }

  private static String inWords(Calibrated kept) {
    return kept.hasCurve() ? kept.outcome() : "has no curve";
  }

  private static boolean isFound(Stage stage) {
    return stage != Stage.AS_LEFT;
  }

  /** Results taken at the point that were entered after a moment, newest first. */
  public List<Calibrated> since(DSLContext sql, long point, Instant since) {
    return returns.records().calibrations().ofLoop(sql, point, Optional.empty(), NEWEST).stream()
        .filter(kept -> Objects.equals(kept.point(), point) && kept.setup() == Setup.FITTED)
        .filter(kept -> kept.enteredAt().isAfter(since))
        .toList();
  }

  /**
   * Records an entry as a filled sheet would be.
   *
   * @param confirmed what is asked of it was answered
   * @return what was recorded, in words
   * @throws Refused if it can't be recorded; then nothing is
   */
  public String keep(Tx tx, Outage outage, Filled filled, boolean confirmed) {
    return returns.keep(tx, outage, file(filled), filled.tag(), confirmed);
  }

  private static FilledFile file(Filled filled) {
    List<FilledFile.Row> rows = new ArrayList<>();
    Map<List<String>, Map<Column, XlsxReader.Cell>> lines = new LinkedHashMap<>();
    for (Cell cell : filled.cells()) {
      lines.computeIfAbsent(
          List.of(cell.line(), cell.of()), any -> line(filled, cell.line(), cell.of()));
    }
    if (lines.isEmpty()) {
      lines.put(List.of(), line(filled, Item.OUTCOME.word(), ""));
    }
    for (Cell cell : filled.cells()) {
      Map<Column, XlsxReader.Cell> line =
          Objects.requireNonNull(lines.get(List.of(cell.line(), cell.of())));
      Stream.of(Column.values())
          .filter(column -> column.heading().equals(cell.column()))
          .forEach(column -> line.put(column, XlsxReader.Cell.ofText(cell.text())));
    }
    lines.values().forEach(cells -> rows.add(new FilledFile.Row(rows.size() + 2, cells)));
    return new FilledFile("Field device " + filled.from(), false, rows);
  }

  private static Map<Column, XlsxReader.Cell> line(Filled filled, String line, String of) {
    Map<Column, XlsxReader.Cell> cells = new EnumMap<>(Column.class);
    cells.put(Column.PACK, XlsxReader.Cell.ofText(filled.identity()));
    cells.put(Column.LOOP, XlsxReader.Cell.ofText(filled.tag()));
    cells.put(Column.LINE, XlsxReader.Cell.ofText(line));
    cells.put(Column.OF, XlsxReader.Cell.ofText(of));
    return cells;
  }
}
