package loopwright.register;

import loopwright.problem.Text;

/** Where a part lies while it is not fitted; empty texts where nobody said. */
public record Shelf(String store, String bin) {
  public static final Shelf NOT_SAID = new Shelf("", "");

  /** Refuses texts that are too long. */
  public Shelf {
    store = Text.kept("the store", store, 60);
    bin = Text.kept("the bin", bin, 60);
  }

  /** {@code store 2, bin 14}; empty when nothing is known. */
  public String inWords() {
    return store.isEmpty() || bin.isEmpty() ? store + bin : store + ", " + bin;
  }
}
