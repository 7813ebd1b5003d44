package loopwright.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import loopwright.calibration.Stage;
import loopwright.curve.BuiltInProfiles;
import loopwright.register.ProfileTerms;
import loopwright.register.ToleranceProfiles;
import loopwright.sheet.Complaints;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that another program saved read as they were filled in. */
class SavedByLibreOfficeTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  private final Complaints complaints = new Complaints();

  private LoopReturn read(String name, int loop) throws IOException {
    byte[] bytes;
    try (InputStream in = SavedByLibreOfficeTest.class.getResourceAsStream("/packs/" + name)) {
      bytes = in.readAllBytes();
    }
    FilledFile file = FilledFile.read(name, bytes, complaints);
    LoopSheet sheet = PackDocumentTest.sheet(loop, 2);
    List<FilledFile.Row> rows =
        file.rows().stream().filter(row -> row.text(Column.LOOP).equals(sheet.tag())).toList();
    assertThat(Identity.read(rows.get(0).text(Column.PACK)))
        .contains(new Identity("89abcdef", 12, 3, "01234567"));
    ToleranceProfiles.Stored profile =
        new ToleranceProfiles.Stored(1, BuiltInProfiles.all().get(0), ProfileTerms.SIMPLE);
    return LoopReturn.read(
        new FilledLoop(file, sheet, rows, complaints),
        new Revision.Loop(1, loop, loop, sheet, "abc"),
        name,
        12,
        new StageFilled.With(ZONE, Instant.parse("2026-04-05T00:00:00Z"), profile, List.of()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"saved-by-libreoffice.xlsx", "saved-by-libreoffice.csv"})
  void whatWasFilledInIsReadInEveryKindOfFile(String name) throws IOException {
    LoopReturn done = read(name, 1);
    assertThat(complaints.kept()).isEmpty();
    assertThat(done.outcome()).isEqualTo("done");
    assertThat(done.nothingTouched()).isTrue();
    assertThat(done.foundStage()).isEqualTo(Stage.NOTHING_TOUCHED);
    assertThat(done.found().at())
        .as("a date cell, on the site's clock")
        .isEqualTo("2026-04-02T12:30:00Z");
    assertThat(done.found().serials())
        .as("zeros at the front stay")
        .containsExactly(Map.entry("driver", "00417"));
    assertThat(done.found().gapVolts().replace(',', '.')).isEqualTo("-10.02");
    assertThat(done.found().curve().curve().readings())
        .hasSize(9)
        .first()
        .satisfies(reading -> assertThat(reading.volts()).isEqualTo(-2.1));
    LoopReturn not = read(name, 2);
    assertThat(complaints.kept()).isEmpty();
    assertThat(not.outcome()).isEqualTo("not done");
    assertThat(not.reason()).isEqualTo("no scaffold");
  }

  @Test
  void numbersInBothKindsOfFileAreTheSameReturn() throws IOException {
    LoopReturn workbook = read("saved-by-libreoffice.xlsx", 2);
    assertThat(read("saved-by-libreoffice.csv", 2).hash()).isEqualTo(workbook.hash());
  }
}
