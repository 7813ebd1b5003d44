package loopwright.loop;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import loopwright.time.TypedMoment;
import org.jspecify.annotations.Nullable;

/** Stays as lines of a table. */
final class StayLines {
  private StayLines() {}

  /**
   * A stay, in words.
   *
   * @param part number of the part, to its page; null for nothing and for nobody knows what
   * @param until null while it lasts
   * @param entered by whom, when and why; empty for what is not on record yet
   * @param correctHref the form that corrects it, filled in
   */
  record Line(
      String slot,
      @Nullable Long part,
      String what,
      String from,
      @Nullable String until,
      String source,
      String entered,
      String correctHref) {}

  /** In chain order, in each slot the latest first. */
  static List<Line> of(
      List<Placed> stays, StayWords words, Map<Long, PlacementHistory.Entered> made, String href) {
    return stays.stream()
        .sorted(
            Comparator.comparing(Placed::slot)
                .thenComparing(placed -> placed.span().from(), Comparator.reverseOrder()))
        .map(stay -> line(stay, words, made.get(stay.placement()), href))
        .toList();
  }

  private static Line line(
      Placed stay, StayWords words, PlacementHistory.@Nullable Entered made, String href) {
    Span span = stay.span();
    return new Line(
        Words.usual(stay.slot()),
        stay.content() instanceof Content.Part part ? (Long) part.number() : null,
        words.content(stay.content()),
        SiteMoment.shown(span.from(), words.zone()),
        span.isOpen() ? null : SiteMoment.shown(span.until(), words.zone()),
        stay.isNew() && stay.source().equals("correction") ? "as corrected" : stay.source(),
        made == null
            ? ""
            : "%s on %s: %s"
                .formatted(made.by(), SiteMoment.shown(made.at(), words.zone()), made.reason()),
        href + "/correction?" + query(stay.slot(), span, words));
  }

  /** The fields of the form for that slot and range. */
  static String query(Slot slot, Span span, StayWords words) {
    String until = span.isOpen() ? "" : TypedMoment.text(span.until(), words.zone());
    return "slot=%s&what=part&from=%s&until=%s"
        .formatted(
            slot.word(), encoded(TypedMoment.text(span.from(), words.zone())), encoded(until));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
