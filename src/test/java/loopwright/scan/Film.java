package loopwright.scan;

import static java.nio.charset.StandardCharsets.US_ASCII;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** A film of one picture in the plain format that Chromium plays in place of a camera. */
final class Film {
  private static final int WIDTH = 640;
  private static final int HEIGHT = 480;
  private static final int CODE = 320;

  private Film() {}

  /** Somebody holds the QR code of that text into the camera. */
  static Path showing(String text) {
    try {
      BitMatrix code = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, CODE, CODE);
      ByteArrayOutputStream film = new ByteArrayOutputStream();
      film.write("YUV4MPEG2 W640 H480 F10:1 Ip A1:1 C420\n".getBytes(US_ASCII));
      for (int frame = 0; frame < 2; frame++) {
        film.write("FRAME\n".getBytes(US_ASCII));
        film.write(grey(code));
        film.write(neutral());
      }
      Path file = Files.createTempFile("loopwright-film", ".y4m");
      file.toFile().deleteOnExit();
      return Files.write(file, film.toByteArray());
    } catch (IOException | WriterException impossible) {
      throw new UncheckedIOException(new IOException(impossible));
    }
  }

  private static byte[] grey(BitMatrix code) {
    byte[] grey = new byte[WIDTH * HEIGHT];
    Arrays.fill(grey, (byte) 200);
    int left = (WIDTH - CODE) / 2;
    int top = (HEIGHT - CODE) / 2;
    for (int y = 0; y < CODE; y++) {
      for (int x = 0; x < CODE; x++) {
        grey[(top + y) * WIDTH + left + x] = (byte) (code.get(x, y) ? 40 : 200);
      }
    }
    return grey;
  }

  private static byte[] neutral() {
    byte[] colours = new byte[WIDTH * HEIGHT / 2];
    Arrays.fill(colours, (byte) 128);
    return colours;
  }
}
