package loopwright.remedy;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import loopwright.exchange.Exchange;
import loopwright.exchange.Proposal;
import loopwright.matching.PartKind;
import loopwright.people.People;
import loopwright.testing.DemoSite;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the exchange finder says of the invented plant, and how pages and data tell it. */
class DemoExchangesTest {
  private static final List<String> CABLES_SWAPPED = List.of("K101-V3X", "K101-V3Y");
  private static final List<String> PROBES_SWAPPED = List.of("K201-V5X", "K201-V5Y");

  private static DemoSite site;
  private static Visitor planner;

  @BeforeAll
  static void open() {
    site = new DemoSite();
    planner = new Visitor(site.address());
    assertThat(planner.signIn("planner", People.DEMO_PASSWORD).status()).isEqualTo(303);
  }

  @AfterAll
  static void close() {
    if (site != null) {
      site.close();
    }
  }

  @Test
  void bothMirroredSwapsAreFound() {
    Proposal proposal = site.app().propose(null);
    assertThat(proposal.ways()).hasSize(2);
    assertThat(proposal.putRight()).isEqualTo(4);
    for (List<String> loops : List.of(CABLES_SWAPPED, PROBES_SWAPPED)) {
      Proposal.Way way =
          proposal.ways().stream()
              .filter(each -> each.best().loops().equals(loops))
              .findFirst()
              .orElseThrow();
      assertThat(way.best().isMirrored()).isTrue();
      assertThat(way.best().putsRight()).isEqualTo(2);
      assertThat(way.best().kind()).isEqualTo(PartKind.CABLE);
      assertThat(way.instead()).extracting(Exchange::kind).containsExactly(PartKind.PROBE);
      assertThat(way.best().steps().get(0)).startsWith("Look:");
    }
  }

  @Test
  void theOtherWrongLengthsComeFromTheStore() {
    Proposal proposal = site.app().propose(null);
    assertThat(proposal.outOfBalance()).isEqualTo(6);
    assertThat(proposal.fromStock())
        .extracting(Proposal.FromStock::loop)
        .containsExactlyInAnyOrder("G301-V7X", "K601-V5Y");
    assertThat(proposal.fromStock()).allMatch(row -> !row.take().shelf().isEmpty());
    assertThat(proposal.shortages()).isEmpty();
    assertThat(proposal.apart()).isEmpty();
  }

  @Test
  void aTrainAloneTellsOnlyOfItself() {
    Proposal proposal = site.app().propose("k-101");
    assertThat(proposal.outOfBalance()).isEqualTo(2);
    assertThat(proposal.ways())
        .extracting(way -> way.best().loops())
        .containsExactly(CABLES_SWAPPED);
  }

  @Test
  void thePageTellsTheStepsAndLinksTheLoops() {
    Visitor.Answer answer = planner.get("/exchanges");
    assertThat(answer.status()).isEqualTo(200);
    String text = answer.page().text();
    assertThat(text)
        .contains("6 loops are out of balance. Exchanges put 4 right, stock makes 2 whole")
        .contains("Swap the extension cables of K101-V3X and K101-V3Y")
        .contains("Or swap the probes, each with its lead, of K201-V5X and K201-V5Y")
        .contains("Look: are the parts swapped, or only the records?");
    assertThat(answer.page().select("a[href=/loops/K101-V3X]")).isNotEmpty();
    assertThat(answer.page().select("a[href^=/exchanges?train=]")).isNotEmpty();
  }

  @Test
  void trainAndLoopPagesLeadThere() {
    String chip = planner.get("/exchanges").page().select(".chips a:contains(K-101)").attr("href");
    Visitor.Answer train = planner.get(chip);
    assertThat(train.page().text()).contains("K101-V3X").doesNotContain("K201-V5X");
    assertThat(planner.get("/loops/K101-V3X").page().select("main a[href=" + chip + "]"))
        .isNotEmpty();
    String trainPage = chip.replace("/exchanges?train=", "/plant/trains/");
    assertThat(planner.get(trainPage).page().select("a[href=" + chip + "]")).isNotEmpty();
  }

  @Test
  void aTrainThatIsNotThereIsNotFound() {
    assertThat(planner.get("/exchanges?train=999999").status()).isEqualTo(404);
    assertThat(planner.get("/exchanges?train=K-101").status()).isEqualTo(404);
  }

  @Test
  void theSameComesAsData() throws Exception {
    Visitor.Answer answer = planner.get("/api/exchanges");
    assertThat(answer.header("Content-Type")).startsWith("application/json");
    JsonNode document = new ObjectMapper().readTree(answer.body());
    assertThat(document.get("loopsOutOfBalance").asInt()).isEqualTo(6);
    JsonNode first = document.get("exchanges").get(0).get("exchange");
    assertThat(first.get("mirrored").asBoolean()).isTrue();
    assertThat(first.get("moves").get(0).get("balanceBeforeMetres").asDouble()).isEqualTo(-0.5);
    assertThat(new Visitor(site.address()).get("/api/exchanges").status()).isEqualTo(401);
  }
}
