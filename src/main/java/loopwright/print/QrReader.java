package loopwright.print;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.jspecify.annotations.Nullable;

/** Finds the code in a photograph of a label: QR and the bar codes that makers print serials in. */
public final class QrReader {
  /** Larger pictures are read more coarsely: a label fills a good part of any useful picture. */
  private static final int ENOUGH_PIXELS = 1600;

  private static final long MOST_PIXELS = 200_000_000L;

  private static final Map<DecodeHintType, Object> HINTS =
      Map.of(
          DecodeHintType.TRY_HARDER,
          Boolean.TRUE,
          DecodeHintType.POSSIBLE_FORMATS,
          List.of(
              BarcodeFormat.QR_CODE,
              BarcodeFormat.DATA_MATRIX,
              BarcodeFormat.CODE_128,
              BarcodeFormat.CODE_39));

  private QrReader() {}

  /**
   * The text of the code that is seen.
   *
   * @param picture JPEG, PNG, GIF or BMP
   * @return empty if it shows no code, or is no picture
   */
  public static Optional<String> read(InputStream picture) throws IOException {
    BufferedImage image = image(picture);
    return image == null ? Optional.empty() : read(image);
  }

  public static Optional<String> read(BufferedImage image) {
    int width = image.getWidth();
    int height = image.getHeight();
    int[] pixels = image.getRGB(0, 0, width, height, null, 0, width);
    LuminanceSource grey = new RGBLuminanceSource(width, height, pixels);
    return decoded(new BinaryBitmap(new HybridBinarizer(grey)))
        .or(() -> decoded(new BinaryBitmap(new GlobalHistogramBinarizer(grey))));
  }

  private static Optional<String> decoded(BinaryBitmap bitmap) {
    try {
      return Optional.of(new MultiFormatReader().decode(bitmap, HINTS).getText());
    } catch (NotFoundException nothingSeen) {
      return Optional.empty();
    }
  }

  private static @Nullable BufferedImage image(InputStream picture) throws IOException {
    try (ImageInputStream in = new MemoryCacheImageInputStream(picture)) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        return null;
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        return image(reader);
      } catch (IOException | RuntimeException damaged) {
        return null;
      } finally {
        reader.dispose();
      }
    }
  }

  private static @Nullable BufferedImage image(ImageReader reader) throws IOException {
    long width = reader.getWidth(0);
    long height = reader.getHeight(0);
    if (width * height > MOST_PIXELS) {
      return null;
    }
    int every = (int) Math.max(1, Math.max(width, height) / ENOUGH_PIXELS);
    ImageReadParam coarser = reader.getDefaultReadParam();
    coarser.setSourceSubsampling(every, every, 0, 0);
    return reader.read(0, coarser);
  }
}
