package loopwright.remedy;

import java.util.List;
import loopwright.exchange.Exchange;
import loopwright.exchange.FittedPart;
import loopwright.exchange.Proposal;
import loopwright.problem.Text;
import loopwright.units.Length;
import loopwright.web.PathSegment;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;

/** A proposal in the words and units of the page. */
record ProposalShown(
    String summary,
    boolean nothingToDo,
    List<Way> ways,
    List<Way> others,
    List<Several> several,
    List<Row> leaveOut,
    List<Row> fromStock,
    List<Short> shortages,
    List<Apart> apart) {

  record Loop(String tag, String href) {
    static Loop of(String tag) {
      return new Loop(tag, "/loops/" + PathSegment.of(tag));
    }
  }

  record Part(long number, String label, String kind, String length) {}

  record Move(Loop loop, String before, Part gets, Loop from, String after, boolean inBalance) {}

  record Way(String title, String about, List<Move> moves, List<String> steps, List<Way> instead) {}

  record Several(String title, List<Way> ways) {}

  record Row(Loop loop, String balance, Part part, String shelf, @Nullable Part insteadOf) {}

  record Waiting(Loop loop, String balance, String or) {}

  record Short(String family, String kind, String length, int howMany, List<Waiting> loops) {}

  record Apart(Loop loop, String balance, String why, List<String> fit) {}

  static ProposalShown of(Proposal proposal, UnitsShown units) {
    return new Words(units).shown(proposal);
  }

  /** Turns lengths into the reader's units. */
  private record Words(UnitsShown units) {
    ProposalShown shown(Proposal proposal) {
      return new ProposalShown(
          ExchangeLines.summary(proposal),
          proposal.outOfBalance() == 0,
          proposal.ways().stream().map(w -> way(w.best(), w.instead())).toList(),
          proposal.otherWays().stream().map(other -> way(other, List.of())).toList(),
          proposal.bySeveralKinds().stream().map(this::several).toList(),
          proposal.leaveOut().stream()
              .map(
                  l ->
                      new Row(
                          Loop.of(l.loop()), units.signed(l.balance()), part(l.cable()), "", null))
              .toList(),
          proposal.fromStock().stream().map(this::fromStock).toList(),
          proposal.shortages().stream().map(this::shortage).toList(),
          proposal.apart().stream()
              .map(a -> new Apart(Loop.of(a.loop()), units.signed(a.balance()), a.why(), a.fit()))
              .toList());
    }

    private String both(@Nullable Length length) {
      return length == null ? "length not known" : units.both(length);
    }

    private Part part(FittedPart part) {
      return new Part(part.number(), part.label(), part.kind().word(), both(part.length()));
    }

    private Way way(Exchange exchange, List<Exchange> instead) {
      String words = exchange.inWords();
      return new Way(
          Text.capital(words),
          ExchangeLines.about(exchange),
          exchange.moves().stream().map(this::move).toList(),
          exchange.steps(),
          instead.stream().map(other -> way(other, List.of())).toList());
    }

    private Move move(Exchange.Move move) {
      return new Move(
          Loop.of(move.to()),
          units.signed(move.before()),
          part(move.part()),
          Loop.of(move.from()),
          units.signed(move.after()),
          move.inBalance());
    }

    private Several several(Proposal.SeveralKinds several) {
      return new Several(
          String.join(", ", several.loops()),
          several.exchanges().stream().map(exchange -> way(exchange, List.of())).toList());
    }

    private Row fromStock(Proposal.FromStock covered) {
      FittedPart out = covered.insteadOf();
      return new Row(
          Loop.of(covered.loop()),
          units.signed(covered.balance()),
          part(covered.take().part()),
          covered.take().shelf(),
          out == null ? null : part(out));
    }

    private Short shortage(Proposal.Shortage shortage) {
      return new Short(
          shortage.family(),
          shortage.kind().word(),
          both(shortage.length()),
          shortage.howMany(),
          shortage.loops().stream()
              .map(
                  w ->
                      new Waiting(
                          Loop.of(w.loop()),
                          units.signed(w.balance()),
                          String.join(", or ", w.or())))
              .toList());
    }
  }
}
