package loopwright.exposure;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import loopwright.loop.LoopWorld;
import loopwright.people.People;
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
import loopwright.testing.FilledForm;
import loopwright.testing.Visitor;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** From a bad as-found to the first page and to a signature. Curves are synthetic. */
@Tag("zone")
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ImpactPagesTest {
  private static final String[] GAPS = {"10", "20", "30", "40", "50", "60", "70", "80", "90"};

  private static LoopWorld world;
  private static Visitor engineer;

  @BeforeAll
  static void start() {
    world = new LoopWorld();
    engineer = world.app.as("engineer");
    assertThat(world.survey(1, "2026-01-15", "08:00", "XC-1").status()).isEqualTo(303);
    world.app.write(
        tx -> {
          Plant plant = new Plant(PointWatch.NOBODY);
          Point point = plant.pointTagged(tx.sql(), "K301-VX1").orElseThrow();
          Channels channels = new Channels(PointWatch.NOBODY);
          ChannelId channel =
              channels.add(
                  tx,
                  plant.place(tx.sql(), point.id()).orElseThrow().site().id(),
                  new Channel.Position("R1", 3, 2));
          channels.link(tx, point.id(), channel, ChannelRole.MEASURES);
          channels.set(tx, channel, setting());
          return channel;
        });
    curve("as found and as left", "2026-01-20", 0.200);
  }

  private static ChannelSetting setting() {
    return new ChannelSetting(
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
        "");
  }

  @AfterAll
  static void stop() {
    world.close();
  }

  /** A straight line of that many volts a mil. */
  private static void curve(String stage, String day, double slope) {
    String[] volts = new String[GAPS.length];
    for (int i = 0; i < GAPS.length; i++) {
      volts[i] =
          BigDecimal.valueOf(-slope)
              .multiply(new BigDecimal(GAPS[i]))
              .stripTrailingZeros()
              .toPlainString();
    }
    Visitor.Answer kept =
        FilledForm.of(world.technician.get("/loops/K301-VX1/curve").page(), "#curve")
            .set("profile", "api670-2mm")
            .set("gap-unit", "mil")
            .set("gap", GAPS)
            .set("up", volts)
            .set("stage", stage)
            .set("on", day)
            .set("time", "11:30")
            .set("reason", "outage")
            .send(world.technician, "do", "keep");
    assertThat(kept.status()).as(kept.page().text()).isEqualTo(303);
  }

  private static String needs(Visitor who) {
    return who.get("/").page().select("tbody").text();
  }

  private static Visitor.Answer sign(String outcome, String words) {
    return signWith(engineer, People.DEMO_PASSWORD, outcome, words);
  }

  private static Visitor.Answer signWith(
      Visitor who, String password, String outcome, String words) {
    return who.post("/impact/I-1", "outcome", outcome, "words", words, "password", password);
  }

  private static Document review() {
    return engineer.get("/impact/I-1").page();
  }

  @Test
  @Order(1)
  void aGoodCurveOpensNothing() {
    assertThat(engineer.get("/impact").page().text()).contains("No impact review is open.");
    assertThat(engineer.get("/impact/I-1").status()).isEqualTo(404);
    assertThat(engineer.get("/impact/x").status()).isEqualTo(404);
  }

  /** 170 of 200 mV/mil: 100 µm acts at 100 · 200/170 = 117.6 µm. */
  @Test
  @Order(2)
  void aBadAsFoundReachesTheFirstPageWithWhatSetPointsDid() {
    curve("as found", "2026-02-19", 0.170);
    assertThat(needs(engineer)).contains("I-1", "found out of tolerance", "engineer");
    assertThat(review().text())
        .contains("Left good on 2026-01-20")
        .contains("found out of tolerance on 2026-02-19: for up to 30 days")
        .contains("Alert meant for 100 µm pk-pk (3.9 mil) acts at 118 µm (4.6 mil): late by 18 %.");
    String record = review().select("a[href^=/calibrations/C-]").attr("href");
    assertThat(engineer.get(record).page().text()).contains("Impact review I-1: open");
  }

  @Test
  @Order(3)
  void aGoodCurveAfterwardsDoesNotCloseIt() {
    curve("as left", "2026-02-20", 0.200);
    assertThat(needs(engineer)).contains("I-1");
    assertThat(review().select("h1").text()).contains("open");
  }

  @Test
  @Order(4)
  void onlyAnEngineerSignsAndNotWithoutWords() {
    assertThat(world.technician.get("/impact/I-1").page().select("form[action^=/impact]"))
        .isEmpty();
    assertThat(
            world.technician.post("/impact/I-1", "outcome", "NO_HARM", "words", "looked").status())
        .isEqualTo(403);
    Visitor.Answer empty = sign("", "trends were flat");
    assertThat(empty.status()).isEqualTo(422);
    assertThat(empty.page().select("textarea[name=words]").val()).isEqualTo("trends were flat");
    assertThat(sign("NO_HARM", " ").status()).isEqualTo(422);
    assertThat(needs(engineer)).contains("I-1");
  }

  /** An open session in a control room is not a signature. */
  @Test
  @Order(5)
  void thePasswordIsAskedAgainAndGuessingIsSlowedDown() {
    assertThat(review().select("form[action^=/impact] input[type=password]")).hasSize(1);
    Visitor.Answer none = engineer.post("/impact/I-1", "outcome", "NO_HARM", "words", "looked");
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.page().select(".complaint").text()).contains("This is not your password");
    assertThat(none.page().select("textarea[name=words]").val()).isEqualTo("looked");
    assertThat(none.page().select("option[selected]").val()).isEqualTo("NO_HARM");
    Visitor other = world.app.as("engineer");
    for (int i = 0; i < 4; i++) {
      Visitor.Answer wrong = signWith(other, "guess " + i, "NO_HARM", "looked");
      assertThat(wrong.page().select(".complaint").text()).contains("This is not your password");
      assertThat(wrong.body()).doesNotContain("guess " + i);
    }
    assertThat(sign("NO_HARM", "looked").page().select(".complaint").text())
        .contains("Too many wrong passwords");
    assertThat(needs(engineer)).contains("I-1");
    world.app.clock.forward(Duration.ofMinutes(2));
  }

  @Test
  @Order(6)
  void aNamedPersonClosesItAndOnlyOnce() {
    Visitor.Answer signed = sign("NO_HARM", "trends were flat");
    assertThat(signed.status()).isEqualTo(303);
    assertThat(needs(engineer)).doesNotContain("I-1");
    assertThat(review().text())
        .contains("Demo Engineer", "no harm", "trends were flat", "What the page said then");
    assertThat(engineer.get("/impact?show=all").page().select("tbody").text())
        .contains("I-1", "no harm");
    Visitor.Answer again = sign("HARM", "no");
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.page().select(".complaints").text()).contains("signed off already");
  }

  /** A loop of which nothing could be read protected nothing. */
  @Test
  @Order(7)
  void noCurveOpensOneToo() {
    Visitor.Answer kept =
        FilledForm.of(world.technician.get("/loops/K301-VX1/curve").page(), "#curve")
            .set("stage", "as found")
            .set("on", "2026-02-25")
            .set("time", "09:00")
            .set("no-curve", "yes")
            .set("no-curve-reason", "dead, output at 0 V")
            .set("reason", "outage")
            .send(world.technician, "do", "keep");
    assertThat(kept.status()).as(kept.page().text()).isEqualTo(303);
    assertThat(engineer.get("/impact/I-2").page().text())
        .contains("Reckon that no set point acted.");
  }
}
