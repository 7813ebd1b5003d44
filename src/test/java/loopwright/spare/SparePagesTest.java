package loopwright.spare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loopwright.matching.PartKind;
import loopwright.pack.PackWorld;
import loopwright.register.ComponentId;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jooq.exception.IntegrityConstraintViolationException;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Spares over HTTP: proved, held for one loop, fetched, released. */
class SparePagesTest {
  private PackWorld world;
  private Shop shop;
  private ComponentId cable;

  /** V-1 holds a cable that is half a metre too long; C-9 of 4.0 m lies in store. */
  @BeforeEach
  void start() {
    world = new PackWorld();
    shop = world.shop;
    shop.part(PartKind.CABLE, "C-45", "4.5");
    assertThat(shop.survey("V-1", "2026-02-21", "P-1", "C-45", "D-1").status()).isEqualTo(303);
    cable = shop.part(PartKind.CABLE, "C-9", "4");
  }

  @AfterEach
  void stop() {
    world.close();
  }

  private static String loop(Document page, String tag) {
    return page.select("select[name=loop] option:contains(" + tag + ")").attr("value");
  }

  private Visitor.Answer reserve(String outage, String tag, String slot, String serial) {
    Document page = world.planner.get(outage + "/spares").page();
    return world.planner.post(
        outage + "/spares", "loop", loop(page, tag), "slot", slot, "serial", serial);
  }

  @Test
  void whatMatchesIsPutAsideWithItsProofAndFetchedByStoreAndBin() {
    Document before = world.planner.get(world.outage() + "/spares").page();
    assertThat(before.select("h2:contains(lies in stock) + div").text()).contains("V-1", "4");
    assertThat(reserve(world.outage(), "V-1", "path-1", "C-9").status()).isEqualTo(303);
    Document page = world.planner.get(world.outage() + "/spares").page();
    assertThat(page.select("h2:contains(Pick list) ~ form tbody tr").text())
        .contains("Store 2, 14", "C-9", "V-1", "path-1", "length balance: matches");
    assertThat(page.select("h2:contains(lies in stock)")).as("V-1 is served").isEmpty();
    assertThat(world.technician().get(world.outage() + "/pick-list.csv").body())
        .contains("Store 2,14,C-9");
    assertThat(world.planner.get(world.outage()).page().text()).contains("1 part is put aside.");
    world.issue("first");
    assertThat(world.planner.get(world.outage() + "/pack").page().text()).contains("Revision");
  }

  @Test
  void whatDoesNotMatchOrIsNotInStockIsNotPutAside() {
    shop.part(PartKind.CABLE, "C-46", "4.5");
    Visitor.Answer longer = reserve(world.outage(), "V-1", "path-1", "C-46");
    assertThat(longer.status()).isEqualTo(422);
    assertThat(longer.page().select(".complaints").text())
        .contains("C-46 does not make V-1 fit to be left so", "too long");
    assertThat(longer.page().select("input[name=serial]").last().val()).isEqualTo("C-46");
    assertThat(reserve(world.outage(), "V-1", "path-1", "C-2").body()).contains("X-103");
    assertThat(reserve(world.outage(), "V-1", "path-1", "NOBODY").body())
        .contains("No part in the register is called NOBODY");
    assertThat(
            world
                .technician()
                .post(world.outage() + "/spares", "loop", "1", "slot", "probe", "serial", "x")
                .status())
        .isEqualTo(403);
  }

  @Test
  void aKitIsPutAsideWholeAndAPartOfItAloneIsAttention() {
    shop.set(7);
    String set =
        "probe:%s/path-1:%s/driver:%s".formatted(number("P-7"), number("C-7"), number("D-7"));
    String kit =
        world.technician().post("/kits", "name", "Spare seven", "set", set).location().substring(6);
    assertThat(reserve(world.outage(), "V-1", "path-1", "C-7").status()).isEqualTo(303);
    Document alone = world.planner.get(world.outage() + "/spares").page();
    assertThat(alone.text()).contains("C-7 belongs to kit Spare seven (" + kit + ") with");
    String loop = loop(alone, "V-1");
    String path = world.outage() + "/spares/kit";
    assertThat(world.planner.post(path, "loop", loop, "kit", kit).page().text())
        .contains("C-7 is put aside for that slot");
    world.planner.post(
        world.outage() + "/spares/release",
        "reservation",
        alone.select("button[name=reservation]").val(),
        "reason",
        "the whole kit goes");
    assertThat(world.planner.post(path, "loop", loop, "kit", kit).status()).isEqualTo(303);
    assertThat(world.technician().get(world.outage() + "/pick-list.csv").body())
        .contains("P-7", "C-7", "D-7");
    assertThat(world.planner.get(world.outage() + "/spares").page().text())
        .doesNotContain("belongs to kit");
    assertThat(world.planner.post(path, "loop", loop, "kit", "KIT-99").page().text())
        .contains("There is no kit KIT-99");
  }

