package loopwright.exchange;

import static loopwright.exchange.ExchangeLoops.loop;
import static loopwright.exchange.ExchangeLoops.propose;
import static loopwright.exchange.ExchangeLoops.stocked;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.matching.PartKind;
import org.junit.jupiter.api.Test;

class ProposalTest {
  private static final LoopLengths LONG = loop("K-1X", "1.0", "4.5", "5.0");
  private static final LoopLengths SHORT = loop("K-1Y", "0.5", "4.0", "5.0");
  private static final LoopLengths SOUND = loop("K-2X", "1.0", "4.0", "5.0");

  @Test
  void twoMirroredMismatchesAreASwapWithTheOtherKindAsAlternative() {
    Proposal proposal = propose(List.of(LONG, SHORT, SOUND));
    assertThat(proposal.outOfBalance()).isEqualTo(2);
    assertThat(proposal.putRight()).isEqualTo(2);
    Proposal.Way way = proposal.ways().get(0);
    assertThat(proposal.ways()).hasSize(1);
    assertThat(way.best().isMirrored()).isTrue();
    assertThat(way.best().kind()).isEqualTo(PartKind.CABLE);
    assertThat(way.best().loops()).containsExactly("K-1X", "K-1Y");
    assertThat(way.best().weight()).isEqualTo(6);
    assertThat(way.instead()).extracting(Exchange::kind).containsExactly(PartKind.PROBE);
    assertThat(proposal.fromStock()).isEmpty();
    assertThat(proposal.shortages()).isEmpty();
  }

  @Test
  void theFirstStepIsToLookAndTheLastIsANewCurveForEachMovedLoop() {
    List<String> steps = propose(List.of(LONG, SHORT)).ways().get(0).best().steps();
    assertThat(steps.get(0))
        .startsWith("Look: are the parts swapped, or only the records?")
        .contains("K-1X and K-1Y");
    assertThat(steps).hasSize(4);
    assertThat(steps.get(1))
        .isEqualTo(
            "Move extension cable C-K-1X (4.5 m, 14.8 ft) from K-1X to K-1Y in place of extension"
                + " cable C-K-1Y: the balance of K-1Y goes from −0.5 m to 0.0 m.");
    assertThat(steps.get(3)).contains("new curve of K-1X and K-1Y");
  }

  @Test
  void aLengthThatIsNotProvedIsToBeProvedFirst() {
    FittedPart assumed =
        new FittedPart(7, "C-7", PartKind.CABLE, "q5", LONG.parts().get(1).length(), false, true);
    LoopLengths loop = LONG.with(LONG.parts().get(1), assumed);
    assertThat(propose(List.of(loop, SHORT)).ways().get(0).best().steps())
        .anyMatch(step -> step.startsWith("Prove the length of extension cable C-7 first"));
  }

  @Test
  void threeLoopsThatNeedOneAnothersPartsMakeARing() {
    Proposal proposal =
        propose(
            List.of(
                loop("train", "q-feet", "A", "0.9144", "5.1816", "4.572"),
                loop("train", "q-feet", "B", "0.9144", "3.6576", "6.705600"),
                loop("train", "q-feet", "C", "0.9144", "5.7912", "6.096")));
    Exchange best = proposal.ways().get(0).best();
    assertThat(best.kind()).isEqualTo(PartKind.DRIVER);
    assertThat(best.putsRight()).isEqualTo(3);
    assertThat(best.moves()).hasSize(3);
    assertThat(best.inWords()).startsWith("pass the drivers round");
  }

  @Test
  void aQuarantinedPartIsNotMoved() {
    FittedPart bad =
        new FittedPart(7, "C-7", PartKind.CABLE, "q5", LONG.parts().get(1).length(), true, false);
    LoopLengths loop = LONG.with(LONG.parts().get(1), bad);
    Proposal proposal = propose(List.of(loop, SHORT));
    assertThat(proposal.ways()).extracting(way -> way.best().kind()).containsOnly(PartKind.PROBE);
  }

  @Test
  void partsDoNotTravelBetweenSites() {
    LoopLengths away =
        new LoopLengths(
            "Z-1",
            "another site",
            "train 9",
            SHORT.parts(),
            SHORT.balance(),
            SHORT.tolerance(),
            SHORT.family());
    assertThat(propose(List.of(LONG, away)).ways()).isEmpty();
  }

  @Test
  void theStockMakesWholeWhatNoExchangeCanAndSaysFromWhichShelf() {
    Proposal proposal =
        propose(
            List.of(LONG),
            stocked(PartKind.CABLE, "S-1", "q5", "4.0"),
            stocked(PartKind.PROBE, "S-2", "q5", "0.5"));
    assertThat(proposal.ways()).isEmpty();
    assertThat(proposal.fromStock()).hasSize(1);
    Proposal.FromStock covered = proposal.fromStock().get(0);
    assertThat(covered.take().part().label()).isEqualTo("S-1");
    assertThat(covered.take().shelf()).isEqualTo("store 1, bin S-1");
    assertThat(covered.insteadOf()).isEqualTo(LONG.parts().get(1));
  }

