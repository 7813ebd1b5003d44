package loopwright;

/** Program entry. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {}
}
