package loopwright.closeout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.pack.PackWorld;
import loopwright.plant.Channel;
import loopwright.plant.ChannelId;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Channels;
import loopwright.plant.Limits;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointWatch;
import loopwright.plant.SettingBasis;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** From the plan to the close-out, through the pages, with a sheet that a program filled in. */
class CloseOutPagesTest {
  private PackWorld world;

  @BeforeEach
  void start() {
    world = new PackWorld();
    world.issue("first");
  }

  @AfterEach
  void stop() {
    world.close();
  }

  private Document closeOut() {
    return world.planner.get(world.outage() + "/close-out").page();
  }

  private Visitor.Answer close() {
    closeOut();
    return world.planner.post(world.outage() + "/close", "note", "handed back");
  }

  private void begin() {
    world.planner.get(world.outage());
    assertThat(world.planner.post(world.outage() + "/begin", "note", "unit is down").status())
        .isEqualTo(303);
  }

  private void say(String tag, String outcome, String reason) {
    Document page = world.technician().get(world.outage() + "/returns").page();
    String loop = page.select("input[name=loop][aria-label=" + tag + "]").attr("value");
    assertThat(
            world
                .technician()
                .post(world.outage() + "/say", "loop", loop, "outcome", outcome, "reason", reason)
                .status())
        .isEqualTo(303);
  }

