package loopwright.register;

import static loopwright.db.gen.Tables.TOLERANCE_PROFILE_BAND;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ToleranceProfileBandRecord;
import loopwright.dynamic.ResponseBand;
import loopwright.units.Numbers;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Response bands of profiles' versions. Insert-only. */
final class BandStore {
  private BandStore() {}

  static void insert(Tx tx, long version, ResponseBand band) {
    for (int i = 0; i < band.stretches().size(); i++) {
      ResponseBand.Stretch stretch = band.stretches().get(i);
      ToleranceProfileBandRecord row = tx.row(TOLERANCE_PROFILE_BAND);
      row.setVersionId(version);
      row.setBandNo((short) (i + 1));
      row.setFromHz(stretch.from());
      row.setToHz(stretch.to());
      row.setLowDb(stretch.lowDecibels());
      row.setHighDb(stretch.highDecibels());
      row.setLowPhase(stretch.lowPhase());
      row.setHighPhase(stretch.highPhase());
      tx.insert(row);
    }
  }

  /** By their versions. */
  static Map<Long, List<ResponseBand.Stretch>> of(DSLContext sql, Collection<Long> versions) {
    return versions.isEmpty()
        ? Map.of()
        : sql.selectFrom(TOLERANCE_PROFILE_BAND)
            .where(TOLERANCE_PROFILE_BAND.VERSION_ID.in(versions))
            .orderBy(TOLERANCE_PROFILE_BAND.VERSION_ID, TOLERANCE_PROFILE_BAND.BAND_NO)
            .fetchGroups(TOLERANCE_PROFILE_BAND.VERSION_ID, BandStore::stretch);
  }

  private static ResponseBand.Stretch stretch(ToleranceProfileBandRecord row) {
    return new ResponseBand.Stretch(
        new BigDecimal(Numbers.plain(row.getFromHz())),
        new BigDecimal(Numbers.plain(row.getToHz())),
        plain(row.getLowDb()),
        plain(row.getHighDb()),
        plain(row.getLowPhase()),
        plain(row.getHighPhase()));
  }

  private static @Nullable BigDecimal plain(@Nullable BigDecimal number) {
    return number == null ? null : new BigDecimal(Numbers.plain(number));
  }
}
