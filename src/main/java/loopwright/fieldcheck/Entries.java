package loopwright.fieldcheck;

import java.util.List;
import java.util.Optional;
import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/** What was typed into a check's form. */
record Entries(List<Entered> all) {

  Entries {
    all = List.copyOf(all);
  }

  Optional<Reported> reported(String item) {
    return reported(item, 0);
  }

  Optional<Reported> reported(String item, int row) {
    return all.stream()
        .filter(entered -> entered.item().equals(item) && entered.row() == row)
        .findFirst()
        .map(Entries::number);
  }

  private static @Nullable Reported number(Entered entered) {
    return entered.number();
  }

  /** In the canonical unit of its dimension. */
  Optional<Double> amount(String item) {
    return amount(item, 0);
  }

  Optional<Double> amount(String item, int row) {
    return reported(item, row).map(Reported::canonical);
  }

  /** The word chosen; empty when none was. */
  String word(String item) {
    return all.stream()
        .filter(entered -> entered.item().equals(item))
        .findFirst()
        .map(Entered::typed)
        .orElse("");
  }

  /** The number of the last row of its table. */
  int rows() {
    return all.stream().mapToInt(Entered::row).max().orElse(0);
  }
}
