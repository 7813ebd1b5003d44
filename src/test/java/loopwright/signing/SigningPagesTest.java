package loopwright.signing;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CALIBRATION_READING;
import static loopwright.db.gen.Tables.CALIBRATION_SIGNATURE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import loopwright.db.gen.tables.records.CalibrationReadingRecord;
import loopwright.people.People;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jooq.exception.DataAccessException;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Signing over HTTP: who may, what stands in the way, review, superseding, open business. */
class SigningPagesTest {
  private static final String CURVE = "/loops/V-1/curve";
  private Shop shop;
  private Visitor technician;
  private Visitor engineer;

  /** Today is 2026-03-01. */
  @BeforeEach
  void start() {
    shop = new Shop();
    technician = shop.technician;
    engineer = shop.app.as("engineer");
    shop.point("V-1");
    shop.set(1);
    assertThat(shop.survey("V-1", "2026-01-20", "P-1", "C-1", "D-1").status()).isEqualTo(303);
  }

  @AfterEach
  void stop() {
    shop.close();
  }

  private FilledForm curve(Visitor who, String stage, String time, String... standards) {
    return FilledForm.of(who.get(CURVE).page(), "#curve")
        .set("profile", "api670-2mm")
        .set("gap-unit", "mil")
        .set("gap", IntStream.rangeClosed(1, 9).mapToObj(i -> "" + 10 * i).toArray(String[]::new))
        .set(
            "up",
            IntStream.rangeClosed(1, 9)
                .mapToObj(i -> String.format(Locale.ROOT, "-%d.00", 2 * i))
                .toArray(String[]::new))
        .set("stage", stage)
        .set("standard", standards)
        .set("on", "2026-02-20")
        .set("time", time)
        .set("reason", "outage");
  }

  private String kept(FilledForm form) {
    Visitor.Answer answer = form.send(technician, "do", "keep");
    assertThat(answer.status()).as(answer.page().select(".complaint").text()).isEqualTo(303);
    return answer.location();
  }

  private String kept(String stage, String time, String... standards) {
    return kept(curve(technician, stage, time, standards));
  }

  private static String number(Visitor who, String name) {
    return who.get("/authorisations").page().select("select[name=person] option").stream()
        .filter(option -> option.text().equals(name))
        .findFirst()
        .orElseThrow()
        .val();
  }

  private Visitor.Answer authorise(Visitor by, String name, String scope, String... changed) {
    Map<String, String> fields = new java.util.LinkedHashMap<>();
    fields.put("person", name.isEmpty() ? "" : number(by, name));
    fields.put("scope", scope);
    fields.put("from", "2026-01-01");
    fields.put("until", "2027-01-01");
    fields.put("basis", "examined on the bench");
    for (int i = 0; i < changed.length; i += 2) {
      fields.put(changed[i], changed[i + 1]);
    }
    return by.post("/authorisations", Shop.flat(fields));
  }

  private void technicianMaySign() {
    assertThat(authorise(engineer, "Demo Technician", "sign").status()).isEqualTo(303);
  }

  private static Visitor.Answer sign(Visitor who, String record) {
    who.get(record + "/sign");
    return who.post(record + "/sign", "password", People.DEMO_PASSWORD);
  }

  private static String against(Visitor who, String path) {
    return who.get(path).page().select(".complaints").text();
  }

  private String signatures(String record) {
    Document page = technician.get(record).page();
    return page.select("h2:contains(Signatures)").first().parent().text();
  }

  @Test
  void theOneWhoTookItSignsAndNothingCanChangeIt() {
    String record = kept("as found", "08:00");
    assertThat(signatures(record)).contains("not signed");
    assertThat(against(technician, record + "/sign"))
        .contains("You have no authorisation to sign calibrations on 2026-02-20");
    technicianMaySign();
    assertThat(against(technician, record + "/sign")).isEmpty();
    assertThat(against(engineer, record + "/sign"))
        .contains("was taken by Demo Technician, who signs it. You are Demo Engineer.");
    assertThat(sign(technician, record).location()).isEqualTo(record);
    assertThat(signatures(record))
        .contains("Signatures signed", "technician Demo Technician 2026-03-01", "A-1: examined");
    assertThat(sign(technician, record).page().text()).contains("is signed already, by Demo");
    assertThat(technician.get(record).page().select("a[href$=/sign]")).isEmpty();
    assertThatThrownBy(
            () ->
                shop.app.write(
                    tx ->
                        tx.sql()
                            .update(CALIBRATION_SIGNATURE)
                            .set(CALIBRATION_SIGNATURE.SIGNER_NAME, "Somebody Else")
                            .execute()))
        .isInstanceOf(DataAccessException.class);
    assertThatThrownBy(
            () -> shop.app.write(tx -> tx.sql().deleteFrom(CALIBRATION_SIGNATURE).execute()))
        .isInstanceOf(DataAccessException.class);
  }