  @Test
  void theStockServesMostLoopsNotTheFirst() {
    LoopLengths either = loop("K-1X", "1.0", "4.5", "5.0");
    LoopLengths other = loop("K-3X", "1.0", "4.5", "5.0");
    Proposal proposal =
        propose(
            List.of(either, other.with(other.parts().get(0), ofNoFamily(other.parts().get(0)))),
            stocked(PartKind.CABLE, "S-1", "q5", "4.0"),
            stocked(PartKind.PROBE, "S-3", "q5", "0.5"));
    assertThat(proposal.fromStock())
        .extracting(covered -> covered.loop() + " " + covered.take().part().label())
        .containsExactlyInAnyOrder("K-1X S-3", "K-3X S-1");
  }

  @Test
  void whatIsShortIsNamedByFamilyKindLengthAndNumber() {
    Proposal proposal =
        propose(
            List.of(LONG, loop("K-3X", "1.0", "4.5", "5.0"), loop("K-4X", "1.0", "4.5", "5.0")),
            stocked(PartKind.CABLE, "S-1", "q5", "4.0"));
    assertThat(proposal.fromStock()).hasSize(1);
    assertThat(proposal.shortages()).hasSize(1);
    Proposal.Shortage shortage = proposal.shortages().get(0);
    assertThat(shortage.family()).isEqualTo("q5");
    assertThat(shortage.kind()).isEqualTo(PartKind.CABLE);
    assertThat(shortage.length().inMetres()).isEqualTo("4.0 m");
    assertThat(shortage.howMany()).isEqualTo(2);
    assertThat(shortage.loops().get(0).or()).containsExactly("probe with 0.5 m (1.6 ft) lead");
  }

  @Test
  void anAssumedLengthOnTheShelfIsNotCountedOn() {
    FittedPart assumed =
        new FittedPart(
            9, "S-9", PartKind.CABLE, "q5", ExchangeLoops.lengths("4.0").get(0), false, true);
    Proposal proposal = propose(List.of(LONG), new StockPart(assumed, ""));
    assertThat(proposal.fromStock()).isEmpty();
    assertThat(proposal.shortages()).hasSize(1);
  }

  @Test
  void aCableOnAFullLengthProbeIsLeftOut() {
    LoopLengths loop = loop("K-5X", "5.0", "4.5", "5.0");
    Proposal proposal = propose(List.of(loop));
    assertThat(proposal.leaveOut())
        .extracting(left -> left.cable().label())
        .containsExactly("C-K-5X");
    assertThat(proposal.shortages()).isEmpty();
  }

  @Test
  void aCableThatIsMissingComesFromStockOrIsShort() {
    LoopLengths loop = loop("K-6X", "1.0", "", "5.0");
    assertThat(propose(List.of(loop)).shortages())
        .extracting(shortage -> shortage.kind().word() + " " + shortage.length())
        .containsExactly("extension cable 4.0 m");
    Proposal covered = propose(List.of(loop), stocked(PartKind.CABLE, "S-1", "q5", "4.0"));
    assertThat(covered.fromStock().get(0).insteadOf()).isNull();
  }

  @Test
  void whatNoSinglePartPutsRightStandsApart() {
    LoopLengths loop = loop("train 1", "q-feet", "K-7X", "1.8288", "5.7912", "4.572");
    Proposal proposal = propose(List.of(loop));
    assertThat(proposal.shortages()).isEmpty();
    assertThat(proposal.apart()).hasSize(1);
    assertThat(proposal.apart().get(0).fit())
        .containsExactly(
            "probe with 0.914 m (3.0 ft) lead", "extension cable of 3.658 m (12.0 ft)");
  }

  private static FittedPart ofNoFamily(FittedPart part) {
    return new FittedPart(
        part.number(), part.label(), part.kind(), null, part.length(), true, true);
  }

  /** Too long by a lead's step and a cable's step; one neighbour has the lead, one the cable. */
  @Test
  void aCaseForSeveralKindsAtOnceIsListedApart() {
    LoopLengths second = loop("K-9X", "0.5", "4.0", "5.0");
    LoopLengths third = loop("K-9Y", "1.0", "3.5", "5.0");
    Proposal proposal =
        propose(
            List.of(
                loop("K-8X", "1.5", "4.5", "5.0"),
                second.with(second.parts().get(0), ofNoFamily(second.parts().get(0))),
                third.with(third.parts().get(1), ofNoFamily(third.parts().get(1)))));
    assertThat(proposal.ways()).isEmpty();
    assertThat(proposal.putRight()).isEqualTo(3);
    assertThat(proposal.bySeveralKinds()).hasSize(1);
    assertThat(proposal.bySeveralKinds().get(0).exchanges())
        .extracting(Exchange::kind)
        .containsExactlyInAnyOrder(PartKind.CABLE, PartKind.PROBE);
  }
}
