package loopwright.journal;

import static loopwright.db.gen.Tables.JOURNAL_HEAD;
import static loopwright.db.gen.Tables.SITE;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.ZoneId;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.KnownPeople;
import loopwright.testing.TestClock;
import loopwright.testing.Visitor;
import loopwright.web.NavItem;
import loopwright.web.Page;
import loopwright.web.Web;
import loopwright.web.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("zone")
class JournalPagesTest {
  private static Database database;
  private static Web web;
  private static Visitor visitor;

  @BeforeAll
  static void serve() {
    TestClock clock = new TestClock("2026-03-01T10:15:30Z");
    database = Engine.H2.open(clock);
    FullWorld.fill(database);
    clock.forward(Duration.ofHours(30));
    Act act = new Act(7L, "S. Urveyor", "technician", "add site", "new plant & more");
    IntStream.range(0, 120).forEach(i -> database.write(act, tx -> site(tx, "S" + i)));
    database.write(
        new Act(null, "command line", "administrator", "import", "file.csv"),
        tx -> {
          IntStream.range(0, 2_300).forEach(i -> site(tx, "B" + i));
          return null;
        });
    Page page = new Page("", List.of(new NavItem("/record", "Record", "record")));
    web =
        Web.start(
            WebSettings.loopback(0),
            page,
            new KnownPeople(),
            clock,
            List.of(new JournalPages(database, page, () -> ZoneId.of("Pacific/Chatham"))));
    visitor = Visitor.signedIn(web.address(), "viewer");
  }

  @AfterAll
  static void stop() {
    web.close();
    database.close();
  }

  private static SiteRecord site(Tx tx, String code) {
    SiteRecord site = tx.row(SITE);
    site.setCode(code);
    site.setName("Site " + code);
    site.setZone("UTC");
    return tx.insert(site);
  }

  private static List<String> entries(Visitor.Answer answer) {
    assertThat(answer.status()).isEqualTo(200);
    return answer.page().select("td[data-label=Entry]").eachText();
  }

  @Test
  void theNewestComesFirstAndOlderOnesFollow() {
    Visitor.Answer first = visitor.get("/record");
    assertThat(entries(first)).hasSize(50).startsWith("127", "125", "124");
    assertThat(first.page().select("a:contains(newest)")).isEmpty();
    Visitor.Answer second = visitor.get(first.page().select("a[rel=next]").attr("href"));
    assertThat(entries(second)).hasSize(50).startsWith("76");
    Visitor.Answer third = visitor.get(second.page().select("a[rel=next]").attr("href"));
    assertThat(entries(third)).hasSize(26).endsWith("2", "1");
    assertThat(third.page().select("a[rel=next]")).isEmpty();
    assertThat(third.page().select("a:contains(newest)").attr("href")).isEqualTo("/record");
  }

  @Test
  void aPersonAKindAndADayNarrowTheList() {
    assertThat(entries(visitor.get("/record?person=P.+Erson"))).containsExactly("5");
    assertThat(entries(visitor.get("/record?what=import"))).containsExactly("127");
    // 10:15 UTC is half a minute into the next day on the clock that is shown
    assertThat(entries(visitor.get("/record?day=2026-03-01"))).isEmpty();
    assertThat(entries(visitor.get("/record?day=2026-03-02"))).hasSize(5);
    assertThat(entries(visitor.get("/record?day=2026-03-02&what=plant"))).hasSize(4);
    Visitor.Answer page = visitor.get("/record?person=S.+Urveyor&day=2026-03-03");
    assertThat(entries(page)).hasSize(50);
    assertThat(page.page().select("option[selected]").eachText()).contains("S. Urveyor");
    Visitor.Answer next = visitor.get(page.page().select("a[rel=next]").attr("href"));
    assertThat(entries(next)).hasSize(50).startsWith("75");
  }

  @Test
  void nothingFoundAndNonsenseAreSaid() {
    assertThat(visitor.get("/record?person=nobody").page().text())
        .contains("No change fits this filter.");
    Visitor.Answer nonsense = visitor.get("/record?day=yesterday&before=1.x");
    assertThat(nonsense.status()).isEqualTo(422);
    assertThat(nonsense.page().select("#day-about").text()).contains("is not a day");
  }

  @Test
  void theHeadIsShownToBeNotedElsewhere() {
    String head =
        HexFormat.of()
            .formatHex(database.read(sql -> sql.fetchSingle(JOURNAL_HEAD)).getChainHash());
    assertThat(visitor.get("/record").page().select("dd").eachText()).contains("127", head);
  }

  @Test
  void anEntryTellsBeforeAndAfterInWords() {
    Visitor.Answer entry = visitor.get("/record/5");
    String text = entry.page().select("main").text();
    assertThat(text)
        .contains("names were short")
        .contains("P. Erson as administrator")
        .contains("person P. Erson-Long changed")
        .contains("full name P. Erson P. Erson-Long")
        .contains("component 002 changed")
        .contains("length typed 12 12.0")
        .contains("sensitivity typed none –")
        .contains("calibration draft number 2 removed")
        .contains("point T100-VY1")
        .contains("2026-03-02 00:00")
        .doesNotContain("tip, mm"); // rounded to what it was
    assertThat(text).doesNotContain("change_id").doesNotContain("_id");
  }

  @Test
  void keysAreNamesAndMomentsAreOnTheSitesClock() {
    String text = visitor.get("/record/3").page().select("main").text();
    assertThat(text)
        .contains("component 001")
        .contains("point T100-VX1")
        .contains("valid until until further notice")
        .contains("valid from 2024-05-02 00:45");
  }

  @Test
  void readingsAreATable() {
    org.jsoup.nodes.Element table =
        visitor.get("/record/4").page().select("table:has(th:contains(gap typed))").first();
    assertThat(table.select("tbody tr")).hasSize(3);
    assertThat(table.parent().select("h3").text()).isEqualTo("calibration reading C-1 added");
  }

  @Test
  void aLargeChangeIsPagedAndItsPartsAreLinked() {
    Visitor.Answer entry = visitor.get("/record/126");
    assertThat(entry.page().select("main").text())
        .contains("kept as 2 entries: 126 127")
        .contains("2000 things written 1 to 100 shown");
    Visitor.Answer next = visitor.get(entry.page().select("a[rel=next]").attr("href"));
    assertThat(next.page().select("main").text()).contains("101 to 200 shown");
    assertThat(next.page().select("a[rel=prev]").attr("href")).endsWith("?from=0");
  }

  @Test
  void anEntryThatIsNotThereIsSaidNotToBe() {
    assertThat(visitor.get("/record/4711").status()).isEqualTo(404);
    assertThat(visitor.get("/record/x").status()).isEqualTo(404);
    assertThat(visitor.get("/record/99999999999999999999999").status()).isEqualTo(404);
  }
}
