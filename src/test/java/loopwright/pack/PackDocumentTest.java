package loopwright.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.units.Unit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** A pack of many loops on paper. */
class PackDocumentTest {

  static LoopSheet sheet(int n, int steps) {
    List<LoopSheet.Reading> readings = new ArrayList<>();
    for (int gap = 250; gap <= 2250; gap += 250) {
      double volts = -gap * 0.007874 - 0.3;
      readings.add(
          new LoopSheet.Reading(
              Integer.toString(gap),
              Quantities.other(BigDecimal.valueOf(gap), Unit.MICROMETRE),
              Quantities.decimals(volts, 2),
              Quantities.decimals(volts - 0.2, 2),
              Quantities.decimals(volts + 0.2, 2)));
    }
    List<String> many = new ArrayList<>();
    for (int i = 0; i < steps; i++) {
      many.add(
          "Step " + (i + 1) + ": look at the connector, clean it, dry it and protect it again.");
    }
    return new LoopSheet(
        new LoopSheet.About(
            "K301-VX" + n,
            "K-301",
            "Compressor " + (1 + n / 40),
            "drive end, X",
            "radial vibration",
            "JB-14",
            "Zone 2 IIC T3",
            "42CrMo4"),
        List.of(
            new LoopSheet.Fitted("probe", "fitted", "probe", "P-" + n, "Nordling X9 Q8", "1.0", ""),
            new LoopSheet.Fitted(
                "path-1",
                "fitted",
                "extension cable",
                "C-" + n,
                "Nordling X9 Q8",
                n % 3 == 0 ? "4.5" : "4.0",
                "length by drawing"),
            new LoopSheet.Fitted(
                "driver", "fitted", "driver", "D-" + n, "Nordling X9 Q8", "5.0", "")),
        "0.0 m (0.0 ft)",
        "0.05",
        "1250 µm (49.21 mil)",
        "-10.14",
        new LoopSheet.Limits(
            "api670-2mm",
            "1",
            "A profile",
            "µm",
            "7.480 to 8.268 mV/µm (190.0 to 210.0 mV/mil)",
            "1.870 to 2.067 V",
            "1 mil (25 µm)",
            readings),
        "The last as-left curve of exactly these parts.",
        List.of("R1 slot 3 channel 2; approved; 200 mV/mil; alert 100 µm; danger 150 µm"),
        List.of("radial K-301 votes 2oo2"),
        List.of(new LoopSheet.Job("as-found static", many, "")),
        List.of("Attention: no as-left calibration is on record."),
        List.of("extension cable C-99, store 2, bin 14: matches"),
        List.of("Access: bearing cover off", "Torque: 34 N·m"));
  }

  private static byte[] document(int loops, int steps) {
    List<Revision.Loop> all = new ArrayList<>();
    for (int n = 1; n <= loops; n++) {
      all.add(new Revision.Loop(n, n, n, sheet(n, steps), "abc"));
    }
    Revision revision =
        new Revision(
            1,
            12,
            3,
            "P. Lanner",
            Instant.parse("2026-03-01T10:15:30Z"),
            "after the cable exchange",
            new Revision.Head(
                "O-12",
                "Spring",
                "Marsh",
                "2026-04-01 to 2026-04-12",
                "K-301",
                "shop",
                Packs.CAUTIONS,
                "",
                List.of()),
            "0123456789abcdef");
    Identity identity = new Identity("89abcdef", 12, 3, "01234567");
    return PackDocument.of(
        revision,
        identity,
        all,
        new PackDocument.Codes(
            point -> "https://register.example/c/2C0D1X" + point,
            Optional.of("https://register.example/outages/O-12/take-along")));
  }

  @Test
  void twoHundredLoopsWithContentsBookmarksAndLinks() throws IOException {
    byte[] bytes = document(200, 6);
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1 + 5 + 200);
      PDDocumentOutline outline = pdf.getDocumentCatalog().getDocumentOutline();
      List<String> titles = new ArrayList<>();
      for (PDOutlineItem item : outline.children()) {
        titles.add(item.getTitle());
        item.children().forEach(child -> titles.add(child.getTitle()));
      }
      assertThat(titles).hasSize(2 + 6 + 200).contains("Contents", "K301-VX1", "K301-VX200");
      PDPage contents = pdf.getPage(1);
      assertThat(contents.getAnnotations()).hasSize(44);
      PDFTextStripper third = new PDFTextStripper();
      third.setStartPage(8);
      third.setEndPage(8);
      assertThat(third.getText(pdf)).contains("K301-VX2", "page 8 of 206");
      PDFTextStripper table = new PDFTextStripper();
      table.setStartPage(2);
      table.setEndPage(2);
      assertThat(table.getText(pdf))
          .containsPattern("K301-VX2\\s+K-301, Compressor 1, drive end, X\\s+8\\b");
    }
    String keep = System.getProperty("loopwright.keep", "");
    if (!keep.isEmpty()) {
      Files.write(Path.of(keep), bytes);
    }
  }

  @Test
  void stepsThatDontFitGoOnOverleaf() throws IOException {
    try (PDDocument pdf = Loader.loadPDF(document(1, 60))) {
      assertThat(pdf.getNumberOfPages()).isGreaterThan(3);
      assertThat(new PDFTextStripper().getText(pdf)).contains("K301-VX1, continued", "Step 60");
    }
  }
}
