package loopwright.gapround;

import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.cause.LengthLaw;
import loopwright.cause.Weights;
import loopwright.lengthlaw.LengthLaws;
import loopwright.loop.Judging;
import loopwright.matching.FamilyView;
import loopwright.matching.LoopView;
import loopwright.symptom.CauseWeights;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What loops worth a visit let one suspect, with the length law that their family has learnt. */
public final class Suspicions {
  private final Judging judging;
  private final LengthLaws laws;
  private final CauseWeights weights;
  private final InstantSource clock;

  public Suspicions(Judging judging, LengthLaws laws, CauseWeights weights, InstantSource clock) {
    this.judging = judging;
    this.laws = laws;
    this.weights = weights;
    this.clock = clock;
  }

  /**
   * A loop worth a visit.
   *
   * @param words what the round says of it
   * @param likely the likeliest causes; empty where nothing lets one guess
   */
  record Suspect(Ranking.Ranked ranked, String words, String likely) {
    String tag() {
      return ranked.loop().tag();
    }
  }

  List<Suspect> of(DSLContext sql, List<Ranking.Ranked> worth) {
    if (worth.isEmpty()) {
      return List.of();
    }
    Map<Long, LoopView> views = views(sql, worth);
    Map<String, LengthLaw> learnt =
        views.values().stream()
            .flatMap(view -> view.family().map(FamilyView::code).stream())
            .distinct()
            .collect(Collectors.toMap(code -> code, code -> laws.law(sql, code)));
    Weights weighing = weights.now(sql);
    return worth.stream()
        .map(
            each ->
                new Suspect(
                    each,
                    RoundWords.of(each),
                    likely(each, views.get(each.loop().now().point()), learnt, weighing)))
        .toList();
  }

  private Map<Long, LoopView> views(DSLContext sql, List<Ranking.Ranked> worth) {
    List<Judging.Subject> subjects =
        worth.stream()
            .map(each -> new Judging.Subject(each.loop().now().point(), each.loop().tag()))
            .distinct()
            .toList();
    return judging.judge(sql, subjects, clock.instant()).stream()
        .collect(Collectors.toMap(each -> each.subject().point(), Judging.Judged::view));
  }

  /** At an end of the output one number says nothing of lengths or gaps. */
  private static String likely(
      Ranking.Ranked ranked,
      @Nullable LoopView view,
      Map<String, LengthLaw> learnt,
      Weights weighing) {
    if (ranked.isAtARail()) {
      return "Open, short, touching or no target: look before anything is concluded.";
    }
    if (view == null) {
      return "";
    }
    LengthLaw law =
        view.family()
            .map(family -> learnt.getOrDefault(family.code(), LengthLaw.unproved()))
            .orElse(LengthLaw.unproved());
    return LikelyCause.of(ranked.loop(), view, law, weighing).orElse("");
  }
}
