package loopwright.datasheet;

import java.math.BigDecimal;
import loopwright.matching.Approval;
import loopwright.matching.Entity;
import loopwright.matching.PartSheet;
import loopwright.matching.Range;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;

/**
 * What a data sheet says.
 *
 * @param sheet what rules ask for
 * @param supplyVolts between which a driver works, V; not said for other kinds
 * @param source number and edition of the sheet; may be empty
 */
public record SheetDetails(PartSheet sheet, Range supplyVolts, String source) {
  public static final SheetDetails NOTHING_SAID =
      new SheetDetails(PartSheet.NOT_GIVEN, Range.NOT_SAID, "");

  /** Refuses what no part has; numbers lose trailing zeros. */
  public SheetDetails {
    source = Text.kept("the source", source, 200);
    supplyVolts = checked("The supply", supplyVolts, Limit.VOLTS);
    Range celsius = checked("The temperature", sheet.celsius(), Limit.CELSIUS);
    sheet = sheet.withCelsius(celsius).withEntity(checked(sheet.entity()));
    Approval approval = sheet.approval();
    if (approval != null) {
      Text.kept("the certificate", approval.certificate(), 60);
    }
  }

  /** What a number may be. */
  enum Limit {
    VOLTS(3, -100, 100, "volts from −100 to 100 with at most 3 decimals"),
    CELSIUS(1, -273, 2000, "°C from −273 to 2000 with at most 1 decimal"),
    ENTITY(4, 0, 10_000_000, "0 or more, less than 10 million, with at most 4 decimals");

    private final int decimals;
    private final BigDecimal least;
    private final BigDecimal most;
    private final String words;

    Limit(int decimals, long least, long most, String words) {
      this.decimals = decimals;
      this.least = BigDecimal.valueOf(least);
      this.most = BigDecimal.valueOf(most);
      this.words = words;
    }
  }

  static @Nullable BigDecimal checked(String what, @Nullable BigDecimal number, Limit limit) {
    if (number == null) {
      return null;
    }
    BigDecimal plain = new BigDecimal(Numbers.plain(number));
    if (plain.compareTo(limit.least) < 0
        || plain.compareTo(limit.most) > 0
        || plain.scale() > limit.decimals) {
      throw new Refused(SheetProblem.OUT_OF_RANGE, what, Numbers.plain(plain), limit.words);
    }
    return plain;
  }

  private static Range checked(String what, Range range, Limit limit) {
    BigDecimal low = checked(what, range.low(), limit);
    BigDecimal high = checked(what, range.high(), limit);
    if (low != null && high != null && low.compareTo(high) >= 0) {
      throw new Refused(SheetProblem.CROSSED, what, Numbers.plain(low), Numbers.plain(high));
    }
    return new Range(low, high);
  }

  private static Entity checked(Entity entity) {
    return new Entity(
        checked("The voltage", entity.volts(), Limit.ENTITY),
        checked("The current", entity.milliamperes(), Limit.ENTITY),
        checked("The power", entity.milliwatts(), Limit.ENTITY),
        checked("The capacitance", entity.nanofarads(), Limit.ENTITY),
        checked("The inductance", entity.microhenries(), Limit.ENTITY));
  }
}
