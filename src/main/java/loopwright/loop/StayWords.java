package loopwright.loop;

import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.matching.PartView;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import org.jooq.DSLContext;

/** Stays of parts in words: which part, from when to when on the site's clock. */
public record StayWords(Map<Long, PartView> views, ZoneId zone) {

  static StayWords of(DSLContext sql, PartFacts parts, Collection<Placed> stays, ZoneId zone) {
    return ofContents(sql, parts, stays.stream().map(Placed::content).toList(), zone);
  }

  public static StayWords ofContents(
      DSLContext sql, PartFacts parts, Collection<Content> contents, ZoneId zone) {
    List<Long> components =
        contents.stream().flatMap(content -> content.component().stream().boxed()).toList();
    return new StayWords(components.isEmpty() ? Map.of() : parts.parts(sql, components), zone);
  }

  /** The serial of a part, with the channel of a box; else that nothing or nobody knows what. */
  public String content(Content content) {
    if (content instanceof Content.Part part) {
      PartView view = views.get(part.number());
      String channel = part.channel() == 1 ? "" : " #" + part.channel();
      return view == null ? "?" : Proposed.label(view) + channel;
    }
    return content instanceof Content.None ? "nothing fitted" : "not known";
  }

  /** Kind and serial of a part. */
  String named(Content content) {
    PartView view = content instanceof Content.Part part ? views.get(part.number()) : null;
    return view == null ? content(content) : view.words();
  }

  /** {@code from 2026-02-01 08:00 until 2026-02-10 08:00}, or {@code … on}. */
  String span(Span span) {
    String from = "from " + SiteMoment.shown(span.from(), zone);
    return span.isOpen() ? from + " on" : from + " until " + SiteMoment.shown(span.until(), zone);
  }

  String corrected(CorrectionPlan plan) {
    Correction correction = plan.correction();
    String what = Text.capital(Words.usual(correction.slot())) + " " + span(correction.span());
    String instead =
        plan.retired().stream()
            .map(Placed::content)
            .filter(content -> !content.equals(correction.content()))
            .map(this::content)
            .distinct()
            .collect(Collectors.joining(", "));
    return "%s: %s%s."
        .formatted(
            what, content(correction.content()), instead.isEmpty() ? "" : "; not " + instead);
  }
}
