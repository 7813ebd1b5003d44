package loopwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import loopwright.units.Reported;
import loopwright.units.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormTest {
  @Property
  void whatWasTypedShowsAgainExactlySo(@ForAll String typed) {
    Form form = Form.of(Map.of("length", typed));
    form.number("length");
    assertThat(form.typed("length")).isEqualTo(typed);
  }

  @ParameterizedTest(name = "{0} as {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          4,5        | number | ''
          1.2.3      | number | is not one number
          1,234.5    | number | is not one number
          four       | number | is not one number
          ''         | number | Fill this in.
          2026-02-29 | day    | is not a day
          3/8/2026   | day    | is not a day
          2026-03-14 | day    | ''
          ''         | day    | Fill this in.
          '   '      | text   | Fill this in.
          123456     | text   | at most 5
          PLANNER    | role   | ''
          KING       | role   | Choose one
          """)
  @Tag("zone")
  void complaintsSayWhatWouldBeRight(String typed, String kind, String complaint) {
    Form form = Form.of(Map.of("field", typed));
    switch (kind) {
      case "number" -> form.number("field");
      case "day" -> form.day("field");
      case "text" -> form.text("field", 5);
      default -> form.oneOf("field", Role.class);
    }
    assertThat(form.ok()).isEqualTo(complaint.isEmpty());
    assertThat(String.valueOf(form.complaint("field")))
        .contains(complaint.isEmpty() ? "null" : complaint);
  }

  @Test
  void readsValues() {
    Form form = Form.of(Map.of("a", "4,50", "b", "2026-03-14", "c", "15", "c-unit", "ft"));
    assertThat(form.number("a")).isEqualTo(new BigDecimal("4.50"));
    assertThat(form.day("b")).isEqualTo(LocalDate.of(2026, 3, 14));
    Reported length = form.measured("c", Unit.METRE, Unit.FOOT);
    assertThat(length).hasToString("15 ft");
    assertThat(form.ok()).isTrue();
  }

  @Test
  void aUnitThatWasNotOfferedIsComplainedOf() {
    Form form = Form.of(Map.of("c", "15", "c-unit", "V"));
    form.measured("c", Unit.METRE, Unit.FOOT);
    assertThat(form.complaint("c-unit")).isEqualTo("Choose the unit: m, ft.");
  }

  @Test
  void anEmptyFieldThatMayStayEmptyIsNoComplaint() {
    Form form = Form.of(Map.of("remark", "  "));
    assertThat(form.optional("remark", String::strip)).isEmpty();
    assertThat(form.ok()).isTrue();
  }

  @Test
  void theFirstComplaintOfAFieldStays() {
    Form form = Form.blank();
    form.complain("serial", "one");
    form.complain("serial", "two");
    assertThat(form.complaint("serial")).isEqualTo("one");
  }

  @Test
  void aRecordThatMovedOnIsStale() {
    Form form = Form.blank().at("7");
    assertThat(form.stale("7")).isFalse();
    assertThat(form.stale("8")).isTrue();
    assertThat(Form.blank().stale("8")).as("a form without a version").isTrue();
  }
}
