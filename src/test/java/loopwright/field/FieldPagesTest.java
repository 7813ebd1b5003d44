package loopwright.field;

import static loopwright.db.gen.Tables.ATTACHMENT;
import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.FIELD_ENTRY;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import loopwright.field.FieldWorld.Answer;
import loopwright.field.FieldWorld.Phone;
import loopwright.matching.PartKind;
import loopwright.pack.FieldReturns.Cell;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Devices take a pack along and send: tokens, receipts, what speaks against an entry. */
class FieldPagesTest {
  private FieldWorld world;
  private Phone phone;

  @BeforeEach
  void start() {
    world = new FieldWorld();
    phone = world.phone("shop tablet");
  }

  @AfterEach
  void stop() {
    world.close();
  }

  @Test
  void aDeviceHoldsItsPackAndOnlyThatAndACookieDoesNotDo() {
    assertThat(phone.state.get("pack").asText()).isEqualTo("O-1");
    assertThat(phone.state.get("loops")).hasSize(3);
    assertThat(phone.state.get("loops").get(0).at("/sheet/limits/readings")).hasSize(9);
    assertThat(phone.state.get("loops").get(0).at("/profile/targets")).hasSize(9);
    assertThat(phone.state.get("cautions").toString()).contains("no permission to work");
    assertThat(world.look().text()).contains("shop tablet").contains("may send");
    assertThat(world.look().html()).doesNotContain(phone.token);
    Visitor signedIn = world.packs.technician();
    assertThat(signedIn.get("/api/field/pack").status()).isEqualTo(401);
    assertThat(signedIn.get("/outages/O-1", "Authorization", "Bearer " + phone.token).status())
        .as("the token opens nothing else; the cookie does")
        .isEqualTo(200);
    Answer elsewhere =
        FieldWorld.ask(
            HttpRequest.newBuilder(world.address().resolve("/api/session"))
                .header("Authorization", "Bearer " + phone.token));
    assertThat(elsewhere.status()).isEqualTo(401);
  }

  @Test
  void oneEntryBecomesOneUnsignedRecordHoweverOftenItIsSent() {
    SentEntry entry = phone.entry("V-1", FieldWorld.done());
    List<Answer> answers =
        IntStream.range(0, 6).parallel().mapToObj(any -> phone.send(entry)).toList();
    assertThat(answers).extracting(Answer::status).containsOnly(200);
    assertThat(answers)
        .extracting(answer -> answer.body().get("at"))
        .hasSize(6)
        .containsOnly(answers.get(0).body().get("at"));
    assertThat(answers.get(0).state()).isEqualTo("recorded");
    assertThat(answers.get(0).told()).contains("C-");
    assertThat(world.rows(CALIBRATION)).isEqualTo(1);
    assertThat(world.rows(FIELD_ENTRY)).isEqualTo(1);
    assertThat(world.packs.technician().get(world.packs.outage() + "/returns").page().text())
        .contains("V-1 done");
    assertThat(world.look().text()).contains("recorded", "FE-1", "shop tablet, Demo Technician");
    SentEntry other =
        new SentEntry(
            entry.uuid(),
            "V-1",
            entry.identity(),
            entry.asOf(),
            entry.typedAt(),
            0,
            FieldWorld.notDone("-2.2"));
    assertThat(phone.send(other).status()).isEqualTo(409);
    assertThat(phone.refresh().body().at("/loops/0/back/outcome").asText()).isEqualTo("done");
  }

  @Test
  void anotherAsFoundMeanwhileIsAConflictWithBothKept() {
    Phone second = world.phone("second tablet");
    world.packs.shop.app.clock.forward(Duration.ofMinutes(5));
    assertThat(second.send(second.entry("V-1", FieldWorld.notDone("-2.10"))).state())
        .isEqualTo("recorded");
    Answer late = phone.send(phone.entry("V-1", FieldWorld.notDone("-2.15")));
    assertThat(late.status()).isEqualTo(200);
    assertThat(late.state()).isEqualTo("waits");
    assertThat(late.told()).contains("Another as found came in meanwhile", "Demo Technician");
    assertThat(world.rows(CALIBRATION)).isEqualTo(1);
    String page = world.look().text();
    assertThat(page).contains("-2.15", "On record since the device last heard", "C-");
    assertThat(world.packs.technician().get("/").page().text())
        .contains("An entry from a device can't be recorded as it stands.");
    assertThat(world.decide("record", "").status()).isEqualTo(422);
    assertThat(world.decide("record", "second reading, both right").status()).isEqualTo(303);
    assertThat(world.rows(CALIBRATION)).isEqualTo(2);
    assertThat(phone.refresh().body().at("/entries/0/state").asText()).isEqualTo("recorded");
    assertThat(phone.state.at("/entries/0/told").toString()).contains("both right");
  }

