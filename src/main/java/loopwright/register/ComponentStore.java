package loopwright.register;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.db.Capitals;
import loopwright.db.Chunks;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ComponentRecord;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.problem.Refused;
import loopwright.time.Span;
import loopwright.units.Reported;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Parts as they are believed to be now. */
final class ComponentStore {
  /** So many numbers go into one statement. */
  private static final int AT_ONCE = 1_000;

  Optional<Component> component(DSLContext sql, ComponentId id) {
    return sql.selectFrom(COMPONENT)
        .where(COMPONENT.ID.eq(id.number()))
        .fetchOptional(ComponentStore::component);
  }

  Map<Long, Component> components(DSLContext sql, Collection<Long> numbers) {
    Map<Long, Component> found = new HashMap<>();
    for (List<Long> some : Chunks.of(Set.copyOf(numbers), AT_ONCE)) {
      sql.selectFrom(COMPONENT)
          .where(COMPONENT.ID.in(some))
          .forEach(row -> found.put(row.getId(), component(row)));
    }
    return found;
  }

  Optional<Component> identified(DSLContext sql, PartIdentity identity) {
    return sql.selectFrom(COMPONENT)
        .where(COMPONENT.IDENTITY_KEY.eq(identity.key()))
        .fetchOptional(ComponentStore::component);
  }

  /** By identity key. */
  Map<String, Component> identified(DSLContext sql, Collection<PartIdentity> identities) {
    Map<String, Component> found = new HashMap<>();
    List<String> keys = identities.stream().map(PartIdentity::key).distinct().toList();
    for (List<String> some : Chunks.of(keys, AT_ONCE)) {
      sql.selectFrom(COMPONENT)
          .where(COMPONENT.IDENTITY_KEY.in(some))
          .forEach(row -> found.put(row.getIdentityKey(), component(row)));
    }
    return found;
  }

  /** Every part of that serial or shop number, whatever its maker. */
  List<Component> labelled(DSLContext sql, String label) {
    return sql.selectFrom(COMPONENT)
        .where(COMPONENT.LABEL_KEY.eq(Capitals.of(sql, label.strip())))
        .orderBy(COMPONENT.ID)
        .fetch(ComponentStore::component);
  }

  Optional<ChangeNote> lastChange(DSLContext sql, ComponentId id) {
    return sql.select(CHANGE.asterisk())
        .from(CHANGE)
        .join(COMPONENT)
        .on(COMPONENT.CHANGE_ID.eq(CHANGE.ID))
        .where(COMPONENT.ID.eq(id.number()))
        .fetchOptional(
            row ->
                new ChangeNote(
                    row.get(CHANGE.ID),
                    row.get(CHANGE.MADE_AT).toInstant(),
                    row.get(CHANGE.ACTOR_NAME),
                    row.get(CHANGE.WHAT),
                    row.get(CHANGE.REASON)));
  }

  ComponentId insert(Tx tx, ComponentDetails details, ComponentFacts facts, PartState state) {
    ComponentRecord row = tx.row(COMPONENT);
    fill(tx, row, details);
    fill(row, facts);
    row.setState(state.word());
    return new ComponentId(tx.insert(row).getId());
  }

  void updateDetails(Tx tx, ComponentId id, int version, ComponentDetails details) {
    ComponentRecord row = row(tx, id);
    if (row.getVersion() != version) {
      throw new Refused(DbProblem.STALE);
    }
    fill(tx, row, details);
    tx.update(row);
  }

  void updateFacts(Tx tx, ComponentId id, ComponentFacts facts) {
    ComponentRecord row = row(tx, id);
    fill(row, facts);
    row.setState(state(tx.sql(), id, facts.condition()).word());
    tx.update(row);
  }

  /** Makes the state follow from condition and placement. */
  void refreshState(Tx tx, ComponentId id) {
    ComponentRecord row = row(tx, id);
    Condition condition = Condition.named(row.getCondition()).orElseThrow();
    row.setState(state(tx.sql(), id, condition).word());
    tx.update(row);
  }

  private static PartState state(DSLContext sql, ComponentId id, Condition condition) {
    return switch (condition) {
      case SCRAPPED -> PartState.SCRAPPED;
      case QUARANTINED -> PartState.QUARANTINED;
      case USABLE -> isFitted(sql, id) ? PartState.FITTED : PartState.IN_STOCK;
    };
  }

