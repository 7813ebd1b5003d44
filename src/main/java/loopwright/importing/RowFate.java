package loopwright.importing;

import java.util.ArrayList;
import java.util.List;

/**
 * A row of a file and what would become of it.
 *
 * @param row line in the file, counted from 1
 * @param what the row is about, in words
 * @param changes field by field, when something that is there would change
 * @param note what else would happen because of this row; mostly empty
 */
public record RowFate(
    String file, int row, Fate fate, String what, List<FieldChange> changes, String note) {

  static RowFate of(RowPlace place, Fate fate, String what) {
    return new RowFate(place.file(), place.line(), fate, what, List.of(), "");
  }

  static RowFate changed(RowPlace place, String what, List<FieldChange> changes) {
    return new RowFate(place.file(), place.line(), Fate.CHANGED, what, changes, "");
  }

  RowFate refused() {
    return new RowFate(file, row, Fate.REFUSED, what, List.of(), "");
  }

  /** One change more; a row that is added or refused stays so. */
  RowFate changing(FieldChange change) {
    if (fate == Fate.ADDED || fate == Fate.REFUSED) {
      return this;
    }
    List<FieldChange> all = new ArrayList<>(changes);
    all.add(change);
    return new RowFate(file, row, Fate.CHANGED, what, List.copyOf(all), note);
  }

  RowFate noting(String note) {
    return new RowFate(file, row, fate, what, changes, note);
  }
}
