package loopwright.remedy;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import loopwright.exchange.Exchange;
import loopwright.exchange.FittedPart;
import loopwright.exchange.Proposal;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * A proposal as {@code exchanges --json} prints it and {@code /api/exchanges} answers it. Lengths
 * and balances in metres, unrounded.
 *
 * @param loopsOutOfBalance now
 * @param putRight by the exchanges, without any other part
 * @param exchanges each stands alone; {@code instead} does as much for the same loops with another
 *     kind of part
 * @param otherExchanges overlap those above
 * @param severalKinds groups of exchanges that are of use only together
 */
public record ExchangesDocument(
    int loopsOutOfBalance,
    int putRight,
    List<Way> exchanges,
    List<One> otherExchanges,
    List<List<One>> severalKinds,
    List<LeaveOut> leaveOut,
    List<FromStock> fromStock,
    List<Shortage> shortages,
    List<Apart> apart) {

  /** An exchange and those that do as much. */
  public record Way(One exchange, List<One> instead) {}

  /** One exchange. */
  public record One(
      String kind,
      String family,
      String site,
      List<String> loops,
      int putsRight,
      int weight,
      boolean mirrored,
      List<Move> moves,
      List<String> steps) {}

  /** One part that goes to another loop. */
  public record Move(
      Part part,
      String from,
      String to,
      BigDecimal balanceBeforeMetres,
      BigDecimal balanceAfterMetres) {}

  /** A part by the register's number and what people call it. */
  public record Part(
      long number,
      String label,
      String kind,
      @Nullable String family,
      @Nullable BigDecimal lengthMetres) {}

  /** A cable too many. */
  public record LeaveOut(String loop, Part part, BigDecimal balanceMetres) {}

  /** A part on a shelf that makes a loop whole. */
  public record FromStock(
      String loop, BigDecimal balanceMetres, Part take, String shelf, @Nullable Part insteadOf) {}

  /** A length that is missing. */
  public record Shortage(
      String family, String kind, BigDecimal lengthMetres, int howMany, List<String> loops) {}

  /** A loop that no single part puts right. */
  public record Apart(String loop, BigDecimal balanceMetres, List<String> fit, String why) {}

  /** The document of that proposal. */
  public static ExchangesDocument of(Proposal proposal) {
    return new ExchangesDocument(
        proposal.outOfBalance(),
        proposal.putRight(),
        proposal.ways().stream()
            .map(way -> new Way(one(way.best()), way.instead().stream().map(e -> one(e)).toList()))
            .toList(),
        proposal.otherWays().stream().map(ExchangesDocument::one).toList(),
        proposal.bySeveralKinds().stream()
            .map(several -> several.exchanges().stream().map(e -> one(e)).toList())
            .toList(),
        proposal.leaveOut().stream()
            .map(left -> new LeaveOut(left.loop(), part(left.cable()), left.balance().metres()))
            .toList(),
        proposal.fromStock().stream().map(ExchangesDocument::covered).toList(),
        proposal.shortages().stream().map(ExchangesDocument::shortage).toList(),
        proposal.apart().stream()
            .map(a -> new Apart(a.loop(), a.balance().metres(), a.fit(), a.why()))
            .toList());
  }

  private static One one(Exchange exchange) {
    Stream<Move> moves =
        exchange.moves().stream()
            .map(
                move ->
                    new Move(
                        part(move.part()),
                        move.from(),
                        move.to(),
                        move.before().metres(),
                        move.after().metres()));
    return new One(
        exchange.kind().word(),
        exchange.family(),
        exchange.site(),
        exchange.loops(),
        exchange.putsRight(),
        exchange.weight(),
        exchange.isMirrored(),
        moves.toList(),
        exchange.steps());
  }

  private static Part part(FittedPart part) {
    Length length = part.length();
    return new Part(
        part.number(),
        part.label(),
        part.kind().word(),
        part.family(),
        length == null ? null : length.metres());
  }

  private static FromStock covered(Proposal.FromStock covered) {
    FittedPart out = covered.insteadOf();
    return new FromStock(
        covered.loop(),
        covered.balance().metres(),
        part(covered.take().part()),
        covered.take().shelf(),
        out == null ? null : part(out));
  }

  private static Shortage shortage(Proposal.Shortage shortage) {
    return new Shortage(
        shortage.family(),
        shortage.kind().word(),
        shortage.length().metres(),
        shortage.howMany(),
        shortage.loops().stream().map(Proposal.Waiting::loop).toList());
  }
}
