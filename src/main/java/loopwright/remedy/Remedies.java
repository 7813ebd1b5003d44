package loopwright.remedy;

import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import loopwright.exchange.FittedPart;
import loopwright.exchange.LoopLengths;
import loopwright.exchange.Proposal;
import loopwright.exchange.StockPart;
import loopwright.exchange.Weights;
import loopwright.loop.LoopsOffBalance;
import loopwright.matching.FamilyView;
import loopwright.matching.KnownLength;
import loopwright.matching.PartName;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.matching.rules.StandardRules;
import loopwright.plant.Plant;
import loopwright.plant.PlantProblem;
import loopwright.plant.TrainRow;
import loopwright.problem.Refused;
import loopwright.register.FamilyBook;
import loopwright.register.Stock;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Proposals for the plant as it is recorded now. */
public final class Remedies {
  private final LoopsOffBalance loops;
  private final FamilyBook families;
  private final Plant plant;
  private final Stock stock = new Stock();

  public Remedies(LoopsOffBalance loops, FamilyBook families, Plant plant) {
    this.loops = loops;
    this.families = families;
    this.plant = plant;
  }

  /**
   * What would put loops right.
   *
   * @param train of the loops; empty for the whole plant. Exchanges are sought within it, stock is
   *     the whole plant's
   */
  public Proposal propose(DSLContext sql, OptionalLong train) {
    List<LoopLengths> lengths = loops.find(sql, train).stream().map(Remedies::lengths).toList();
    return Proposal.of(lengths, stock(sql, lengths), families.asJudged(sql), Weights.USUAL);
  }

  /**
   * The train of that code, in any case, at whichever site.
   *
   * @throws Refused if there is none
   */
  public long trainCalled(DSLContext sql, String code) {
    return plant.sites(sql).stream()
        .flatMap(site -> plant.trains(sql, site.id()).stream())
        .map(TrainRow::train)
        .filter(train -> train.code().equalsIgnoreCase(code.strip()))
        .map(train -> train.id().number())
        .findFirst()
        .orElseThrow(() -> new Refused(PlantProblem.NOT_THERE, "train", code));
  }

  /** Trains with a loop whose lengths don't add up. */
  Set<Long> trains(DSLContext sql) {
    return loops.trains(sql);
  }

  private static LoopLengths lengths(LoopsOffBalance.Off loop) {
    List<FittedPart> parts =
        loop.parts().entrySet().stream()
            .map(entry -> fitted(entry.getKey(), entry.getValue()))
            .toList();
    return new LoopLengths(
        loop.tag(),
        loop.site(),
        loop.trainCode(),
        parts,
        loop.balance(),
        StandardRules.lengthTolerance(loop.view()),
        loop.view().family().map(FamilyView::code).orElse(""));
  }

  private static FittedPart fitted(long number, PartView part) {
    KnownLength length = part.length();
    return new FittedPart(
        number,
        label(part.name()),
        part.kind(),
        part.family(),
        length == null ? null : length.length(),
        length != null && length.evidence().proves(),
        part.state() != PartState.QUARANTINED && part.state() != PartState.SCRAPPED);
  }

  private static String label(PartName name) {
    return name.serial() != null ? name.serial() : orEmpty(name.shopNumber());
  }

  private static String orEmpty(@Nullable String text) {
    return text == null ? "" : text;
  }

  private List<StockPart> stock(DSLContext sql, List<LoopLengths> loops) {
    TreeSet<String> concerned = new TreeSet<>();
    loops.stream()
        .flatMap(loop -> Stream.concat(Stream.of(loop.family()), familiesOf(loop)))
        .filter(code -> !code.isEmpty())
        .forEach(concerned::add);
    return stock.lying(sql, concerned).stream().map(Remedies::stocked).toList();
  }

  private static Stream<String> familiesOf(LoopLengths loop) {
    return loop.parts().stream().map(FittedPart::family).filter(Objects::nonNull);
  }

  /** A part on a shelf as the exchanges know it. */
  public static StockPart stocked(Stock.Lying lying) {
    return new StockPart(
        new FittedPart(
            lying.id().number(),
            lying.label(),
            lying.kind(),
            lying.family(),
            lying.length().length(),
            lying.length().evidence().proves(),
            true),
        lying.shelf().inWords());
  }
}
