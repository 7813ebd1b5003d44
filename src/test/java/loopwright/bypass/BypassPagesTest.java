package loopwright.bypass;

import static loopwright.db.gen.Tables.BYPASS_STEP;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Map;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jooq.exception.IntegrityConstraintViolationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bypass log over HTTP. */
class BypassPagesTest {
  private Shop shop;
  private Visitor technician;
  private Visitor engineer;

  @BeforeEach
  void start() {
    shop = new Shop();
    technician = shop.technician;
    engineer = shop.app.as("engineer");
    shop.point("V-1");
  }

  @AfterEach
  void stop() {
    shop.close();
  }

  private Map<String, String> entry() {
    Map<String, String> fields = Shop.fields(technician.get("/bypasses/new?loop=V-1").page());
    fields.putAll(
        Map.of(
            "site-number", "BP-77",
            "inhibited", "trip on radial vibration",
            "vote", "1oo1",
            "authoriser", "A. Uthority",
            "owner", "O. Wner",
            "until", "2026-03-02",
            "until-time", "06:00"));
    return fields;
  }

  private void entered() {
    Map<String, String> fields = entry();
    for (int click = 0; click < 2; click++) {
      assertThat(technician.post("/bypasses/new", Shop.flat(fields)).location())
          .as("sent twice, entered once")
          .isEqualTo("/bypasses/BY-1");
    }
  }

  private String needs() {
    return technician.get("/").page().select("tbody tr:contains(BY-1)").text();
  }

  @Test
  void itStaysOnTheFirstPageUntilASecondPersonHasProvedThatItIsOff() {
    entered();
    assertThat(needs()).contains("BP-77", "votes 1oo1 meanwhile", "O. Wner answers for it");
    assertThat(
            technician.get("/loops/V-1").page().select("h2:contains(Open bypasses) + div").text())
        .contains("BY-1", "BP-77");
    assertThat(technician.post("/bypasses/BY-1/prove", "note", "seen").body()).contains("Y-105");
    assertThat(
            technician
                .post("/bypasses/BY-1/hand-over", "to-whom", "N. Ext", "note", "end of shift")
                .status())
        .isEqualTo(303);
    assertThat(needs()).contains("O. Wner answers for it until N. Ext acknowledges the hand-over");
    assertThat(technician.post("/bypasses/BY-1/acknowledge", "note", "mine").body())
        .contains("Y-111");
    engineer.get("/bypasses/BY-1");
    assertThat(engineer.post("/bypasses/BY-1/acknowledge", "note", "told all").status())
        .isEqualTo(303);
    assertThat(needs()).contains("N. Ext answers for it;");
    assertThat(engineer.post("/bypasses/BY-1/acknowledge", "note", "again").body())
        .contains("Y-110");
    assertThat(technician.post("/bypasses/BY-1/remove", "note", "jumper out").status())
        .isEqualTo(303);
    assertThat(needs()).contains("A second person proves that it is off.");
    Visitor.Answer own = technician.post("/bypasses/BY-1/prove", "note", "trip seen");
    assertThat(own.status()).isEqualTo(422);
    assertThat(own.page().select(".complaints").text()).contains("A second person has to prove");
    assertThat(own.page().select("textarea[name=note]").val()).isEqualTo("trip seen");
    engineer.get("/bypasses/BY-1");
    assertThat(engineer.post("/bypasses/BY-1/prove", "note", "trip seen").status()).isEqualTo(303);
    assertThat(needs()).isEmpty();
    assertThat(technician.get("/bypasses/BY-1").page().text())
        .contains("off, proved", "Handed over to N. Ext", "Proved Demo Engineer");
    assertThat(engineer.post("/bypasses/BY-1/remove", "note", "x").body()).contains("Y-103");
  }

  @Test
  void theDatabaseItselfRefusesAProofByTheSamePerson() {
    entered();
    assertThatThrownBy(
            () ->
                shop.app.write(
                    tx -> {
                      new BypassStore().step(tx, 1, Bypass.PROVED, 1, 1L, "", tx.at(), "by myself");
                      return 0;
                    }))
        .isInstanceOf(IntegrityConstraintViolationException.class);
    int steps = shop.app.database().read(sql -> sql.fetchCount(BYPASS_STEP));
    assertThat(steps).isZero();
  }

  @Test
  void anOverdueOneShouts() {
    entered();
    shop.app.clock.forward(Duration.ofDays(1));
    assertThat(needs()).contains("OVERDUE", "refused");
    assertThat(technician.get("/bypasses").page().select("tbody").first().text())
        .contains("on, overdue");
  }

  @ParameterizedTest
  @CsvSource({
    "loop, V-9, There is no loop V-9",
    "site-number, '', number under the site's procedure",
    "inhibited, '', function that is inhibited",
    "vote, '', votes meanwhile",
    "authoriser, '', who authorised it",
    "owner, '', who answers for it",
    "until, 2026-02-01, expire before it began",
    "time, 25:00, time",
    "on, 2026-03-02, begin in the future"
  })
  void whatIsTypedWrongIsSaidAndNothingIsEntered(String field, String typed, String said) {
    Map<String, String> fields = entry();
    fields.put(field, typed);
    if (field.equals("on")) {
      fields.put("until", "2026-03-09");
    }
    Visitor.Answer answer = technician.post("/bypasses/new", Shop.flat(fields));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint, .complaints").text()).contains(said);
    assertThat(technician.get("/bypasses/BY-1").status()).isEqualTo(404);
    if (!field.equals("inhibited")) {
      assertThat(answer.page().select("input[name=inhibited]").val())
          .isEqualTo("trip on radial vibration");
    }
  }

  @Test
  void whoOnlyLooksEntersNothing() {
    Visitor viewer = shop.app.as("viewer");
    assertThat(viewer.get("/bypasses").status()).isEqualTo(200);
    assertThat(viewer.get("/bypasses/new").status()).isEqualTo(403);
  }
}