  @Test
  void fromTheFilledSheetToTheClosedOutageAndTheNextOne() throws IOException {
    begin();
    world.bringBackDone("V-1", "V-2");
    Document page = closeOut();
    assertThat(page.select("h1 + p").text()).isEqualTo("2 done, 1 nothing said.");
    assertThat(close().page().select(".complaints").text()).contains("nothing is said yet of V-3");
    say("V-3", "not done", "no scaffold");
    String next = world.plan("Autumn");
    Document before = closeOut();
    assertThat(before.select("button").eachText()).contains("Carry over 1 loop");
    Visitor.Answer carried =
        world.planner.post(
            world.outage() + "/carry-over", "to", next.substring(next.lastIndexOf('/') + 1));
    assertThat(carried.location()).isEqualTo(next + "/scope?show=taken");
    assertThat(world.planner.get(carried.location()).page().select("tbody tr:contains(V-3)").text())
        .contains("carried over from O-1, not done: no scaffold");
    assertThat(close().status()).isEqualTo(303);
    Document closed = closeOut();
    assertThat(closed.select("h1").text()).contains("closed");
    assertThat(closed.select("h2:contains(Not done) + div").text()).contains("V-3", "no scaffold");
    assertThat(closed.select("h2:contains(Done) + div tr:contains(V-1)").text())
        .contains("matches", "As found and as left C-");
    assertThat(closed.select("form[action$=close]")).isEmpty();
    assertThat(
            world
                .planner
                .post(
                    world.outage() + "/scope",
                    "do",
                    "in",
                    "reason",
                    "x",
                    "loop",
                    "1",
                    "work",
                    "verify")
                .body())
        .contains("O-104");
    world.shop.app.clock.forward(Duration.ofDays(2));
    world.shop.part(PartKind.CABLE, "C-44", "4");
    assertThat(world.shop.survey("V-1", "2026-03-03", "P-1", "C-44", "D-1").status())
        .isEqualTo(303);
    assertThat(closeOut().select("h2:contains(Done) + div tr:contains(V-1)").text())
        .as("later work belongs to later outages")
        .contains("matches")
        .doesNotContain("2026-03-03");
    byte[] pdf = world.technician().bytes(world.outage() + "/close-out.pdf");
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(new PDFTextStripper().getText(document))
          .contains(
              "Close-out of O-1", "2 done, 1 not done", "no scaffold", "Closed", "handed back");
    }
  }

  @Test
  void aLoopThatMayNotGoBackToServiceKeepsItOpen() {
    begin();
    world.bringBackDone("V-1", "V-2");
    say("V-3", "failed", "probe dead");
    world.shop.part(PartKind.CABLE, "C-44", "4");
    assertThat(world.shop.survey("V-2", "2026-03-01", "P-2", "C-44", "D-2").status())
        .isEqualTo(303);
    world.shop.part(PartKind.CABLE, "C-43", "4");
    assertThat(assemble("V-1", "C-43").status())
        .as("a part is never refused for want of a curve, which comes after it")
        .isEqualTo(303);
    Visitor.Answer refused = close();
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.page().select(".complaints").text())
        .contains("V-1, V-2 came back as done but may not go back to service", "Z-102")
        .contains("V-1: ", "V-2: ", "carry it over");
    assertThat(refused.page().select("tr:contains(V-2)").text())
        .contains("Survey of 2026-03-01 08:00");
    failed("V-1");
    assertThat(close().page().select(".complaints").text()).contains("Not closed: V-2 came back");
    failed("V-2");
    assertThat(close().status()).as("with its reason it is carried over").isEqualTo(303);
    assertThat(closeOut().select("h2:contains(Failed) + div").text())
        .contains("V-1", "V-2", "no time left for its curve");
  }

  private void failed(String tag) {
    Document page = world.technician().get(world.outage() + "/close-out").page();
    String loop = page.select("select[name=loop] option:contains(" + tag + ")").attr("value");
    assertThat(
            world
                .technician()
                .post(
                    world.outage() + "/say",
                    "loop",
                    loop,
                    "outcome",
                    "failed",
                    "reason",
                    "no time left for its curve")
                .status())
        .isEqualTo(303);
  }

  private Visitor.Answer assemble(String tag, String cable) {
    String path = "/loops/" + tag + "/assembly";
    Map<String, String> fields = Shop.fields(world.technician().get(path).page());
    fields.put("path-1", cable);
    fields.put("out-path-1", "stock");
    fields.put("on", "2026-03-01");
    fields.put("time", "09:00");
    fields.put("reason", "connector bent");
    return world.technician().post(path, Shop.flat(fields));
  }

  /** Alert 100 µm pk-pk meant at 200/25.4 mV/µm acts at 100 · 7.874/6.7 = 117.5 µm. */
  @Test
  void whatWasFoundOutOfToleranceIsToldWithWhatItDidMeanwhileAndWhichSparesWereUsed()
      throws IOException {
    channel("V-1");
    world.shop.part(PartKind.PROBE, "P-7", "1");
    world.shop.part(PartKind.PROBE, "P-8", "1");
    reserve("V-1", "P-7");
    reserve("V-2", "P-8");
    begin();
    world.bringBackFoundFlat("V-1", 6.7);
    assertThat(world.shop.survey("V-1", "2026-03-01", "P-7", "C-1", "D-1").status()).isEqualTo(303);
    String told = closeOut().select("tr:contains(V-1)").text();
    assertThat(told)
        .contains(
            "Out of tolerance: C-",
            "since when it was so nobody can say",
            "Alert meant for 100 µm pk-pk (3.9 mil) acts at 118 µm (4.6 mil): late by 18 %.",
            "Put aside: probe P-7 for the probe, fitted");
    assertThat(closeOut().select("tr:contains(V-2)").text())
        .contains("Put aside: probe P-8 for the probe, not used here");
    byte[] pdf = world.technician().bytes(world.outage() + "/close-out.pdf");
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
          .contains("Out of limits", "acts at 118 µm (4.6 mil): late by 18 %.", "probe P-7");
    }
  }

  private void reserve(String tag, String serial) {
    Document page = world.planner.get(world.outage() + "/spares").page();
    String loop = page.select("option:contains(" + tag + ")").attr("value");
    assertThat(
            world
                .planner
                .post(world.outage() + "/spares", "loop", loop, "slot", "probe", "serial", serial)
                .status())
        .isEqualTo(303);
  }

  private void channel(String tag) {
    world.shop.app.write(
        tx -> {
          Plant plant = new Plant(PointWatch.NOBODY);
          Point point = plant.pointTagged(tx.sql(), tag).orElseThrow();
          Channels channels = new Channels(PointWatch.NOBODY);
          ChannelId channel =
              channels.add(
                  tx,
                  plant.place(tx.sql(), point.id()).orElseThrow().site().id(),
                  new Channel.Position("R1", 3, 2));
          channels.link(tx, point.id(), channel, ChannelRole.MEASURES);
          channels.set(
              tx,
              channel,
              new ChannelSetting(
                  SettingBasis.APPROVED,
                  Instant.parse("2026-01-01T00:00:00Z"),
                  ScaleFactor.millivoltsPerMil("200"),
                  "",
                  Limits.NONE,
                  new Limits(null, new BigDecimal("100")),
                  new Limits(null, new BigDecimal("150")),
                  Unit.MICROMETRE,
                  ChannelSetting.Delays.NOT_SAID,
                  Limits.NONE,
                  null,
                  null,
                  ""));
          return channel;
        });
  }

  @Test
  void itIsClosedOnlyOnceItIsUnderWayAndByAPlanner() {
    assertThat(close().page().select(".complaints").text())
        .contains("Say first that it is under way");
    assertThat(world.technician().post(world.outage() + "/close", "note", "x").status())
        .isEqualTo(403);
    assertThat(world.planner.post(world.outage() + "/carry-over", "to", "O-99").body())
        .contains("Z-103");
  }
}