  @Test
  void aWrongPasswordSignsNothingAndIsSlowedDown() {
    technicianMaySign();
    String record = kept("as found", "08:00");
    for (int i = 0; i < 5; i++) {
      Visitor.Answer wrong = technician.post(record + "/sign", "password", "not this one");
      assertThat(wrong.status()).isEqualTo(422);
      assertThat(wrong.page().select(".complaint").text()).contains("This is not your password");
      assertThat(wrong.body()).doesNotContain("not this one");
    }
    assertThat(sign(technician, record).page().select(".complaint").text())
        .contains("Too many wrong passwords");
    assertThat(signatures(record)).contains("not signed");
    shop.app.clock.forward(Duration.ofMinutes(2));
    assertThat(sign(technician, record).status()).isEqualTo(303);
  }

  /** How the list of calibrations marks it. */
  private String listed(String record) {
    return technician
        .get("/calibrations")
        .page()
        .select("tr:has(a[href=" + record + "]) td[data-label=Signed]")
        .text();
  }

  @Test
  void anotherPersonReviewsWhereTheProfileAsks() {
    Map<String, String> fields = Shop.fields(engineer.get("/profiles/api670-2mm/change").page());
    fields.put("review", "yes");
    fields.put("reason", "quality system asks");
    engineer.post("/profiles/api670-2mm/change", Shop.flat(fields));
    technicianMaySign();
    assertThat(authorise(engineer, "Demo Technician", "review").status()).isEqualTo(303);
    Visitor administrator = shop.app.as("administrator");
    assertThat(authorise(administrator, "Demo Engineer", "review").status()).isEqualTo(303);
    String record = kept("as found", "08:00");
    assertThat(against(engineer, record + "/review")).contains("is not signed by the one who took");
    assertThat(listed(record)).isEqualTo("unsigned");
    sign(technician, record);
    assertThat(signatures(record)).contains("signed, waits for review");
    assertThat(listed(record)).isEqualTo("signed");
    assertThat(technician.get("/").page().text()).contains("its profile asks for a review");
    assertThat(against(technician, record + "/review"))
        .contains("You signed", "Another person reviews it");
    assertThat(engineer.post(record + "/review", "password", People.DEMO_PASSWORD).location())
        .isEqualTo(record);
    assertThat(signatures(record)).contains("signed and reviewed", "reviewer Demo Engineer");
    assertThat(listed(record)).isEqualTo("signed, reviewed");
    assertThat(technician.get("/").page().text()).doesNotContain("its profile asks for a review");
  }

  @Test
  void aStandardOutOfDateNeedsAConcessionByAnotherPerson() {
    technicianMaySign();
    technician.post(
        "/standards",
        "code",
        "DVM-1",
        "kind",
        "voltmeter",
        "maker",
        "A",
        "model",
        "B",
        "serial",
        "1");
    technician.post(
        "/standards/DVM-1/certificate",
        "number",
        "K-1",
        "issuer",
        "Lab",
        "issued",
        "2025-01-05",
        "due",
        "2026-02-01",
        "factor",
        "2",
        "unit",
        "V",
        "low",
        "0",
        "high",
        "30",
        "uncertainty",
        "0.01",
        "expired",
        "yes");
    String record = kept(curve(technician, "as found", "08:00", "DVM-1").set("confirmed", "yes"));
    assertThat(against(technician, record + "/sign"))
        .contains("The certificate of DVM-1 was out of date on 2026-02-20 (due 2026-02-01)");
    assertThat(sign(technician, record).status()).isEqualTo(422);
    String path = "/standards/DVM-1/concession";
    Map<String, String> fields = Shop.fields(engineer.get(path).page());
    fields.put("until", "2026-02-01");
    fields.put("reason", "laboratory is late");
    fields.put("measure", "checked against another one");
    assertThat(technician.post(path, Shop.flat(fields)).status()).isEqualTo(403);
    assertThat(engineer.post(path, Shop.flat(fields)).page().select(".complaint").text())
        .contains("would cover nothing");
    fields.put("until", "2026-03-01");
    assertThat(engineer.post(path, Shop.flat(fields)).location()).isEqualTo(path);
    assertThat(sign(technician, record).status()).isEqualTo(303);
    assertThat(signatures(record)).contains("by leave of SC-1");
  }

