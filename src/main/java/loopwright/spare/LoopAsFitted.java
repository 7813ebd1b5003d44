package loopwright.spare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import loopwright.exchange.FittedPart;
import loopwright.exchange.LoopLengths;
import loopwright.exchange.StockPart;
import loopwright.exchange.Suiting;
import loopwright.loop.Judging;
import loopwright.loop.Placed;
import loopwright.loop.Proposed;
import loopwright.loop.Slot;
import loopwright.matching.FamilyView;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.rules.StandardRules;
import loopwright.units.Length;

/**
 * A loop's lengths, and in which slot each part sits.
 *
 * @param lengths a balance that isn't known counts as zero: then the like of what is fitted is
 *     asked for
 * @param slots by number of the part
 */
record LoopAsFitted(Judging.Judged judged, LoopLengths lengths, Map<Long, Slot> slots) {

  static LoopAsFitted of(Judging.Judged judged) {
    Map<Long, Slot> slots = new HashMap<>();
    List<FittedPart> parts = new ArrayList<>();
    LoopView view = judged.view();
    int inPath = 0;
    for (Placed placed : judged.chain()) {
      loopwright.matching.Slot seen =
          placed.slot() == Slot.PROBE
              ? view.probe()
              : placed.slot() == Slot.DRIVER ? view.driver() : view.path().get(inPath++);
      placed
          .content()
          .component()
          .ifPresent(
              number ->
                  seen.part()
                      .ifPresent(
                          part -> {
                            slots.put(number, placed.slot());
                            parts.add(fitted(number, part));
                          }));
    }
    Length balance = judged.judgement().balance();
    return new LoopAsFitted(
        judged,
        new LoopLengths(
            judged.subject().tag(),
            "",
            "",
            parts,
            balance == null ? Length.ZERO : balance,
            StandardRules.lengthTolerance(view),
            view.family().map(FamilyView::code).orElse("")),
        slots);
  }

  private static FittedPart fitted(long number, PartView part) {
    KnownLength length = part.length();
    return new FittedPart(
        number,
        Proposed.label(part),
        part.kind(),
        part.family(),
        length == null ? null : length.length(),
        length != null && length.evidence().proves(),
        true);
  }

  TreeSet<String> families() {
    TreeSet<String> codes = new TreeSet<>();
    if (!lengths.family().isEmpty()) {
      codes.add(lengths.family());
    }
    lengths.parts().stream().map(FittedPart::family).filter(Objects::nonNull).forEach(codes::add);
    return codes;
  }

  /** Where a part of that place sits; a cable that is added takes the first place of the path. */
  Slot slot(Suiting.Place place) {
    FittedPart out = place.insteadOf();
    return out == null
        ? Slot.PATH_1
        : Objects.requireNonNull(slots.get(out.number()), "a part sits in a slot");
  }

  Want.Option option(Suiting.Place place, StockPart lying) {
    Slot slot = slot(place);
    Length length = Objects.requireNonNull(lying.part().length());
    return new Want.Option(
        lying.part().number(),
        lying.part().label(),
        place.kind().word() + ", " + length.inMetres(),
        lying.shelf().isEmpty() ? "place not recorded" : lying.shelf(),
        slot,
        place.work(),
        slot.word() + "|" + place.kind() + "|" + place.family() + "|" + length);
  }
}
