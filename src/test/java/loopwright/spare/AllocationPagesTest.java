package loopwright.spare;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.matching.PartKind;
import loopwright.pack.PackWorld;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/**
 * Two outages that contend for spares, told from beginning to end: each step stands on the ones
 * before.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class AllocationPagesTest {
  private static final String PAGE = "/spare-allocation";

  private static PackWorld world;
  private static Shop shop;
  private static String autumn;

  /** Drivers D-1 and D-2 of V-1 and V-2 are to be exchanged; one driver lies in store. */
  @BeforeAll
  static void start() {
    world = new PackWorld();
    shop = world.shop;
    shop.point("V-4");
    shop.set(4);
    assertThat(shop.survey("V-4", "2026-02-21", "P-4", "C-4", "D-4").status()).isEqualTo(303);
    shop.app.write(
        tx -> {
          for (String serial : new String[] {"P-3", "C-3"}) {
            shop.register.scrap(tx, shop.register.labelled(tx.sql(), serial).get(0).id(), "burnt");
          }
          return 0;
        });
    autumn = world.plan("Autumn");
    world.take(autumn, "V-4");
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  private static Visitor.Answer want(String outage, String tag, String slot, String why) {
    Document page = world.planner.get(outage + "/spares").page();
    String loop = page.select("select[name=loop] option:contains(" + tag + ")").attr("value");
    return world.planner.post(outage + "/spares/wish", "loop", loop, "slot", slot, "why", why);
  }

  private static Document page() {
    return world.planner.get(PAGE).page();
  }

  private static Visitor.Answer takeOver(Document page) {
    return world.planner.post(
        PAGE,
        "dealing",
        page.select("input[name=dealing]").attr("value"),
        "reason",
        "agreed with stores");
  }

  private static String row(Document page, String heading, String tag) {
    return page.select("h2:contains(" + heading + ") + div tr:contains(" + tag + ")").text();
  }

  @Test
  @Order(1)
  void withoutAnyWantNothingIsDealt() {
    assertThat(page().text()).contains("No loop of an open outage wants a part.");
    assertThat(want(world.outage(), "V-1", "driver", "").page().text()).contains("why a spare");
    assertThat(want(world.outage(), "V-1", "nowhere", "x").body()).contains("X-102");
  }

  @Test
  @Order(2)
  void theOnlyPartGoesToTheFirstAndTheOtherIsToldWhy() {
    assertThat(want(autumn, "V-4", "driver", "drifts").status()).isEqualTo(303);
    assertThat(row(page(), "Served", "V-4")).contains("D-3", "Store 2, 14", "to be put aside");
    assertThat(takeOver(page()).status()).isEqualTo(303);
    assertThat(want(world.outage(), "V-1", "driver", "runs hot").status()).isEqualTo(303);
    assertThat(want(world.outage(), "V-1", "driver", "again").body()).contains("X-111");
    Document page = page();
    assertThat(row(page, "Served", "V-1")).contains("O-1", "D-3", "to be put aside");
    assertThat(row(page, "Left without", "V-4"))
        .contains("driver tuned for 5.0 m, family Q8")
        .contains("The only part that would do goes: D-3 to V-1 (O-1).")
        .contains("Serving this loop would leave V-1 (O-1) without")
        .contains("its outage was planned first")
        .contains("D-3 would be released");
    assertThat(page.select("h2:contains(would move) + ul").text())
        .contains("D-3 goes from V-4 to V-1 (O-1)");
  }

  @Test
  @Order(3)
  void whatChangedMeanwhileIsNotTakenOver() {
    Document before = page();
    assertThat(world.technician().get(PAGE).page().select("form[action=" + PAGE + "]")).isEmpty();
    shop.part(PartKind.DRIVER, "D-8", "5");
    Visitor.Answer stale = takeOver(before);
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.page().select(".complaints").text()).contains("Nothing was taken over");
    assertThat(stale.page().select("input[name=reason]").val()).isEqualTo("agreed with stores");
    assertThat(row(stale.page(), "Served", "V-4")).as("moves nothing").contains("D-3", "stays");
    assertThat(row(stale.page(), "Served", "V-1")).contains("D-8");
    assertThat(world.planner.get(autumn + "/spares").page().text()).contains("D-3");
    assertThat(takeOver(page()).status()).isEqualTo(303);
    assertThat(page().text()).contains("what can be served is put aside");
    assertThat(world.planner.post(PAGE, "dealing", "x", "reason", "again").status()).isEqualTo(409);
  }

  @Test
  @Order(4)
  void whatTheRulesRefuseIsDealtAnewWithoutIt() {
    assertThat(want(world.outage(), "V-2", "path-1", "crushed").status()).isEqualTo(303);
    assertThat(row(page(), "Left without", "V-2"))
        .contains("No extension cable of 4.0 m, family Q8, lies free in any store.");
    shop.part(PartKind.CABLE, "C-Q", "4");
    shop.app.write(
        tx -> {
          shop.register.quarantine(
              tx, shop.register.labelled(tx.sql(), "C-Q").get(0).id(), "bent connector");
          return 0;
        });
    assertThat(row(page(), "Left without", "V-2")).contains("In quarantine: 1 ×");
    shop.part(PartKind.CABLE, "C-9", "4");
    assertThat(row(page(), "Served", "V-2")).contains("C-9", "path-1");
  }

  @Test
  @Order(5)
  void theCsvSaysTheSame() {
    String csv = world.technician().get(PAGE + ".csv").body();
    assertThat(csv).startsWith("\uFEFFoutage,window,loop,slot");
    assertThat(csv).contains("V-2,path-1,crushed,C-9").contains("stays put aside");
  }

  @Test
  @Order(6)
  void aPartOfAnOutageUnderWayIsNotMoved() {
    assertThat(takeOver(page()).status()).isEqualTo(303);
    assertThat(want(world.outage(), "V-1", "path-1", "crushed").status()).isEqualTo(303);
    assertThat(row(page(), "Left without", "V-2"))
        .as("V-1 goes first by tag")
        .contains("V-1 (O-1)");
    world.issue("first");
    world.planner.get(world.outage());
    assertThat(world.planner.post(world.outage() + "/begin", "note", "down").status())
        .isEqualTo(303);
    Document page = page();
    assertThat(row(page, "Served", "V-2")).contains("C-9", "stays put aside");
    assertThat(row(page, "Left without", "V-1"))
        .contains("C-9 is put aside for V-2 in O-1, which is under way");
  }

  @Test
  @Order(7)
  void aWishIsTakenBack() {
    Document page = world.planner.get(world.outage() + "/spares").page();
    String wish = page.select("tr:contains(V-1, path-1) button[name=wish]").attr("value");
    assertThat(
            world
                .planner
                .post(world.outage() + "/spares/no-wish", "wish", wish, "no-more", "")
                .status())
        .isEqualTo(422);
    assertThat(
            world
                .planner
                .post(world.outage() + "/spares/no-wish", "wish", wish, "no-more", "repaired")
                .status())
        .isEqualTo(303);
    assertThat(row(page(), "Left without", "V-1")).isEmpty();
    assertThat(
            world
                .planner
                .post(world.outage() + "/spares/no-wish", "wish", wish, "no-more", "again")
                .body())
        .contains("X-110");
  }

  @Test
  @Order(8)
  void partsKeptTogetherInAKitAreNotDealtOneByOne() {
    shop.set(7);
    String set = "";
    for (String serial : new String[] {"P-7", "C-7", "D-7"}) {
      set += shop.app.database().read(sql -> slot(serial) + ":" + number(sql, serial)) + "/";
    }
    Visitor.Answer made =
        world
            .technician()
            .post("/kits", "name", "Bag 7", "set", set.substring(0, set.length() - 1), "note", "x");
    assertThat(made.status()).as(made.page().select(".complaints").text()).isEqualTo(303);
    assertThat(want(world.outage(), "V-2", "probe", "worn").status()).isEqualTo(303);
    assertThat(row(page(), "Left without", "V-2"))
        .contains("lies free in any store", "P-7 is kept together in kit Bag 7");
    shop.part(PartKind.PROBE, "P-8", "1");
    assertThat(row(page(), "Served", "V-2, probe")).contains("P-8");
  }

  private static String slot(String serial) {
    return serial.startsWith("P") ? "probe" : serial.startsWith("C") ? "path-1" : "driver";
  }

  private static long number(org.jooq.DSLContext sql, String serial) {
    return shop.register.labelled(sql, serial).get(0).id().number();
  }
}
