package loopwright.curve;

/** How the person wrote a driver's output, which is negative. */
public enum SignConvention {
  /** With its sign. */
  NEGATIVE("negative"),
  /** Without its sign: 9.5 stands for −9.5 V. */
  MAGNITUDE("magnitude");

  private final String label;

  SignConvention(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }
}
