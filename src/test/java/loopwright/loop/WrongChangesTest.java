package loopwright.loop;

import static loopwright.db.gen.Tables.LOOP_EVENT;
import static loopwright.db.gen.Tables.PLACEMENT;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jooq.Table;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What can be typed wrong on a survey or an assembly; one shop in which nothing is ever stored. */
@Tag("zone")
class WrongChangesTest {
  private static Shop shop;

  @BeforeAll
  static void start() {
    shop = new Shop();
    shop.point("V-1");
    shop.set(1);
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static Map<String, String> chain(String path, String probe, String cable, String driver) {
    Map<String, String> fields = Shop.fields(shop.technician.get(path).page());
    fields.putAll(Map.of("probe", probe, "path-1", cable, "driver", driver, "reason", "outage 4"));
    return fields;
  }

  private static Visitor.Answer post(String path, Map<String, String> fields) {
    return shop.technician.post(path, Shop.flat(fields));
  }

  private static Visitor.Answer post(
      String path, Map<String, String> fields, String name, String value) {
    fields.put(name, value);
    return post(path, fields);
  }

  private static int rows(Table<?> table) {
    return shop.app.database().read(sql -> sql.fetchCount(table));
  }

  private static String complaint(Visitor.Answer answer, String field) {
    return answer.page().select("#" + field + "-about .complaint").text();
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource(
      textBlock =
          """
          # field,  typed,               complaint
          probe,    Z-9,                 No part in the register is called Z-9
          probe,    C-1,                 C-1 is known as extension cable; that can't sit in the slot probe
          driver,   P-1,                 that can't sit in the slot driver
          path-1,   D-1,                 that can't sit in the slot extension cable
          path-2,   C-1,                 stands already as extension cable
          probe,    <script>x</script>,  No part in the register is called <script>x</script>
          on,       '',                  Give the day like
          on,       31/03/2026,          Give the day like
          on,       2026-02-30,          Give the day like
          on,       0026-02-01,          1950
          on,       -9999-02-01,         Give the day like
          on,       +999999999-02-01,    Give the day like
          on,       2026-03-02,          in the future
          time,     11:16,               in the future
          time,     '',                  Give the time like
          time,     half past,           Give the time like
          time,     25:00,               Give the time like
          time,     08:00:00.000000001,  Give the time like
          on,       2020-01-01,          P-1 is on record only since 2026-01-10 06:00
          reason,   '',                  Fill this in
          """)
  void whatCantBeIsSaidAtItsFieldAndNothingIsLost(String field, String typed, String said) {
    for (String way : List.of("survey", "assembly")) {
      String path = "/loops/V-1/" + way;
      Map<String, String> fields = chain(path, "P-1", "C-1", "D-1");
      fields.put(field, typed);
      Visitor.Answer answer = post(path, fields);
      assertThat(answer.status()).isEqualTo(422);
      assertThat(answer.page().select("main .about .complaint").text()).contains(said);
      assertThat(answer.page().select(".complaints").text()).contains("Nothing was stored");
      assertThat(Shop.fields(answer.page())).containsAllEntriesOf(fields);
      assertThat(rows(PLACEMENT)).isZero();
      assertThat(rows(LOOP_EVENT)).isZero();
    }
  }

  @Test
  void aHugeTextIsRefusedAtItsField() {
    Map<String, String> fields = chain("/loops/V-1/survey", "P-1", "C-1", "D-1");
    Visitor.Answer reason = post("/loops/V-1/survey", fields, "reason", "x".repeat(2001));
    assertThat(complaint(reason, "reason")).contains("2001 characters; at most 2000");
    fields.put("reason", "round");
    Visitor.Answer serial = post("/loops/V-1/survey", fields, "probe", "x".repeat(100_000));
    assertThat(serial.status()).isEqualTo(422);
    assertThat(complaint(serial, "probe"))
        .isEqualTo("This has 100000 characters; no serial is that long.");
    assertThat(rows(PLACEMENT)).isZero();
    Visitor.Answer megabytes = post("/loops/V-1/survey", fields, "probe", "x".repeat(3 << 20));
    assertThat(megabytes.status()).isEqualTo(413);
    assertThat(megabytes.page().select("main").text()).contains("2 MB");
  }

  @ParameterizedTest
  @CsvSource({"2025-03-30, 02:30, put forward", "2025-10-26, 02:30, twice"})
  void anHourTheSitesClockNeverShowedOrShowedTwiceIsAskedBack(
      String day, String time, String said) {
    Map<String, String> fields = chain("/loops/V-1/survey", "", "", "");
    fields.put("on", day);
    Visitor.Answer answer = post("/loops/V-1/survey", fields, "time", time);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(complaint(answer, "time")).contains("Europe/Berlin").contains(said);
    assertThat(rows(PLACEMENT)).isZero();
  }
}