  @Test
  void whatTheDeviceCouldNotKnowWaitsAndStaysReadable() {
    world.packs.technician();
    world.packs.shop.part(PartKind.PROBE, "P-9", "1");
    assertThat(world.packs.shop.survey("V-1", "2026-02-25", "P-9", "C-1", "D-1").status())
        .isEqualTo(303);
    Answer otherPart = phone.send(phone.entry("V-1", FieldWorld.done()));
    assertThat(otherPart.told()).contains("the pack says P-1, but on record is P-9");
    world.packs.issue("second");
    Answer superseded = phone.send(phone.entry("V-1", FieldWorld.done()));
    assertThat(superseded.told()).contains("was filled in on revision 1, and revision 2 changed");
    Answer unknown = phone.send(phone.entry("V-3", FieldWorld.done()));
    assertThat(unknown.state()).as("nobody knows what is fitted").isEqualTo("waits");
    Answer serial =
        phone.send(
            phone.entry(
                "V-2",
                FieldWorld.with(
                    FieldWorld.done(), new Cell("serial", "driver", "as found", "D-99"))));
    assertThat(serial.told()).contains("No part in the register is called D-99");
    world.packs.leaveOut(world.packs.outage(), "V-2");
    Answer removed = phone.send(phone.entry("V-2", FieldWorld.done()));
    assertThat(removed.told()).contains("V-2 is not in the pack any more");
    assertThat(phone.refresh().body().get("loops")).hasSize(2);
    assertThat(world.rows(CALIBRATION)).isZero();
    assertThat(world.look().select(".verdict:contains(waits)")).hasSize(5);
    assertThat(world.decide("record", "try").status()).isEqualTo(422);
    assertThat(world.decide("aside", "typed again at the desk").status()).isEqualTo(303);
    assertThat(world.look().text()).contains("Set aside by Demo Technician: typed again");
  }

  @Test
  void aSerialThatDiffersIsASurveyThatIsJudged() {
    world.packs.shop.part(PartKind.CABLE, "C-45", "4.5");
    Answer answer =
        phone.send(
            phone.entry(
                "V-1",
                FieldWorld.with(
                    FieldWorld.done(), new Cell("serial", "path-1", "as found", "C-45"))));
    assertThat(answer.state()).isEqualTo("recorded");
    assertThat(answer.told()).contains("Survey, as found: C-45; judged refused.");
  }

  @Test
  void aBypassTypedInTheFieldGoesIntoTheLogWithItsLoop() {
    Answer answer =
        phone.send(
            phone.entry(
                "V-2",
                FieldWorld.with(
                    FieldWorld.done(),
                    new Cell("bypass", "site number", "as left", "BP-77"),
                    new Cell("bypass", "function inhibited", "as left", "trip on V-2"),
                    new Cell("bypass", "vote meanwhile", "as left", "1oo1"),
                    new Cell("bypass", "authorised by", "as left", "A. Uthor"),
                    new Cell("bypass", "answers for it", "as left", "O. Wner"),
                    new Cell("bypass, day and time", "on since", "as left", "2026-02-28 13:00"),
                    new Cell("bypass, day and time", "expires", "as left", "2026-03-05 13:00"))));
    assertThat(answer.state()).as(answer.told()).isEqualTo("recorded");
    assertThat(world.packs.technician().get("/bypasses").page().text()).contains("BP-77");
    assertThat(phone.state.get("bypassCells")).hasSize(9);
  }

  @Test
  void anEndedOrExpiredDeviceIsToldWhatToDoAndAFreshOneSendsTheSame() {
    SentEntry entry = phone.entry("V-1", FieldWorld.done());
    assertThat(world.end("").status()).isEqualTo(422);
    assertThat(world.end("lost in the plant").status()).isEqualTo(303);
    Answer ended = phone.send(entry);
    assertThat(ended.status()).isEqualTo(401);
    assertThat(ended.body().get("message").asText())
        .contains("lost in the plant", "take the pack along again");
    assertThat(world.look().text()).contains("ended by Demo Technician: lost in the plant");
    Phone again = world.phone("shop tablet");
    assertThat(again.send(entry).state()).isEqualTo("recorded");
    world.packs.shop.app.clock.forward(Duration.ofDays(15));
    Answer expired = again.refresh();
    assertThat(expired.status()).isEqualTo(401);
    assertThat(expired.body().get("code").asText()).isEqualTo("U-104");
    assertThat(world.rows(CALIBRATION)).isEqualTo(1);
  }

  @Test
  void whatCantBeReadIsRefusedAndWritesNothing() {
    SentEntry good = phone.entry("V-1", FieldWorld.done());
    assertThat(phone.send(phone.entry("V-9", FieldWorld.done())).body().get("code").asText())
        .isEqualTo("U-109");
    assertThat(phone.send(phone.entry("V-1", List.of())).body().get("code").asText())
        .isEqualTo("U-110");
    assertThat(
            phone
                .send(phone.entry("V-1", List.of(new Cell("colour", "", "as left", "blue"))))
                .body()
                .get("message")
                .asText())
        .contains("there is no cell colour, as left");
    SentEntry odd =
        new SentEntry("x", "V-1", good.identity(), good.asOf(), good.typedAt(), 0, good.cells());
    assertThat(phone.send(odd).status()).isEqualTo(422);
    assertThat(world.rows(FIELD_ENTRY)).isZero();
  }

  @Test
  void aPhotographIsKeptOnceWithItsLoop() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB), "jpg", bytes);
    String uuid = UUID.randomUUID().toString();
    Answer first = phone.photo(uuid, "V-1", "tip.jpg", bytes.toByteArray());
    assertThat(first.status()).isEqualTo(200);
    assertThat(phone.photo(uuid, "V-1", "tip.jpg", bytes.toByteArray()).body())
        .isEqualTo(first.body());
    assertThat(world.rows(ATTACHMENT)).isEqualTo(1);
    assertThat(world.packs.technician().get("/files/of/loop/V-1").page().text())
        .contains("tip.jpg", "shop tablet");
    assertThat(phone.photo(UUID.randomUUID().toString(), "V-1", "x.jpg", new byte[] {1}).status())
        .isEqualTo(422);
  }
}