  private long number(String serial) {
    return shop.app
        .database()
        .read(sql -> shop.register.labelled(sql, serial))
        .get(0)
        .id()
        .number();
  }

  @Test
  void twoPacksCantHoldOnePart() {
    assertThat(reserve(world.outage(), "V-1", "path-1", "C-9").status()).isEqualTo(303);
    String other = world.plan("Autumn");
    world.take(other, "V-1", "V-2");
    assertThat(reserve(other, "V-2", "path-1", "C-9").page().select(".complaints").text())
        .contains("C-9 is put aside for O-1, V-1 already");
    assertThatThrownBy(
            () ->
                shop.app.write(
                    tx -> {
                      new SpareStore().hold(tx, 2, 2, "path-1", cable.number(), "matches", "none");
                      return 0;
                    }))
        .as("the database itself refuses")
        .hasCauseInstanceOf(IntegrityConstraintViolationException.class);
  }

  @Test
  void aPartPromisedElsewhereIsToldWhereItIsFittedUntilItIsReleased() {
    assertThat(reserve(world.outage(), "V-1", "path-1", "C-9").status()).isEqualTo(303);
    assertThat(shop.survey("V-2", "2026-03-01", "P-2", "C-9", "D-2").status()).isEqualTo(303);
    Document loop = world.technician().get("/loops/V-2").page();
    assertThat(loop.text()).contains("C-9 is promised to O-1, loop V-1");
    Document page = world.planner.get(world.outage() + "/spares").page();
    String reservation = page.select("button[name=reservation]").attr("value");
    assertThat(
            world
                .planner
                .post(world.outage() + "/spares/release", "reservation", reservation, "reason", "")
                .body())
        .contains("why it is released");
    assertThat(
            world
                .planner
                .post(
                    world.outage() + "/spares/release",
                    "reservation",
                    reservation,
                    "reason",
                    "fitted elsewhere")
                .status())
        .isEqualTo(303);
    Document released = world.technician().get("/loops/V-2").page();
    assertThat(released.select("tr:contains(Free to use)").text()).doesNotContain("promised to");
    assertThat(
            world
                .planner
                .post(
                    world.outage() + "/spares/release",
                    "reservation",
                    reservation,
                    "reason",
                    "again")
                .body())
        .contains("X-106");
  }

  @Test
  void whatIsShortIsToldByKindFamilyAndLength() {
    assertThat(shop.survey("V-1", "2026-02-22", "P-1", "C-1", "D-1").status()).isEqualTo(303);
    shop.part(PartKind.PROBE, "P-5", "0.5");
    assertThat(shop.survey("V-2", "2026-02-21", "P-5", "C-2", "D-2").status()).isEqualTo(303);
    Document page = world.planner.get(world.outage() + "/spares").page();
    assertThat(page.select("h2:contains(lies in stock) + div tr:contains(V-2)").text())
        .as("one part makes it whole")
        .containsAnyOf("P-2", "P-3", "C-45");
    shop.app.write(
        tx -> {
          for (String serial : List.of("P-2", "P-3", "C-45")) {
            shop.register.scrap(tx, shop.register.labelled(tx.sql(), serial).get(0).id(), "burnt");
          }
          return 0;
        });
    Document without = world.planner.get(world.outage() + "/spares").page();
    assertThat(without.select("h2:contains(Short) + div").text()).contains("family Q8", "V-2");
  }

  @Test
  void closingTheOutageReleasesWhatWasPutAside() {
    assertThat(reserve(world.outage(), "V-1", "path-1", "C-9").status()).isEqualTo(303);
    world.issue("first");
    world.planner.get(world.outage());
    world.planner.post(world.outage() + "/begin", "note", "down");
    for (String tag : List.of("V-1", "V-2", "V-3")) {
      Document page = world.technician().get(world.outage() + "/returns").page();
      String loop = page.select("input[name=loop][aria-label=" + tag + "]").attr("value");
      world
          .technician()
          .post(world.outage() + "/say", "loop", loop, "outcome", "not done", "reason", "no time");
    }
    world.planner.get(world.outage() + "/close-out");
    assertThat(world.planner.post(world.outage() + "/close", "note", "over").status())
        .isEqualTo(303);
    String other = world.plan("Autumn");
    world.take(other, "V-1");
    assertThat(reserve(other, "V-1", "path-1", "C-9").status()).isEqualTo(303);
  }
}
