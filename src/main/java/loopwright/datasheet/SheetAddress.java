package loopwright.datasheet;

import java.util.Map;
import loopwright.web.PathSegment;

/**
 * Where a data sheet is shown.
 *
 * @param whose family code, or maker and model
 * @param family code; empty for a model's
 * @param href within this program
 */
record SheetAddress(String whose, String family, String href) {

  /**
   * @param codes of families by number
   */
  static SheetAddress of(Subject subject, Map<Long, String> codes) {
    String kind = "/sheets/of?kind=" + PathSegment.of(subject.kind().word());
    if (subject.family() == null) {
      return new SheetAddress(
          subject.maker() + " " + subject.model(),
          "",
          kind
              + "&maker="
              + PathSegment.of(subject.maker())
              + "&model="
              + PathSegment.of(subject.model()));
    }
    String code = codes.getOrDefault(subject.family().number(), "");
    return new SheetAddress("family " + code, code, kind + "&family=" + PathSegment.of(code));
  }
}
