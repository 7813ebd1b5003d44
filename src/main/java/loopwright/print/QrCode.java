package loopwright.print;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.io.IOException;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDPageContentStream;

/** A QR code (ISO/IEC 18004) of correction level M, which survives damage to 15 % of it. */
public final class QrCode {
  /** Blank modules around it; the standard asks for four, whoever places it leaves the others. */
  public static final int QUIET = 2;

  private final ByteMatrix modules;

  private QrCode(ByteMatrix modules) {
    this.modules = modules;
  }

  /**
   * @throws IllegalArgumentException if the text is too long for any code
   */
  public static QrCode of(String text) {
    try {
      Map<EncodeHintType, Object> hints = Map.of(EncodeHintType.CHARACTER_SET, "UTF-8");
      return new QrCode(Encoder.encode(text, ErrorCorrectionLevel.M, hints).getMatrix());
    } catch (WriterException tooLong) {
      throw new IllegalArgumentException(text, tooLong);
    }
  }

  /** Modules along a side with the blank ones around. */
  public int across() {
    return modules.getWidth() + 2 * QUIET;
  }

  /**
   * Draws it in black.
   *
   * @param x of its lower left corner, points
   * @param y of its lower left corner, points
   * @param side with the blank edge, points
   */
  public void draw(PDPageContentStream page, double x, double y, double side) throws IOException {
    double module = side / across();
    page.setNonStrokingColor(0f);
    for (int row = 0; row < modules.getHeight(); row++) {
      double bottom = y + side - (row + 1 + QUIET) * module;
      for (int from = 0; from < modules.getWidth(); from++) {
        int until = blackUntil(row, from);
        if (until > from) {
          double left = x + (from + QUIET) * module;
          page.addRect(
              (float) left, (float) bottom, (float) ((until - from) * module), (float) module);
          from = until;
        }
      }
    }
    page.fill();
  }

  /**
   * The same for a page, black on white, one unit a module.
   *
   * @param label for those who don't see it
   */
  public String svg(String label) {
    Svg.Element drawing = Svg.drawing(across(), across(), label);
    drawing.add("rect").set("width", across()).set("height", across()).set("fill", "#fff");
    StringBuilder path = new StringBuilder();
    for (int row = 0; row < modules.getHeight(); row++) {
      for (int from = 0; from < modules.getWidth(); from++) {
        int until = blackUntil(row, from);
        if (until > from) {
          path.append(
              "M%s %sh%sv1h-%sz".formatted(from + QUIET, row + QUIET, until - from, until - from));
          from = until;
        }
      }
    }
    drawing.add("path").set("d", path.toString()).set("fill", "#000");
    return drawing.toString();
  }

  private int blackUntil(int row, int from) {
    int until = from;
    while (until < modules.getWidth() && modules.get(until, row) == 1) {
      until++;
    }
    return until;
  }
}
