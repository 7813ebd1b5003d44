package loopwright.outage;

import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Chunks;
import loopwright.loop.Allowances;
import loopwright.loop.Judging;
import loopwright.matching.Calibration;
import loopwright.matching.Finding;
import loopwright.matching.Verdict;
import loopwright.plant.Point;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What the record says should be looked at while trains stand still. */
public final class Suggestions {
  private static final String BALANCE = "length balance";
  private static final String AS_FITTED = "calibrated as fitted";
  private static final int AT_ONCE = 500;

  private final Judging judging;
  private final List<SuggestionSource> sources;
  private final InstantSource clock;

  /**
   * @param sources asked beside the rules
   */
  public Suggestions(Judging judging, List<SuggestionSource> sources, InstantSource clock) {
    this.judging = judging;
    this.sources = List.copyOf(sources);
    this.clock = clock;
  }

  /**
   * Every loop with what speaks for it, in the order given.
   *
   * @param until last day of the window: what is due by then is due
   * @param today on the site's calendar
   */
  public List<Suggestion> of(
      DSLContext sql, List<Outages.Loop> loops, LocalDate until, LocalDate today) {
    List<Suggestion> all = new ArrayList<>();
    for (List<Outages.Loop> some : Chunks.of(loops, AT_ONCE)) {
      Map<Long, Judging.Judged> judged = new HashMap<>();
      judging
          .judge(sql, some.stream().map(Suggestions::subject).toList(), clock.instant())
          .forEach(one -> judged.put(one.subject().point(), one));
      Map<Long, List<Suggestion.Reason>> beside = beside(sql, judged.keySet(), until);
      some.forEach(
          loop -> {
            long point = loop.point().id().number();
            Judging.Judged one = judged.get(point);
            if (one != null) {
              all.add(suggestion(loop, one, until, today, beside.getOrDefault(point, List.of())));
            }
          });
    }
    return all;
  }

  private Map<Long, List<Suggestion.Reason>> beside(
      DSLContext sql, Collection<Long> points, LocalDate until) {
    Map<Long, List<Suggestion.Reason>> beside = new HashMap<>();
    for (SuggestionSource source : sources) {
      source
          .of(sql, points, until)
          .forEach(
              (point, reasons) ->
                  beside.computeIfAbsent(point, any -> new ArrayList<>()).addAll(reasons));
    }
    return beside;
  }

  private static Judging.Subject subject(Outages.Loop loop) {
    return new Judging.Subject(loop.point().id().number(), loop.point().tag());
  }

  private static Suggestion suggestion(
      Outages.Loop loop,
      Judging.Judged judged,
      LocalDate until,
      LocalDate today,
      List<Suggestion.Reason> beside) {
    List<Suggestion.Reason> reasons = new ArrayList<>();
    LocalDate due = due(loop.point(), judged);
    if (due != null && due.isBefore(today)) {
      add(reasons, Suggestion.Kind.OVERDUE, "Was due on " + due + ".");
    } else if (due != null && !due.isAfter(until)) {
      add(reasons, Suggestion.Kind.DUE, "Due on " + due + ", by the end of the window.");
    }
    judged.judgement().findings().forEach(finding -> look(finding, reasons));
    Allowances.Allowed allowed = judged.allowed();
    if (allowed != null) {
      allowed
          .allowances()
          .forEach(
              allowance ->
                  add(
                      reasons,
                      Suggestion.Kind.CONCESSION,
                      "Left under concession " + allowance.number() + "."));
    }
    reasons.addAll(beside);
    return new Suggestion(loop, due, reasons, judged.judgement().verdict().word());
  }

  /** The day counted from the last as-left; null without an interval or an as-left. */
  static @Nullable LocalDate due(Point point, Judging.Judged judged) {
    Integer months = point.details().intervalMonths();
    Calibration last = judged.view().calibration();
    return months == null || last == null ? null : last.asLeftOn().plusMonths(months);
  }

  private static void look(Finding finding, List<Suggestion.Reason> reasons) {
    if (finding.verdict() == Verdict.UNKNOWN) {
      add(reasons, Suggestion.Kind.UNKNOWN, finding.message());
    } else if (finding.verdict() == Verdict.REFUSED) {
      boolean balance = finding.rule().name().equals(BALANCE);
      add(
          reasons,
          balance ? Suggestion.Kind.OFF_BALANCE : Suggestion.Kind.REFUSED,
          finding.message());
    } else if (finding.verdict() == Verdict.ATTENTION && finding.rule().name().equals(AS_FITTED)) {
      add(reasons, Suggestion.Kind.NOT_CALIBRATED, finding.message());
    }
  }

  private static void add(List<Suggestion.Reason> reasons, Suggestion.Kind kind, String sentence) {
    reasons.add(new Suggestion.Reason(kind, sentence));
  }
}
