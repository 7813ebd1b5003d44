package loopwright.matching.rules;

import java.util.Optional;
import loopwright.matching.AlloyGroup;
import loopwright.matching.Alloys;
import loopwright.matching.Calibration;
import loopwright.matching.Fact;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;

/**
 * The shaft is of an alloy that the family is made for, told by the alloy groups that the shop
 * keeps, or the loop was calibrated on the shaft's alloy.
 */
record TargetAlloy() implements Rule {

  @Override
  public String name() {
    return "target alloy";
  }

  @Override
  public String basis() {
    return "Slope and range hold for one target alloy. What another one does to the slope is kept"
        + " with the alloy groups, with its source.";
  }

  @Override
  public boolean blocksAssemblyWhenUnknown() {
    return false;
  }

  @Override
  public Finding judge(LoopView loop) {
    if (!loop.facts().contains(Fact.SHAFT_ALLOY) || !loop.alloys().areGiven()) {
      return finding(Verdict.NOT_JUDGED, "This rule was given no shaft alloy or no alloy groups.");
    }
    String shaft = loop.place().shaftAlloy();
    if (shaft.isEmpty()) {
      return finding(
          Verdict.UNKNOWN, "The shaft's alloy is not recorded.", "Enter it at the point.");
    }
    String declared = loop.family().map(FamilyView::targetAlloy).orElse("");
    if (declared.isEmpty()) {
      return finding(
          Verdict.UNKNOWN,
          "For what target alloy the family is made is not recorded.",
          "Enter it at the family.");
    }
    return judge(loop, declared, shaft);
  }

  private Finding judge(LoopView loop, String declared, String shaft) {
    if (Alloys.same(declared, shaft)) {
      return finding(Verdict.MATCHES, "Shaft and family are both of " + shaft + ".");
    }
    Optional<AlloyGroup> shafts = loop.alloys().groupOf(shaft);
    Optional<AlloyGroup> families = loop.alloys().groupOf(declared);
    String calibrated = calibratedOn(loop);
    if (isOfOneGroup(loop.alloys(), calibrated, shaft)) {
      return finding(
          Verdict.MATCHES,
          "The family is made for %s; the latest as-left was taken on %s, as the shaft is."
              .formatted(declared, calibrated));
    }
    if (shafts.isEmpty() || families.isEmpty()) {
      return unlisted(loop.alloys(), shafts.isEmpty() ? shaft : declared);
    }
    return judge(families.get(), declared, shafts.get(), shaft);
  }

  /** The alloy of the latest as-left, if it has a curve of exactly these parts; else empty. */
  private static String calibratedOn(LoopView loop) {
    Calibration latest = loop.calibration();
    return latest != null
            && latest.outcome() != Calibration.Outcome.NO_CURVE
            && latest.changedSince().isEmpty()
        ? latest.targetAlloy()
        : "";
  }

  private static boolean isOfOneGroup(Alloys alloys, String calibrated, String shaft) {
    Optional<AlloyGroup> group = alloys.groupOf(calibrated);
    return !calibrated.isEmpty()
        && (Alloys.same(calibrated, shaft)
            || group.isPresent() && group.equals(alloys.groupOf(shaft)));
  }

  private Finding unlisted(Alloys alloys, String alloy) {
    return finding(
        Verdict.UNKNOWN,
        "Alloy '" + alloy + "' is in no alloy group.",
        "Add it to its group."
            + alloys.nearest(alloy).map(near -> " Did you mean '" + near + "'?").orElse(""));
  }

  private Finding judge(AlloyGroup made, String declared, AlloyGroup is, String shaft) {
    if (made.equals(is)) {
      return finding(
          Verdict.MATCHES, "%s and %s are both of group %s.".formatted(declared, shaft, is.name()));
    }
    String message =
        "The family is made for %s (%s), the shaft is of %s (%s)."
            .formatted(declared, made.name(), shaft, is.name());
    boolean mixed =
        made.ferrous() != null && is.ferrous() != null && !made.ferrous().equals(is.ferrous());
    return finding(
            mixed ? Verdict.REFUSED : Verdict.ATTENTION,
            mixed ? message + " Ferrous and non-ferrous targets don't go together." : message,
            "Calibrate the loop on the shaft's alloy, or have a driver made for it.")
        .expecting(expected(made, is));
  }

  /** Slope on the shaft over slope on the declared alloy; the start voltage moves, too. */
  private static String expected(AlloyGroup made, AlloyGroup is) {
    Double declared = made.relativeSlope();
    Double present = is.relativeSlope();
    if (declared == null || present == null) {
      return "How far the slope shifts is not recorded with the alloy groups.";
    }
    String source = is.source().isEmpty() ? made.source() : is.source();
    return "Expect a slope of about %s against the nominal one%s."
        .formatted(
            Amounts.percent(present / declared - 1), source.isEmpty() ? "" : " (" + source + ")");
  }
}
