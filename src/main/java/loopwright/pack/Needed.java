package loopwright.pack;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.mounting.Mounting;
import loopwright.outage.Outage;
import loopwright.outage.ScopeLine;
import loopwright.standard.Certificate;
import loopwright.standard.Standard;
import loopwright.units.Numbers;
import org.jooq.DSLContext;

/** What an outage needs as a whole: hours of work, and standards that hold until it ends. */
final class Needed {
  private static final int MOST = 14;

  private Needed() {}

  /** The sum of what people reckoned, and for how many loops nobody did; empty when nobody did. */
  static String hours(DSLContext sql, List<ScopeLine> scope, SheetWriter.Facts facts) {
    Collection<Mounting> said =
        facts.mountings().of(sql, scope.stream().map(ScopeLine::point).toList()).values();
    List<BigDecimal> hours = said.stream().map(Mounting::hours).filter(Objects::nonNull).toList();
    if (hours.isEmpty()) {
      return "";
    }
    BigDecimal sum = hours.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    int open = scope.size() - hours.size();
    return Numbers.plain(sum) + " h" + (open == 0 ? "" : "; not reckoned for " + open + " loops");
  }

  /** Those in use, each with until when its certificate holds; what runs out before comes first. */
  static List<String> standards(DSLContext sql, Outage outage, SheetWriter.Facts facts) {
    List<Standard> inUse = facts.standards().all(sql).stream().filter(Standard::inUse).toList();
    List<String> lines =
        Stream.concat(
                inUse.stream().filter(one -> !holds(one, outage)),
                inUse.stream().filter(one -> holds(one, outage)))
            .map(one -> line(one, outage))
            .collect(Collectors.toList());
    return lines.size() <= MOST ? lines : shortened(lines);
  }

  private static List<String> shortened(List<String> lines) {
    return Stream.concat(
            lines.stream().limit(MOST - 1L),
            Stream.of("and %s more in the register".formatted(lines.size() - MOST + 1)))
        .toList();
  }

  private static boolean holds(Standard standard, Outage outage) {
    return standard.newest().filter(newest -> !newest.overdueOn(outage.ends())).isPresent();
  }

  private static String line(Standard standard, Outage outage) {
    String until =
        standard.newest().map(Certificate::dueOn).map(due -> "due " + due).orElse("no certificate");
    return standard.inWords()
        + ": "
        + until
        + (holds(standard, outage) ? "" : ". NOT valid through " + outage.ends());
  }
}
