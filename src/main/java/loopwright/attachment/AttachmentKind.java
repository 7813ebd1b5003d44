package loopwright.attachment;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What a file is to its record. */
enum AttachmentKind {
  PHOTO("photo"),
  SHEET("scanned sheet"),
  CERTIFICATE("certificate"),
  OTHER("other");

  private final String word;

  AttachmentKind(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }

  static Optional<AttachmentKind> named(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }

  static Map<String, String> choices() {
    Map<String, String> choices = new LinkedHashMap<>();
    for (AttachmentKind kind : values()) {
      choices.put(kind.word, kind.word);
    }
    return choices;
  }
}
