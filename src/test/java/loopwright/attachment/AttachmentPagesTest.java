package loopwright.attachment;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import loopwright.journal.Verification;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Files of a loop over HTTP. */
class AttachmentPagesTest {
  private static final String FILES = "/files/of/loop/V-1";
  private static Shop shop;
  private static Visitor technician;

  @BeforeAll
  static void start() {
    shop = new Shop();
    technician = shop.technician;
    shop.point("V-1");
    shop.set(1);
    assertThat(shop.survey("V-1", "2026-02-20", "P-1", "C-1", "D-1").status()).isEqualTo(303);
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  private static Visitor.Answer send(Visitor who, String path, String name, byte[] content) {
    Document page = technician.get(path).page();
    return FilledForm.of(page, "main form")
        .set("note", "tip <b>worn</b>")
        .choose("file", name, content)
        .send(who, "do", "keep");
  }

  private static String wrong(String name, byte[] content) {
    Visitor.Answer answer = send(technician, FILES, name, content);
    assertThat(answer.status()).isEqualTo(422);
    return answer.page().select("#file-about").text();
  }

  @Test
  void whatWasSentComesBackByteByByteAndNoBrowserRunsIt() {
    byte[] sent = MediaTypeTest.picture("png");
    assertThat(send(technician, FILES, "tip.png", sent).location()).isEqualTo(FILES);
    Document page = technician.get("/loops/V-1").page();
    String href = page.select("h2:contains(Files) ~ * a:contains(tip.png)").attr("href");
    assertThat(page.select("td.typed").text()).contains("tip <b>worn</b>");
    HttpResponse<String> answer = technician.get(href).http();
    assertThat(answer.headers().firstValue("Content-Type").orElseThrow()).startsWith("image/png");
    assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
    assertThat(answer.headers().firstValue("Content-Security-Policy"))
        .contains("default-src 'none'; sandbox");
    assertThat(answer.headers().firstValue("Content-Disposition").orElseThrow())
        .startsWith("attachment; filename=\"tip.png\"");
    assertThat(technician.bytes(href)).isEqualTo(sent);
    assertThat(wrong("again.png", sent)).contains("kept here already, as “tip.png”");
    assertThat(technician.get(FILES).page().select(".hash").text())
        .contains(NewAttachment.sha256(sent));
  }

  @Test
  void aFileOfMoreThanOnePieceStaysWholeAndTheRecordAccountsForIt() {
    byte[] noise = new byte[1_400_000];
    new Random(7).nextBytes(noise);
    byte[] start = MediaTypeTest.picture("jpg");
    byte[] sent = Arrays.copyOf(start, start.length + noise.length);
    System.arraycopy(noise, 0, sent, start.length - 2, noise.length);
    sent[sent.length - 2] = (byte) 0xff;
    sent[sent.length - 1] = (byte) 0xd9;
    assertThat(send(technician, FILES, "large.jpg", sent).status()).isEqualTo(303);
    String href = technician.get(FILES).page().select("a:contains(large.jpg)").attr("href");
    assertThat(technician.bytes(href)).isEqualTo(sent);
    assertThat(Verification.of(shop.app.database()).agrees()).isTrue();
  }

  @Test
  void whatIsNotWhatItSaysIsRefusedInPlace() {
    assertThat(wrong("curve.png", MediaTypeTest.pdf())).contains("holds application/pdf");
    assertThat(wrong("page.pdf", "<script>alert(1)</script>".getBytes(StandardCharsets.UTF_8)))
        .contains("not a whole PDF");
    assertThat(wrong("empty.pdf", new byte[0])).contains("nothing in the file");
    assertThat(wrong("big.pdf", new byte[(10 << 20) + 1])).contains("at most 10 MB");
    assertThat(technician.get(FILES).page().text()).doesNotContain("page.pdf");
  }

  @Test
  void otherRecordsHoldFilesTooAndWhoOnlyLooksAddsNone() {
    assertThat(send(technician, "/files/of/part/1", "part.pdf", MediaTypeTest.pdf()).status())
        .isEqualTo(303);
    Visitor viewer = shop.app.as("viewer");
    assertThat(viewer.get("/files/of/part/1").page().text()).contains("part.pdf");
    assertThat(viewer.get("/files/of/part/1").page().select("main form")).isEmpty();
    assertThat(
            FilledForm.to(FILES, viewer.token())
                .set("kind", "photo")
                .choose("file", "x.pdf", MediaTypeTest.pdf())
                .send(viewer, "do", "keep")
                .status())
        .isEqualTo(403);
    for (String path :
        new String[] {
          "/files/of/loop/NOT-THERE",
          "/files/of/what/1",
          "/files/of/calibration/C-999",
          "/files/of/check/J-9",
          "/files/of/standard/NONE",
          "/files/999",
          "/files/x"
        }) {
      assertThat(viewer.get(path).status()).as(path).isEqualTo(404);
    }
  }
}
