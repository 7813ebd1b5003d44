package loopwright.register;

import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.OCCUPANCY;

import java.util.Set;
import loopwright.db.Tx;
import loopwright.matching.PartKind;
import loopwright.time.Span;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Which parts are of one sort, and where they are fitted now; read from the placements. */
final class FittedStore {

  Set<Long> pointsOf(DSLContext sql, Condition sort) {
    return sql.selectDistinct(OCCUPANCY.POINT_ID)
        .from(COMPONENT)
        .join(OCCUPANCY)
        .on(OCCUPANCY.OCCUPANT.eq(COMPONENT.ID))
        .where(sort)
        .and(OCCUPANCY.VALID_UNTIL.eq(Tx.moment(Span.OPEN)))
        .fetchSet(OCCUPANCY.POINT_ID);
  }

  Set<Long> partsOf(DSLContext sql, Condition sort) {
    return sql.select(COMPONENT.ID).from(COMPONENT).where(sort).fetchSet(COMPONENT.ID);
  }

  /**
   * @param kind null for every kind
   */
  static Condition ofFamily(@Nullable PartKind kind, FamilyId family) {
    Condition of = COMPONENT.FAMILY_ID.eq(family.number());
    return kind == null ? of : of.and(COMPONENT.KIND.eq(kind.word()));
  }

  /** In any case. */
  static Condition ofModel(PartKind kind, String maker, String model) {
    return COMPONENT
        .KIND
        .eq(kind.word())
        .and(DSL.upper(COMPONENT.MAKER).eq(DSL.upper(DSL.val(maker))))
        .and(DSL.upper(COMPONENT.MODEL).eq(DSL.upper(DSL.val(model))));
  }
}
