package loopwright.cli;

/** Exit codes, the same for every command. */
final class Exit {
  /** Everything asked for holds. */
  static final int GOOD = 0;

  /** The work was done and found something that does not hold. */
  static final int FOUND_SOMETHING = 1;

  /** The input or the call can't be used; standard error says where and what would be right. */
  static final int UNUSABLE = 2;

  /** The program itself failed. */
  static final int FAILED = 3;

  private Exit() {}
}
