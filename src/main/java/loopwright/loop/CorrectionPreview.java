package loopwright.loop;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import loopwright.matching.Allowance;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What a correction would change, told before it is recorded. */
final class CorrectionPreview {
  private final PlacementStore placements = new PlacementStore();
  private final PartFacts parts;
  private final Judging judging;
  private final Corrections corrections;
  private final CurvesTaken curves;
  private final InstantSource clock;

  CorrectionPreview(
      PartFacts parts,
      Judging judging,
      Corrections corrections,
      CurvesTaken curves,
      InstantSource clock) {
    this.parts = parts;
    this.judging = judging;
    this.corrections = corrections;
    this.curves = curves;
    this.clock = clock;
  }

  /** A calibration that stays with the combination it was recorded with. */
  record Curve(String number, String stage, String measured, String with) {}

  /**
   * @param before what is on record of the slot
   * @param after what will be
   * @param verdict of the loop as it stands now
   * @param verdictAfter of the loop with the correction; null where it says nothing of now
   * @param headlineAfter the worst finding then
   * @param notes disputes that are decided, concessions that end
   */
  record Shown(
      List<StayLines.Line> before,
      List<StayLines.Line> after,
      List<Curve> curves,
      String verdict,
      @Nullable String verdictAfter,
      String headlineAfter,
      List<String> notes) {}

  /**
   * @throws loopwright.problem.Refused as {@link Corrections#correct}
   */
  Shown of(DSLContext sql, Opened opened, Correction correction) {
    CorrectionPlan plan = corrections.look(sql, correction);
    List<Placed> after = plan.afterwards();
    List<CurvesTaken.Taken> taken = taken(sql, correction);
    StayWords words = words(sql, opened, plan, taken);
    Map<Long, PlacementHistory.Entered> made = corrections.made(sql, plan.line());
    Judging.Judged now = judged(sql, opened);
    List<Judging.Judged> then =
        correction.span().contains(clock.instant()) && !plan.changesNothing()
            ? List.of(judgedAfter(sql, opened, correction))
            : List.of();
    return new Shown(
        StayLines.of(plan.line(), words, made, opened.href()),
        StayLines.of(after, words, made, opened.href()),
        taken.stream().map(curve -> curve(curve, words, opened)).toList(),
        now.judgement().verdict().word(),
        then.isEmpty() ? null : then.get(0).judgement().verdict().word(),
        then.isEmpty() ? "" : Headline.of(then.get(0).judgement()),
        notes(sql, opened, correction));
  }

  /** Curves typed while the slot was believed to hold something else. */
  private List<CurvesTaken.Taken> taken(DSLContext sql, Correction correction) {
    Long right = correction.content() instanceof Content.Part part ? (Long) part.number() : null;
    return curves.takenAt(sql, correction.point(), correction.span()).stream()
        .filter(
            curve ->
                !Objects.equals(
                    Combinations.components(curve.fingerprint()).get(correction.slot()), right))
        .toList();
  }

  private StayWords words(
      DSLContext sql, Opened opened, CorrectionPlan plan, List<CurvesTaken.Taken> taken) {
    List<Content> contents = new ArrayList<>();
    Stream.of(plan.line(), plan.taken(), opened.chain())
        .flatMap(List::stream)
        .map(Placed::content)
        .forEach(contents::add);
    taken.forEach(
        curve ->
            Combinations.components(curve.fingerprint())
                .values()
                .forEach(number -> contents.add(new Content.Part(number))));
    return StayWords.ofContents(sql, parts, contents, opened.zone());
  }

  private static Curve curve(CurvesTaken.Taken taken, StayWords words, Opened opened) {
    List<String> with = new ArrayList<>();
    Combinations.components(taken.fingerprint())
        .values()
        .forEach(number -> with.add(words.content(new Content.Part(number))));
    return new Curve(
        taken.number(),
        taken.stage(),
        SiteMoment.shown(taken.measuredAt(), opened.zone()),
        String.join(" · ", with));
  }

  private Judging.Judged judged(DSLContext sql, Opened opened) {
    return judging.judge(sql, List.of(subject(opened)), clock.instant()).get(0);
  }

  private static Judging.Subject subject(Opened opened) {
    return new Judging.Subject(opened.number(), opened.point().tag());
  }

  private Judging.Judged judgedAfter(DSLContext sql, Opened opened, Correction correction) {
    Map<Slot, Content> slots = new EnumMap<>(Slot.class);
    opened.chain().forEach(placed -> slots.put(placed.slot(), placed.content()));
    slots.put(correction.slot(), correction.content());
    return judging.judge(sql, subject(opened), new Chain(slots), clock.instant());
  }

  private List<String> notes(DSLContext sql, Opened opened, Correction correction) {
    List<String> notes = new ArrayList<>();
    for (Dispute dispute : corrections.decided(sql, correction)) {
      boolean otherStands =
          dispute.standing().isAt(correction.point(), correction.slot())
              && !dispute.part().equals(correction.content());
      notes.add(
          "This decides a dispute with %s: there the claim %s."
              .formatted(
                  dispute.claimBeside(correction.point()).tag(),
                  otherStands || dispute.other().isAt(correction.point(), correction.slot())
                      ? "stands"
                      : "falls"));
    }
    ending(sql, opened, correction).forEach(notes::add);
    return notes;
  }

  /** Concessions end with any change of the parts that they are bound to. */
  private List<String> ending(DSLContext sql, Opened opened, Correction correction) {
    Instant now = clock.instant();
    if (!correction.span().contains(now)) {
      return List.of();
    }
    List<Placed> chain = placements.at(sql, opened.number(), now);
    String fingerprint = Combinations.fingerprint(chain).orElse("");
    return judging
        .allowances()
        .standing(
            sql, List.of(new AsLeftFacts.Fitted(opened.number(), fingerprint)), Viewpoint.of(now))
        .values()
        .stream()
        .flatMap(allowed -> allowed.allowances().stream())
        .map(Allowance::number)
        .map("Concession %s ends: it is bound to exactly the parts on record now."::formatted)
        .toList();
  }
}
