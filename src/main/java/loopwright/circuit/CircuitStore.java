package loopwright.circuit;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.FIELD_CIRCUIT;
import static loopwright.db.gen.Tables.POINT;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.FieldCircuitRecord;
import loopwright.loop.Content;
import loopwright.plant.PointId;
import loopwright.register.ChangeNote;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Versions of field circuits. */
final class CircuitStore {
  private static final int LENGTH_DECIMALS = 5;
  private static final String NOT_SAID = "not said";

  /** No later version of the same point. */
  private static Condition isNewest() {
    loopwright.db.gen.tables.FieldCircuit later = FIELD_CIRCUIT.as("later");
    return DSL.notExists(
        DSL.selectOne()
            .from(later)
            .where(later.POINT_ID.eq(FIELD_CIRCUIT.POINT_ID))
            .and(later.VERSION_NO.gt(FIELD_CIRCUIT.VERSION_NO)));
  }

  Map<Long, FieldCircuit> newest(DSLContext sql, Collection<Long> points) {
    return sql.selectFrom(FIELD_CIRCUIT)
        .where(FIELD_CIRCUIT.POINT_ID.in(points))
        .and(isNewest())
        .fetchMap(FieldCircuitRecord::getPointId, CircuitStore::circuit);
  }

  List<Circuits.Recorded> versions(DSLContext sql, PointId point) {
    return sql.select(FIELD_CIRCUIT.asterisk(), CHANGE.asterisk())
        .from(FIELD_CIRCUIT)
        .join(CHANGE)
        .on(CHANGE.ID.eq(FIELD_CIRCUIT.CHANGE_ID))
        .where(FIELD_CIRCUIT.POINT_ID.eq(point.number()))
        .orderBy(FIELD_CIRCUIT.VERSION_NO.desc())
        .fetch(
            row ->
                new Circuits.Recorded(
                    circuit(row.into(FIELD_CIRCUIT)),
                    row.get(FIELD_CIRCUIT.VERSION_NO),
                    new ChangeNote(
                        row.get(CHANGE.ID),
                        row.get(CHANGE.MADE_AT).toInstant(),
                        row.get(CHANGE.ACTOR_NAME),
                        row.get(CHANGE.WHAT),
                        row.get(CHANGE.REASON))));
  }

  /** Tags of points behind whose drivers one of the parts stands now, by the points' numbers. */
  Map<Long, String> tagsWith(DSLContext sql, Collection<Long> components) {
    return sql.select(POINT.ID, POINT.TAG)
        .from(FIELD_CIRCUIT)
        .join(POINT)
        .on(POINT.ID.eq(FIELD_CIRCUIT.POINT_ID))
        .where(FIELD_CIRCUIT.COMPONENT_ID.in(components))
        .and(isNewest())
        .orderBy(POINT.TAG_KEY)
        .fetchMap(POINT.ID, POINT.TAG);
  }

  void insert(Tx tx, PointId point, int version, FieldCircuit circuit) {
    FieldCircuitRecord row = tx.row(FIELD_CIRCUIT);
    row.setPointId(point.number());
    row.setVersionNo(version);
    row.setBarrier(
        circuit.barrier() instanceof Content.Unknown ? NOT_SAID : circuit.barrier().word());
    circuit.barrier().component().ifPresent(row::setComponentId);
    Reported cable = circuit.cable();
    if (cable != null) {
      row.setCableTyped(cable.typed());
      row.setCableUnit(cable.unit().symbol());
      row.setCableM(Length.of(cable).metres().setScale(LENGTH_DECIMALS, RoundingMode.HALF_UP));
    }
    row.setPicofaradsPerMetre(circuit.picofaradsPerMetre());
    row.setMicrohenriesPerMetre(circuit.microhenriesPerMetre());
    tx.insert(row);
  }

  private static FieldCircuit circuit(FieldCircuitRecord row) {
    return new FieldCircuit(
        content(row.getBarrier(), row.getComponentId()),
        row.getCableTyped() == null
            ? null
            : Reported.read(row.getCableTyped(), Unit.named(row.getCableUnit()).orElseThrow())
                .orElseThrow(),
        plain(row.getPicofaradsPerMetre()),
        plain(row.getMicrohenriesPerMetre()));
  }

  private static Content content(String barrier, @Nullable Long component) {
    if (component != null) {
      return new Content.Part(component);
    }
    return barrier.equals(NOT_SAID) ? new Content.Unknown() : new Content.None();
  }

  private static @Nullable BigDecimal plain(@Nullable BigDecimal number) {
    return number == null ? null : new BigDecimal(Numbers.plain(number));
  }
}
