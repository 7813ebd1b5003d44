package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.matching.PartKind;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The system length of a driver as a setting with its history, over HTTP. */
class SettingPagesTest {
  private static Shop shop;
  private static String driver;
  private static String probe;

  @BeforeAll
  static void open() {
    shop = new Shop();
    shop.point("V-1");
    probe = address(shop.part(PartKind.PROBE, "P-1", "1"));
    shop.part(PartKind.CABLE, "C-1", "4");
    driver = address(shop.part(PartKind.DRIVER, "D-1", "5"));
    shop.survey("V-1", "2026-02-01", "P-1", "C-1", "D-1");
  }

  private static String address(ComponentId id) {
    return "/parts/" + id.number() + "/setting";
  }

  @AfterAll
  static void close() {
    shop.close();
  }

  private static Visitor.Answer send(String... changes) {
    Map<String, String> fields =
        new LinkedHashMap<>(Shop.fields(shop.technician.get(driver).page()));
    fields.put("reason", "set with the maker's program");
    for (int i = 0; i < changes.length; i += 2) {
      fields.put(changes[i], changes[i + 1]);
    }
    return shop.technician.post(driver, Shop.flat(fields));
  }

  private static String loop(String query) {
    return shop.technician.get("/loops/V-1" + query).page().select("main").text();
  }

  @Test
  void theBalanceGoesByTheSettingInForce() {
    assertThat(loop("")).contains("on a driver tuned for 5.0 m");
    Visitor.Answer set =
        send("length", "9", "from", "2026-02-10", "time", "14:30", "file", "AB".repeat(32));
    assertThat(set.status()).isEqualTo(303);
    assertThat(loop("")).contains("on a driver tuned for 9.0 m").contains("too short");
    assertThat(shop.technician.get("/").page().select("main").text()).contains("V-1");
    assertThat(loop("?at=2026-02-05")).contains("on a driver tuned for 5.0 m");
    assertThat(send("length", "", "evidence", "", "from", "2026-02-20", "file", "").status())
        .isEqualTo(303);
    assertThat(loop("")).contains("what driver D-1 is tuned for");
    assertThat(loop("?at=2026-02-15")).contains("on a driver tuned for 9.0 m");
    String page = shop.technician.get(driver).page().select("tbody").text();
    assertThat(page).contains("2026-02-10 14:30").contains("ab".repeat(32)).contains("not known");
    Visitor.Answer survey = shop.survey("V-1", "2026-02-12", "P-1", "C-1", "D-1");
    assertThat(survey.status()).isEqualTo(303);
    assertThat(loop("")).contains("what driver D-1 is tuned for");
    assertThat(send("length", "5", "evidence", "read on part", "from", "2026-02-21").status())
        .isEqualTo(303);
    assertThat(loop("")).contains("on a driver tuned for 5.0 m");
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource({
    "length, 0, can't be",
    "length, 400, can't be",
    "length, nine, is not a number",
    "evidence, '', Say how the length is known",
    "from, 2027-01-01, is still to come",
    "from, yesterday, is not a day",
    "time, 25:00, ''",
    "file, abc, A SHA-256 has 64 digits",
    "reason, '', Say why",
  })
  void whatNoSettingIsIsRefused(String field, String typed, String complaint) {
    Visitor.Answer answer = send("length", "7", "evidence", "certificate", field, typed);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint").text()).contains(complaint).isNotBlank();
  }

  @Test
  void onlyADriverHasOneAndAnOldFormIsRefused() {
    assertThat(shop.technician.get(probe).status()).isEqualTo(404);
    assertThat(send("version", "99").status()).isEqualTo(409);
    assertThat(shop.app.as("viewer").get(driver).status()).isEqualTo(403);
  }
}
