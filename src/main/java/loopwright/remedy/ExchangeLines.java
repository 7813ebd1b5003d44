package loopwright.remedy;

import java.util.ArrayList;
import java.util.List;
import loopwright.exchange.Exchange;
import loopwright.exchange.FittedPart;
import loopwright.exchange.Proposal;

/** A proposal as lines for a terminal. */
public final class ExchangeLines {
  private final List<String> lines = new ArrayList<>();

  private ExchangeLines(Proposal proposal) {
    lines.add(summary(proposal));
    proposal.ways().forEach(this::way);
    proposal.bySeveralKinds().forEach(this::several);
    proposal.otherWays().forEach(other -> titled("Or, instead of the above", other, false));
    proposal.leaveOut().forEach(this::leaveOut);
    proposal.fromStock().forEach(this::fromStock);
    proposal.shortages().forEach(this::shortage);
    proposal.apart().forEach(this::apart);
  }

  public static List<String> of(Proposal proposal) {
    return List.copyOf(new ExchangeLines(proposal).lines);
  }

  static String summary(Proposal proposal) {
    int out = proposal.outOfBalance();
    if (out == 0) {
      return "Every loop whose lengths are known is in balance.";
    }
    return "%s out of balance. Exchanges put %s right, stock makes %s whole, %s wait for parts that are short."
        .formatted(
            loops(out) + (out == 1 ? " is" : " are"),
            proposal.putRight(),
            proposal.fromStock().size(),
            proposal.shortages().stream().mapToInt(Proposal.Shortage::howMany).sum());
  }

  private static String loops(int count) {
    return count == 1 ? "1 loop" : count + " loops";
  }

  private void titled(String title, Exchange exchange, boolean withSteps) {
    lines.add("");
    lines.add("%s: %s. %s".formatted(title, exchange.inWords(), about(exchange)));
    if (withSteps) {
      int number = 1;
      for (String step : exchange.steps()) {
        lines.add("  " + number++ + ". " + step);
      }
    }
  }

  static String about(Exchange exchange) {
    return "Family %s, puts %s right, weight %s%s."
        .formatted(
            exchange.family(),
            loops(exchange.putsRight()),
            exchange.weight(),
            exchange.isMirrored()
                ? ", mirrored " + exchange.moves().get(0).before().abs().inMetres()
                : "");
  }

  private void way(Proposal.Way way) {
    titled("Exchange", way.best(), true);
    way.instead().forEach(other -> lines.add("  Or " + other.inWords() + ". " + about(other)));
  }

  private void several(Proposal.SeveralKinds several) {
    several.exchanges().forEach(exchange -> titled("Several kinds at once", exchange, true));
  }

  private void leaveOut(Proposal.LeaveOut left) {
    lines.add("");
    lines.add(
        "%s is %s: leave out %s, which is one too many."
            .formatted(left.loop(), left.balance().signedMetres(), words(left.cable())));
  }

  private void fromStock(Proposal.FromStock covered) {
    FittedPart out = covered.insteadOf();
    lines.add("");
    lines.add(
        "From stock: %s is %s. Take %s%s%s."
            .formatted(
                covered.loop(),
                covered.balance().signedMetres(),
                words(covered.take().part()),
                covered.take().shelf().isEmpty() ? "" : " from " + covered.take().shelf(),
                out == null ? "" : " instead of " + words(out)));
  }

  private static String words(FittedPart part) {
    return part.kind().word()
        + " "
        + part.label()
        + (part.length() == null ? "" : " (" + part.length() + ")");
  }

  private void shortage(Proposal.Shortage shortage) {
    lines.add("");
    lines.add(
        "Short: %s × %s %s of %s, for %s."
            .formatted(
                shortage.howMany(),
                shortage.family(),
                shortage.kind().word(),
                shortage.length(),
                String.join(", ", shortage.loops().stream().map(Proposal.Waiting::loop).toList())));
  }

  private void apart(Proposal.SeveralParts apart) {
    lines.add("");
    lines.add(
        "Apart: %s is %s; %s.%s"
            .formatted(
                apart.loop(),
                apart.balance().signedMetres(),
                apart.why(),
                apart.fit().isEmpty() ? "" : " Fit " + String.join(" and ", apart.fit()) + "."));
  }
}