  static boolean isFitted(DSLContext sql, ComponentId id) {
    return sql.fetchExists(
        OCCUPANCY,
        OCCUPANCY.OCCUPANT.eq(id.number()).and(OCCUPANCY.VALID_UNTIL.eq(Span.utc(Span.OPEN))));
  }

  /** Whether it was ever recorded anywhere. */
  boolean wasPlaced(DSLContext sql, ComponentId id) {
    return sql.fetchExists(PLACEMENT, PLACEMENT.COMPONENT_ID.eq(id.number()));
  }

  private static ComponentRecord row(Tx tx, ComponentId id) {
    return tx.sql()
        .fetchOptional(COMPONENT, COMPONENT.ID.eq(id.number()))
        .orElseThrow(() -> new Refused(RegisterProblem.NOT_THERE, "part number", id.number()));
  }

  private static void fill(Tx tx, ComponentRecord row, ComponentDetails details) {
    PartIdentity identity = details.identity();
    row.setKind(details.kind().word());
    row.setMaker(identity.maker());
    row.setModel(identity.model());
    row.setSerial(FactRows.absent(identity.serial()));
    row.setShopNumber(FactRows.absent(identity.shopNumber()));
    row.setLabel(identity.label());
    row.setLabelKey(Capitals.of(tx.sql(), identity.label()));
    row.setIdentityKey(identity.key());
    row.setChannels((short) details.channels());
    row.setSensitivityTyped(FactRows.absent(details.sensitivity()));
    row.setDueOn(details.dueOn());
    row.setNote(details.note());
  }

  private static void fill(ComponentRecord row, ComponentFacts facts) {
    Reported length = FactRows.reported(facts.length());
    row.setFamilyId(FactRows.number(facts.family()));
    row.setLengthM(FactRows.metres(length));
    row.setLengthTyped(FactRows.typed(length));
    row.setLengthUnit(FactRows.unit(length));
    row.setLengthEvidence(FactRows.evidence(facts.length()));
    row.setPhysicalLengthM(FactRows.metres(facts.physicalLength()));
    row.setPhysicalLengthTyped(FactRows.typed(facts.physicalLength()));
    row.setPhysicalLengthUnit(FactRows.unit(facts.physicalLength()));
    row.setTipMm(facts.tipMillimetres());
    row.setScaleFactor(FactRows.declared(facts.scaleFactor()));
    row.setScaleFactorUnit(FactRows.unit(facts.scaleFactor()));
    row.setCondition(facts.condition().word());
    row.setConditionReason(facts.conditionReason());
    row.setStore(facts.shelf().store());
    row.setBin(facts.shelf().bin());
  }

  static Component component(Record any) {
    ComponentRecord row = any.into(COMPONENT);
    return new Component(
        new ComponentId(row.getId()),
        details(row),
        facts(row),
        PartState.named(row.getState()).orElseThrow(),
        row.getVersion());
  }

  private static ComponentDetails details(ComponentRecord row) {
    return new ComponentDetails(
        PartKind.named(row.getKind()).orElseThrow(),
        new PartIdentity(
            row.getMaker(),
            row.getModel(),
            FactRows.present(row.getSerial()),
            FactRows.present(row.getShopNumber())),
        row.getChannels(),
        FactRows.present(row.getSensitivityTyped()),
        row.getDueOn(),
        row.getNote());
  }

  private static ComponentFacts facts(ComponentRecord row) {
    return new ComponentFacts(
        FactRows.family(row.getFamilyId()),
        FactRows.length(
            row.getLengthM(), row.getLengthTyped(), row.getLengthUnit(), row.getLengthEvidence()),
        FactRows.reported(
            row.getPhysicalLengthM(), row.getPhysicalLengthTyped(), row.getPhysicalLengthUnit()),
        row.getTipMm(),
        FactRows.scale(row.getScaleFactor(), row.getScaleFactorUnit()),
        Condition.named(row.getCondition()).orElseThrow(),
        row.getConditionReason(),
        new Shelf(row.getStore(), row.getBin()),
        null);
  }
}