  @ParameterizedTest
  @CsvSource({
    "person, '', Choose a person",
    "person, 999, Choose a person",
    "until, 2026-01-01, before it begins on 2026-01-01",
    "until, never, Give the day like",
    "scope, everything, Choose what it is for",
    "basis, '', what it rests on"
  })
  void anAuthorisationTypedWrongIsNotEntered(String field, String typed, String said) {
    Visitor.Answer answer = authorise(engineer, "Demo Technician", "sign", field, typed);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.page().select(".complaint, .complaints").text()).contains(said);
    assertThat(answer.page().text()).contains("Nobody is authorised yet");
  }

  @Test
  void nobodyAuthorisesThemselvesAndAnEndedOneNoLongerHolds() {
    assertThat(authorise(engineer, "Demo Engineer", "sign").page().text())
        .contains("Nobody authorises themselves");
    assertThat(technician.post("/authorisations", "scope", "sign").status()).isEqualTo(403);
    technicianMaySign();
    String record = kept("as found", "08:00");
    assertThat(engineer.post("/authorisations/1/end", "end-reason", "").status()).isEqualTo(422);
    assertThat(engineer.post("/authorisations/1/end", "end-reason", "moved on").status())
        .isEqualTo(303);
    assertThat(technician.get("/authorisations").page().text()).contains("ended: moved on");
    assertThat(against(technician, record + "/sign")).contains("You have no authorisation");
    assertThat(engineer.post("/authorisations/1/end", "end-reason", "again").page().text())
        .contains("It has ended already");
  }

  @Test
  void aRecordIsSupersededWithAReasonAndBothStay() {
    String first = kept("as found", "08:00");
    String second = kept("as found", "09:00");
    String left = kept("as left", "10:00");
    String by = second.substring("/calibrations/".length());
    Visitor.Answer wrong =
        technician.post(first + "/supersede", "by", left.substring(14), "reason", "misread");
    assertThat(wrong.page().select(".complaint").text()).contains("of another loop or stage");
    assertThat(technician.post(first + "/supersede", "by", "C-999", "reason", "x").page().text())
        .contains("There is no calibration C-999");
    assertThat(technician.post(first + "/supersede", "by", by, "reason", "").page().text())
        .contains("the reason");
    assertThat(technician.post(first + "/supersede", "by", by, "reason", "misread").status())
        .isEqualTo(303);
    assertThat(technician.get(first).page().select(".notice.wrong").text())
        .contains("Superseded by " + by + ": misread");
    assertThat(against(technician, first + "/sign")).contains("is superseded by " + by);
    assertThat(
            technician
                .post(second + "/supersede", "by", first.substring(14), "reason", "x")
                .page()
                .text())
        .contains("is itself superseded");
  }

  @Test
  void onlyTheSignerOrAnEngineerReplacesWhatIsSigned() {
    technicianMaySign();
    String signed = kept("as found", "08:00");
    String other = kept("as found", "09:00");
    assertThat(sign(technician, signed).status()).isEqualTo(303);
    Visitor.Answer stranger =
        shop.app
            .as("planner")
            .post(signed + "/supersede", "by", other.substring(14), "reason", "looks better");
    assertThat(stranger.page().text()).contains("is signed by Demo Technician. Only who signed it");
    assertThat(
            technician
                .post(signed + "/supersede", "by", other.substring(14), "reason", "misread")
                .status())
        .isEqualTo(303);
    assertThat(signatures(signed)).contains("Demo Technician");
  }

  /** Rows can be added under the program's own account; what was signed shows that it is not it. */
  @Test
  void aReadingSlippedInUnderASignatureIsSeen() {
    technicianMaySign();
    String record = kept("as found", "08:00");
    assertThat(sign(technician, record).status()).isEqualTo(303);
    shop.app.write(
        tx -> {
          CalibrationReadingRecord row = tx.row(CALIBRATION_READING);
          row.setCalibrationId(
              tx.sql()
                  .select(CALIBRATION.ID)
                  .from(CALIBRATION)
                  .where(CALIBRATION.NUMBER.eq(record.substring(14)))
                  .fetchSingle()
                  .value1());
          row.setReadingNo((short) 99);
          row.setRun("up");
          row.setGapTyped("100");
          row.setGapUm(2540.0);
          row.setVoltsTyped("-20");
          row.setVolts(-20.0);
          return tx.insert(row);
        });
    assertThat(technician.get(record).page().text())
        .contains("The record is not what was signed. Run verify");
    assertThat(against(engineer, record + "/review")).contains("hash is not the one signed");
  }

  @Test
  void asFoundWithoutAsLeftIsOpenBusinessUntilItIsThere() {
    String found = kept("as found", "08:00");
    String said = "As found " + found.substring(14) + " (2026-02-20) has no as left yet.";
    assertThat(technician.get("/").page().text()).contains(said);
    assertThat(technician.get("/loops/V-1").page().text()).contains(said);
    FilledForm early = curve(technician, "as left", "07:30");
    Visitor.Answer asked = early.send(technician, "do", "keep");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.page().text()).contains("as left comes after as found");
    kept("as left", "10:00");
    assertThat(technician.get("/").page().text()).doesNotContain("has no as left yet");
    assertThat(technician.get("/loops/V-1").page().text()).doesNotContain("has no as left yet");
  }

  @Test
  void asLeftWithoutAsFoundIsSaidWhereTheLoopWasCalibratedBefore() {
    kept(curve(technician, "as left", "08:00").set("on", "2026-01-25"));
    assertThat(technician.get("/").page().text()).doesNotContain("has no as found");
    kept("as left", "10:00");
    assertThat(technician.get("/").page().text()).contains("has no as found before it");
    assertThat(technician.get("/loops/V-1").page().text()).contains("has no as found before it");
  }
}
