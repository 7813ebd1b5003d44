package loopwright.importing;

import java.time.Instant;
import loopwright.loop.Content;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.time.Span;
import org.jspecify.annotations.Nullable;

/**
 * Something in a slot over a range of moments, recorded or told by a row.
 *
 * @param point below zero while it is planned; so is the component in the content
 * @param row that tells it; null for what is recorded, or follows from another row
 * @param recorded the belief held now; null for what is new
 */
record Stay(
    long point,
    Slot slot,
    Content content,
    Span span,
    PlacementRows.@Nullable Draft row,
    @Nullable Placed recorded) {

  static Stay of(Placed placed) {
    return new Stay(placed.point(), placed.slot(), placed.content(), placed.span(), null, placed);
  }

  Stay until(Instant end) {
    return new Stay(point, slot, content, new Span(span.from(), end), row, recorded);
  }

  /** A recorded belief whose end has been moved. */
  boolean isShortened() {
    return recorded != null && !recorded.span().equals(span);
  }

  Placed placed(Ids ids) {
    return new Placed(0, ids.real(point), slot, real(content, ids), span, source());
  }

  private String source() {
    if (recorded != null) {
      return recorded.source();
    }
    return row == null ? "displaced" : "import";
  }

  static Content real(Content content, Ids ids) {
    return content instanceof Content.Part part
        ? new Content.Part(ids.real(part.number()), part.channel())
        : content;
  }
}
