package loopwright.loop;

import java.util.Optional;
import loopwright.matching.FamilyView;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.print.ChainDrawing;
import loopwright.print.ChainPicture;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/** Draws a judged loop to length. */
final class Drawing {
  /** Where the family says nothing; the rule for length balance uses the same. */
  private static final Length USUAL_TOLERANCE = Length.ofMetres("0.05");

  private Drawing() {}

  static String of(Judging.Judged judged) {
    LoopView view = judged.view();
    return ChainDrawing.svg(
        new ChainPicture(
            view.tag(),
            part("probe lead", view.probe()),
            view.path().stream().map(Drawing::path).toList(),
            part("driver", view.driver()),
            tolerance(view)));
  }

  private static Length tolerance(LoopView view) {
    return view.family().map(FamilyView::lengthTolerance).orElse(USUAL_TOLERANCE);
  }

  private static ChainPicture.Part path(loopwright.matching.Slot slot) {
    return part(slot.part().map(p -> p.kind().word()).orElse("extension cable"), slot);
  }

  private static ChainPicture.Part part(String caption, loopwright.matching.Slot slot) {
    Optional<PartView> fitted = slot.part();
    if (fitted.isPresent()) {
      return part(caption, fitted.get());
    }
    return slot == loopwright.matching.Slot.NONE_FITTED
        ? ChainPicture.Part.none(caption)
        : ChainPicture.Part.unknown(caption);
  }

  private static ChainPicture.Part part(String caption, PartView part) {
    @Nullable KnownLength known = part.length();
    String note =
        known == null || known.evidence().proves() ? "" : "length " + known.evidence().phrase();
    String words =
        part.kind() == PartKind.PROBE || part.kind() == PartKind.DRIVER
            ? caption
            : part.kind().word();
    return ChainPicture.Part.fitted(
        words, part.name().text(), known == null ? null : known.length(), note);
  }
}
