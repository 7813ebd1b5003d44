package loopwright.loop;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.matching.Alloys;
import loopwright.matching.Calibration;
import loopwright.matching.PartView;

/**
 * Holds as-lefts against what is fitted.
 *
 * @param chain as fitted
 * @param shaftAlloy of the point; empty while nobody said
 * @param views of the parts fitted now and then
 * @param since what became of the parts since curves were taken
 */
record AsFitted(
    List<Placed> chain,
    String shaftAlloy,
    Alloys alloys,
    Map<Long, PartView> views,
    PartsSince since) {

  /**
   * The one that counts: the newest, unless that was taken elsewhere and doesn't count here while
   * the loop's own does.
   *
   * @param latest the newest first, at least one
   */
  Calibration calibration(List<AsLeftFacts.AsLeft> latest) {
    Calibration newest = calibration(latest.get(0));
    Optional<Calibration> own =
        newest.elsewhere() && !newest.belongs()
            ? latest.stream()
                .skip(1)
                .map(this::calibration)
                .filter(Calibration::belongs)
                .findFirst()
            : Optional.empty();
    return own.orElse(newest);
  }

  private Calibration calibration(AsLeftFacts.AsLeft last) {
    List<String> changes = changes(last);
    boolean elsewhere = !last.takenHere() && changes.isEmpty();
    return new Calibration(
        last.measuredOn(),
        last.outcome(),
        changes,
        last.targetAlloy(),
        last.averageScaleFactor(),
        elsewhere,
        elsewhere ? reservations(last) : List.of());
  }

  private List<String> changes(AsLeftFacts.AsLeft last) {
    Map<Slot, Long> then = Combinations.components(last.fingerprint());
    List<String> changed = new ArrayList<>();
    for (Placed placed : chain) {
      Long before = then.remove(placed.slot());
      Long now =
          placed.content().component().isPresent()
              ? (Long) placed.content().component().getAsLong()
              : null;
      if (now != null && !now.equals(before)) {
        changed.add(words(now, placed.slot()));
      } else if (now != null) {
        sameAgain(last, placed, now).ifPresent(how -> changed.add(words(now, placed.slot()) + how));
      }
      if (now == null && before != null) {
        changed.add("the present " + placed.slot().word());
      }
    }
    then.forEach((slot, number) -> changed.add("an empty " + slot.word()));
    return changed;
  }

  /** What makes the same part another one than it was for that curve. */
  private Optional<String> sameAgain(AsLeftFacts.AsLeft last, Placed placed, long part) {
    Instant taken = last.measuredAt();
    if (last.takenHere() && placed.span().from().isAfter(taken)) {
      return Optional.of("");
    }
    if (since.lengthChanged(part, taken)) {
      return Optional.of(" as it is since its length changed");
    }
    return !last.takenHere() && since.wasFittedBetween(part, taken, placed)
        ? Optional.of(" as it came back from where it was fitted since")
        : Optional.empty();
  }

  private List<String> reservations(AsLeftFacts.AsLeft last) {
    List<String> reservations = new ArrayList<>(last.reservations());
    if (shaftAlloy.isEmpty()) {
      reservations.add("elsewhere, and the alloy of this shaft is not recorded");
    } else if (last.targetAlloy().isEmpty()) {
      reservations.add("elsewhere, and the alloy of its target is not recorded");
    } else if (!isOfOneKind(last.targetAlloy())) {
      reservations.add(
          "its target was of " + last.targetAlloy() + ", the shaft is of " + shaftAlloy);
    }
    return reservations;
  }

  private boolean isOfOneKind(String target) {
    return Alloys.same(target, shaftAlloy)
        || alloys
            .groupOf(target)
            .filter(g -> alloys.groupOf(shaftAlloy).filter(g::equals).isPresent())
            .isPresent();
  }

  private String words(long number, Slot slot) {
    PartView view = views.get(number);
    return view == null ? "the present " + slot.word() : view.words();
  }
}
