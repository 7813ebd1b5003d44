package loopwright.attachment;

import loopwright.problem.Problem;

/** Why a file was not kept or not handed out. */
public enum AttachmentProblem implements Problem {
  EMPTY("A-201", "There is nothing in the file. Choose one that holds something."),
  TOO_LARGE(
      "A-202",
      "The file has {0} MB; at most {1} MB are kept. Scan it with fewer dots, or make the picture"
          + " smaller."),
  OTHER_TYPE(
      "A-203",
      "\u201c{0}\u201d is not a whole PDF, PNG, JPEG or WebP file, whatever its name says. Only these"
          + " are kept."),
  LIES(
      "A-204",
      "\u201c{0}\u201d holds {1}, but its name says something else. Look what it is; if it is right,"
          + " let its name end in {2}."),
  KEPT_ALREADY("A-205", "That very file is kept here already, as \u201c{0}\u201d."),
  DAMAGED(
      "A-206",
      "The content of \u201c{0}\u201d no longer has the hash it was kept with, so it is not handed"
          + " out. Restore it from a backup.");

  private final String code;
  private final String sentence;

  AttachmentProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence;
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String sentence() {
    return sentence;
  }
}
