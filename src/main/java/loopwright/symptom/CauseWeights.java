package loopwright.symptom;

import java.math.BigDecimal;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.cause.Cause;
import loopwright.cause.CauseProblem;
import loopwright.cause.Weights;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.symptom.WeightStore.Version;
import org.jooq.DSLContext;

/** The weights of causes before measuring, as the site has set them; the newest version judges. */
public final class CauseWeights {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final WeightStore store = new WeightStore();

  /** Those to reckon with; the built-in ones where nobody set others. */
  public Weights now(DSLContext sql) {
    return store.newest(sql).map(version -> weights(sql, version)).orElseGet(Weights::builtIn);
  }

  Weights weights(DSLContext sql, Version version) {
    Weights builtIn = Weights.builtIn();
    Map<Cause, BigDecimal> byCause = new EnumMap<>(builtIn.byCause());
    Map<String, BigDecimal> kept = version.builtIn() ? Map.of() : store.weights(sql, version.id());
    byCause.replaceAll((cause, weight) -> kept.getOrDefault(cause.label(), weight));
    return new Weights(byCause, origin(version, builtIn));
  }

  private static String origin(Version version, Weights builtIn) {
    return "weights version %s, %s %s by %s"
        .formatted(
            version.id(),
            version.builtIn() ? builtIn.origin() + ", taken back" : "set",
            moment(version),
            version.who());
  }

  static String moment(Version version) {
    return MOMENT.format(version.at());
  }

  /** Newest first. */
  List<Version> versions(DSLContext sql, int most) {
    return store.newest(sql, most);
  }

  /** The number of the newest version; zero while nobody set any. */
  long version(DSLContext sql) {
    return store.newest(sql).map(Version::id).orElse(0L);
  }

  /**
   * @throws Refused if they are all zero, or the same as now
   */
  void set(Tx tx, Weights weights) {
    if (weights.isEmptyAtTheDriver()) {
      throw new Refused(CauseProblem.NO_WEIGHT);
    }
    if (weights.isSameAs(now(tx.sql()))) {
      throw new Refused(CauseProblem.SAME_WEIGHTS);
    }
    store.add(tx, weights.byCause());
  }

  /**
   * @throws Refused if the built-in ones count already
   */
  void backToBuiltIn(Tx tx) {
    Optional<Version> newest = store.newest(tx.sql());
    if (newest.map(Version::builtIn).orElse(true)) {
      throw new Refused(CauseProblem.SAME_WEIGHTS);
    }
    store.add(tx, Map.of());
  }
}
