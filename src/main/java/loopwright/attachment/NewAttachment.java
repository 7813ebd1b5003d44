package loopwright.attachment;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import loopwright.problem.Refused;
import loopwright.problem.Text;

/**
 * A file about to be kept: looked into, named safely, hashed.
 *
 * @param type as found in the content
 * @param sha256 of the content, hex
 */
record NewAttachment(
    AttachmentKind kind,
    String fileName,
    MediaType type,
    byte[] content,
    String sha256,
    String note) {
  /** Own choice: a photograph of a phone or a scanned sheet of some pages. */
  static final int MOST_BYTES = 10 << 20;

  private static final int MOST_NAME = 160;

  /**
   * Looks into a file that somebody sends.
   *
   * @param name as the sender's machine calls it; a path before it is dropped
   * @throws Refused if it is empty, too large, of no type that is kept, or of another type than its
   *     name says
   */
  static NewAttachment of(AttachmentKind kind, String name, byte[] content, String note) {
    if (content.length == 0) {
      throw new Refused(AttachmentProblem.EMPTY);
    }
    if (content.length > MOST_BYTES) {
      throw new Refused(AttachmentProblem.TOO_LARGE, content.length >> 20, MOST_BYTES >> 20);
    }
    String plain = plainName(name);
    MediaType type =
        MediaType.of(content).orElseThrow(() -> new Refused(AttachmentProblem.OTHER_TYPE, plain));
    if (!type.suits(plain)) {
      throw new Refused(AttachmentProblem.LIES, plain, type.word(), type.endings());
    }
    return new NewAttachment(
        kind, plain, type, content, sha256(content), Text.kept("the note", note, 400));
  }

  /** The last part of the name, without anything that a header or a file system could misread. */
  static String plainName(String name) {
    String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    String plain = last.replaceAll("[\\p{Cntrl}\\p{Cf}\"<>|:*?;]", "_").strip();
    return plain.length() > MOST_NAME ? plain.substring(plain.length() - MOST_NAME) : plain;
  }

  static String sha256(byte[] content) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }
}
