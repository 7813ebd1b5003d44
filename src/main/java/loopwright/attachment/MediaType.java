package loopwright.attachment;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The types of files that are kept, told by their content: signature at the start, the structure
 * right behind it, and the mark at the end, so that a file cut short or one that goes on as
 * something else is not taken.
 *
 * @see "PNG: W3C, Portable Network Graphics (third edition), 5.2 and 5.6"
 * @see "JPEG: ITU-T T.81, annex B (SOI, EOI)"
 * @see "WebP: RFC 9649, section 2"
 * @see "PDF: ISO 32000-1:2008, 7.5.2 and 7.5.5"
 */
public enum MediaType {
  PDF("application/pdf", "pdf") {
    @Override
    boolean isIn(byte[] content) {
      return startsWith(content, ascii("%PDF-"))
          && indexOf(content, ascii("%%EOF"), Math.max(0, content.length - 1024)) >= 0;
    }
  },
  PNG("image/png", "png") {
    @Override
    boolean isIn(byte[] content) {
      return startsWith(content, PNG_SIGNATURE)
          && at(content, 12, ascii("IHDR"))
          && at(content, content.length - 8, ascii("IEND"));
    }
  },
  JPEG("image/jpeg", "jpg", "jpeg") {
    @Override
    boolean isIn(byte[] content) {
      return startsWith(content, JPEG_START)
          && indexOf(content, JPEG_END, Math.max(0, content.length - 4096)) >= 0;
    }
  },
  WEBP("image/webp", "webp") {
    @Override
    boolean isIn(byte[] content) {
      return startsWith(content, ascii("RIFF"))
          && at(content, 8, ascii("WEBPVP8"))
          && littleEndian(content, 4) + 8 == content.length;
    }
  };

  private static final byte[] PNG_SIGNATURE = {
    (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0, 0, 13
  };
  private static final byte[] JPEG_START = {(byte) 0xff, (byte) 0xd8, (byte) 0xff};
  private static final byte[] JPEG_END = {(byte) 0xff, (byte) 0xd9};

  private final String word;
  private final List<String> endings;

  MediaType(String word, String... endings) {
    this.word = word;
    this.endings = List.of(endings);
  }

  abstract boolean isIn(byte[] content);

  /** As HTTP names it. */
  public String word() {
    return word;
  }

  public boolean isPicture() {
    return this != PDF;
  }

  /** Whether a file's name ends as files of this type do. */
  boolean suits(String fileName) {
    String lower = fileName.toLowerCase(Locale.ROOT);
    return endings.stream().anyMatch(ending -> lower.endsWith("." + ending));
  }

  /** How files of this type end: {@code .jpg or .jpeg}. */
  String endings() {
    return "." + String.join(" or .", endings);
  }

  /** The type of this content; empty if it is none that is kept. */
  static Optional<MediaType> of(byte[] content) {
    return Arrays.stream(values()).filter(type -> type.isIn(content)).findFirst();
  }

  static MediaType ofWord(String word) {
    return Arrays.stream(values())
        .filter(type -> type.word.equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no media type " + word));
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static boolean startsWith(byte[] content, byte[] start) {
    return at(content, 0, start);
  }

  private static boolean at(byte[] content, int place, byte[] wanted) {
    return place >= 0
        && place + wanted.length <= content.length
        && Arrays.equals(content, place, place + wanted.length, wanted, 0, wanted.length);
  }

  private static int indexOf(byte[] content, byte[] wanted, int from) {
    for (int i = from; i + wanted.length <= content.length; i++) {
      if (at(content, i, wanted)) {
        return i;
      }
    }
    return -1;
  }

  private static long littleEndian(byte[] content, int place) {
    return (content[place] & 0xffL)
        | (content[place + 1] & 0xffL) << 8
        | (content[place + 2] & 0xffL) << 16
        | (content[place + 3] & 0xffL) << 24;
  }
}
