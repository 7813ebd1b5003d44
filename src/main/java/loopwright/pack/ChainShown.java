package loopwright.pack;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.loop.Judging;
import loopwright.loop.Proposed;
import loopwright.matching.KnownLength;
import loopwright.matching.PartView;
import loopwright.print.ChainPicture;
import loopwright.units.Length;

/** The chain of a judged loop as its sheet lists and draws it. */
final class ChainShown {
  private static final String FITTED = "fitted";
  private static final String NONE = "none";

  private ChainShown() {}

  static List<LoopSheet.Fitted> of(Judging.Judged judged) {
    List<LoopSheet.Fitted> chain = new ArrayList<>();
    List<loopwright.matching.Slot> seen = judged.view().slots();
    for (int i = 0; i < seen.size(); i++) {
      chain.add(fitted(slot(i, seen.size()), seen.get(i)));
    }
    return chain;
  }

  private static String slot(int place, int of) {
    if (place == 0) {
      return "probe";
    }
    return place == of - 1 ? "driver" : "path-" + place;
  }

  private static LoopSheet.Fitted fitted(String slot, loopwright.matching.Slot seen) {
    String usual =
        switch (slot) {
          case "probe" -> "probe";
          case "driver" -> "driver";
          default -> "extension cable";
        };
    PartView part = seen.part().orElse(null);
    if (part == null) {
      String content = seen == loopwright.matching.Slot.NONE_FITTED ? NONE : "unknown";
      return new LoopSheet.Fitted(slot, content, usual, "", "", "", "");
    }
    KnownLength known = part.length();
    return new LoopSheet.Fitted(
        slot,
        FITTED,
        part.kind().word(),
        part.name().isIdentified() ? Proposed.label(part) : "",
        about(part),
        known == null ? "" : known.length().metres().toPlainString(),
        known == null || known.evidence().proves() ? "" : "length " + known.evidence().phrase());
  }

  private static String about(PartView part) {
    return Stream.of(part.name().maker(), part.name().model(), part.family())
        .filter(Objects::nonNull)
        .filter(word -> !word.isBlank())
        .collect(Collectors.joining(" "));
  }

  /** The drawing of it. */
  static ChainPicture picture(LoopSheet sheet) {
    List<LoopSheet.Fitted> chain = sheet.chain();
    List<ChainPicture.Part> path =
        chain.subList(1, chain.size() - 1).stream()
            .map(fitted -> part(fitted.kind(), fitted))
            .toList();
    return new ChainPicture(
        sheet.tag(),
        part("probe lead", chain.get(0)),
        path,
        part("driver", chain.get(chain.size() - 1)),
        Length.ofMetres(sheet.tolerance()));
  }

  private static ChainPicture.Part part(String caption, LoopSheet.Fitted fitted) {
    return switch (fitted.content()) {
      case FITTED ->
          ChainPicture.Part.fitted(
              caption,
              fitted.serial(),
              fitted.metres().isEmpty() ? null : Length.ofMetres(fitted.metres()),
              fitted.note());
      case NONE -> ChainPicture.Part.none(caption);
      default -> ChainPicture.Part.unknown(caption);
    };
  }
}
