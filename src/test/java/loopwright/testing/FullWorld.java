package loopwright.testing;

import static loopwright.db.gen.Tables.ATTACHMENT;
import static loopwright.db.gen.Tables.ATTACHMENT_PIECE;
import static loopwright.db.gen.Tables.CALIBRATION_DRAFT;
import static loopwright.db.gen.Tables.CALIBRATION_READING;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.COMPONENT_FACT;
import static loopwright.db.gen.Tables.COMPONENT_FACT_NOW;
import static loopwright.db.gen.Tables.COMPONENT_FACT_RETIRED;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.PLACEMENT_RETIRED;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.db.gen.DefaultSchema;
import loopwright.db.gen.tables.records.CalibrationReadingRecord;
import loopwright.db.gen.tables.records.ComponentRecord;
import loopwright.db.gen.tables.records.PersonRecord;
import org.jooq.Field;
import org.jooq.Table;
import org.jooq.TableField;
import org.jooq.UpdatableRecord;

/**
 * The rows of {@code worlds/full.txt}: something in every journaled table, written through the door
 * in a few changes, then a change with updates and a delete. Derived tables are filled to match.
 */
public final class FullWorld {
  private static final Act PLANTING =
      new Act(null, "A. Planter", "engineer", "plant", "a world with everything in it");
  private static final Act EDITING =
      new Act(1L, "P. Erson", "administrator", "rename", "names were short");

  private FullWorld() {}

  /** Fills a fresh database by five changes. */
  public static void fill(Database database) {
    for (String change : read("/worlds/full.txt").split("(?m)^-+$")) {
      List<String> rows =
          change.lines().filter(line -> !line.isBlank() && !line.startsWith("#")).toList();
      database.write(PLANTING, tx -> write(tx, rows));
    }
    database.write(EDITING, FullWorld::edit);
  }

  private static String read(String name) {
    try (InputStream in = FullWorld.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Void write(Tx tx, List<String> rows) {
    Map<Long, List<CalibrationReadingRecord>> groups = new TreeMap<>();
    for (String line : rows) {
      String[] parts = line.split(" ", 2);
      if (parts[0].equals("group")) {
        CalibrationReadingRecord reading =
            filled(tx, CALIBRATION_READING, parts[1].split(" ", 2)[1]);
        groups.computeIfAbsent(reading.getCalibrationId(), id -> new ArrayList<>()).add(reading);
      } else {
        insert(tx, parts[0], parts[1]);
      }
    }
    groups.forEach(tx::insertGroup);
    derive(tx);
    content(tx);
    return null;
  }

  /** The content of the file that the rows name: "abc" in two pieces. */
  private static void content(Tx tx) {
    if (tx.sql().fetchCount(ATTACHMENT) == 1 && tx.sql().fetchCount(ATTACHMENT_PIECE) == 0) {
      String hash = tx.sql().fetchSingle(ATTACHMENT).getSha256();
      piece(tx, hash, 0, "ab");
      piece(tx, hash, 1, "c");
    }
  }

  private static void piece(Tx tx, String hash, int number, String content) {
    tx.sql()
        .insertInto(ATTACHMENT_PIECE)
        .values(hash, (short) number, content.getBytes(StandardCharsets.US_ASCII))
        .execute();
  }

  private static void insert(Tx tx, String name, String columns) {
    Table<?> table =
        DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
            .filter(each -> each.getName().equalsIgnoreCase(name))
            .findFirst()
            .orElseThrow();
    insertInto(tx, table, columns);
  }

  @SuppressWarnings("unchecked")
  private static <R extends UpdatableRecord<R>> void insertInto(
      Tx tx, Table<?> table, String columns) {
    tx.insert(filled(tx, (Table<R>) table, columns));
  }

  private static <R extends UpdatableRecord<R>> R filled(Tx tx, Table<R> table, String columns) {
    R row = tx.row(table);
    Stream.of(columns.strip().split("\\s+\\|\\s+"))
        .map(column -> column.split("=", 2))
        .forEach(column -> set(row, column[0], column[1]));
    return row;
  }

  private static void set(UpdatableRecord<?> row, String column, String text) {
    Field<?> field = Objects.requireNonNull(row.field(column.toUpperCase(Locale.ROOT)), column);
    setConverted(
        row, field, text.equals("OPEN") ? "9999-12-31T00:00:00Z" : text.replace("\\n", "\n"));
  }

  private static <T> void setConverted(UpdatableRecord<?> row, Field<T> field, String text) {
    row.set(field, field.getDataType().convert(text));
  }

  private static final String FACT_NOW =
      """
      INSERT INTO component_fact_now (fact_id, component_id, valid_from, valid_until, prev_until)
      SELECT f.id, f.component_id, f.valid_from, f.valid_until,
        (SELECT MAX(b.valid_until) FROM component_fact_now b
         WHERE b.component_id = f.component_id AND b.valid_from < f.valid_from)
      FROM component_fact f WHERE f.id = ?
      """;

  private static final String OCCUPIED =
      """
      INSERT INTO occupancy (placement_id, point_id, slot, content, occupant, occupant_channel,
        component_id, valid_from, valid_until, occupant_prev_until, slot_prev_until)
      SELECT p.id, p.point_id, p.slot, p.content, COALESCE(p.component_id, -p.id),
        p.component_channel, p.component_id, p.valid_from, p.valid_until,
        (SELECT MAX(b.valid_until) FROM occupancy b
         WHERE b.component_id = p.component_id AND b.valid_from < p.valid_from),
        (SELECT MAX(b.valid_until) FROM occupancy b
         WHERE b.point_id = p.point_id AND b.slot = p.slot AND b.valid_from < p.valid_from)
      FROM placement p WHERE p.id = ?
      """;

  /** What is believed, chained, for beliefs that are not there yet; they come oldest first. */
  private static void derive(Tx tx) {
    chain(
        tx,
        COMPONENT_FACT.ID,
        COMPONENT_FACT_RETIRED.FACT_ID,
        COMPONENT_FACT_NOW.FACT_ID,
        FACT_NOW);
    chain(tx, PLACEMENT.ID, PLACEMENT_RETIRED.PLACEMENT_ID, OCCUPANCY.PLACEMENT_ID, OCCUPIED);
  }

  private static void chain(
      Tx tx,
      TableField<?, Long> belief,
      TableField<?, Long> retired,
      TableField<?, Long> now,
      String insert) {
    tx.sql()
        .select(belief)
        .from(belief.getTable())
        .where(belief.notIn(tx.sql().select(retired).from(retired.getTable())))
        .and(belief.notIn(tx.sql().select(now).from(now.getTable())))
        .orderBy(belief)
        .fetch(belief)
        .forEach(id -> tx.sql().execute(insert, id));
  }

  private static Void edit(Tx tx) {
    PersonRecord person = tx.sql().fetchSingle(PERSON, PERSON.ID.eq(1L));
    person.setFullName("P. Erson-Long");
    tx.update(person);
    ComponentRecord component = tx.sql().fetchSingle(COMPONENT, COMPONENT.ID.eq(2L));
    component.setNote("");
    component.setSensitivityTyped(null);
    component.setTipMm(new BigDecimal("8.004")); // the database rounds this
    component.setLengthTyped("12.0");
    tx.update(component);
    tx.delete(tx.sql().fetchSingle(CALIBRATION_DRAFT, CALIBRATION_DRAFT.ID.eq(2L)));
    return null;
  }
}
