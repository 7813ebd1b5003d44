package loopwright.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import javax.imageio.ImageIO;
import loopwright.problem.Refused;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.Test;

/** Types told by content, with files that general-purpose libraries write. */
class MediaTypeTest {

  static byte[] picture(String format) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(new BufferedImage(3, 2, BufferedImage.TYPE_INT_RGB), format, out);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return out.toByteArray();
  }

  static byte[] pdf() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage());
      document.save(out);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return out.toByteArray();
  }

  /** A lossless picture of one pixel in 34 bytes. */
  private static byte[] webp() {
    return Base64.getDecoder().decode("UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==");
  }

  private static byte[] joined(byte[] one, byte[] other) {
    byte[] both = Arrays.copyOf(one, one.length + other.length);
    System.arraycopy(other, 0, both, one.length, other.length);
    return both;
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void eachTypeIsFoundInWhatLibrariesWrite() {
    assertThat(MediaType.of(picture("png"))).contains(MediaType.PNG);
    assertThat(MediaType.of(picture("jpg"))).contains(MediaType.JPEG);
    assertThat(MediaType.of(pdf())).contains(MediaType.PDF);
    assertThat(MediaType.of(webp())).contains(MediaType.WEBP);
  }

  @Test
  void whatIsCutShortOrGoesOnAsSomethingElseIsNoneOfThem() {
    byte[] script = text("<script>alert(1)</script>");
    for (byte[] whole : new byte[][] {picture("png"), webp()}) {
      assertThat(MediaType.of(Arrays.copyOf(whole, whole.length - 5))).isEmpty();
      assertThat(MediaType.of(joined(whole, script))).isEmpty();
    }
    assertThat(MediaType.of(Arrays.copyOf(pdf(), 100))).isEmpty();
    assertThat(MediaType.of(Arrays.copyOf(picture("jpg"), 100))).isEmpty();
    assertThat(MediaType.of(script)).isEmpty();
    assertThat(MediaType.of(joined(script, pdf()))).isEmpty();
    assertThat(MediaType.of(picture("gif"))).isEmpty();
    assertThat(MediaType.of(new byte[] {'R', 'I', 'F', 'F'})).isEmpty();
    assertThat(MediaType.of(new byte[0])).isEmpty();
  }

  @Test
  void aNameThatLiesIsRefusedAndPathsAreDropped() {
    assertThat(of("C:\\photos\\tip 1.PNG", picture("png")).fileName()).isEqualTo("tip 1.PNG");
    assertThat(of("../../etc/sheet.pdf", pdf()).fileName()).isEqualTo("sheet.pdf");
    assertThat(of("a\r\nb\".jpeg", picture("jpg")).fileName()).isEqualTo("a__b_.jpeg");
    assertThatThrownBy(() -> of("curve.png", pdf()))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("holds application/pdf");
    assertThatThrownBy(() -> of("tip.png.exe", picture("png"))).hasMessageContaining("end in .png");
    assertThatThrownBy(() -> of("page.pdf", text("<html></html>")))
        .hasMessageContaining("not a whole PDF");
    assertThatThrownBy(() -> of("empty.pdf", new byte[0])).hasMessageContaining("nothing in");
    assertThatThrownBy(() -> of("big.png", new byte[NewAttachment.MOST_BYTES + 1]))
        .hasMessageContaining("at most 10 MB");
  }

  private static NewAttachment of(String name, byte[] content) {
    return NewAttachment.of(AttachmentKind.PHOTO, name, content, "");
  }

  /** FIPS 180-4's example: SHA-256 of "abc". */
  @Test
  void theHashIsThatOfTheStandard() {
    assertThat(NewAttachment.sha256(text("abc")))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void headersCarryAnyNameSafely() {
    assertThat(AttachmentPages.disposition("Prüf\"bl;att.pdf"))
        .isEqualTo(
            "attachment; filename=\"Pr_f_bl_att.pdf\"; filename*=UTF-8''Pr%C3%BCf%22bl%3Batt.pdf");
  }
}
