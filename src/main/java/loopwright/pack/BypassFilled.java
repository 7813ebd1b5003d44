package loopwright.pack;

import java.time.Instant;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import loopwright.bypass.NewBypass;
import loopwright.bypass.Removal;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * A bypass as a sheet tells it.
 *
 * @param removal null while it is on
 */
record BypassFilled(NewBypass bypass, @Nullable Removal removal) {

  /** Reads it; what is missing or can't be is complained of at its cell. */
  static Optional<BypassFilled> read(
      FilledLoop loop, long point, long outage, ZoneId zone, Instant now) {
    Map<BypassPart, String> texts = new EnumMap<>(BypassPart.class);
    Map<BypassPart, Instant> moments = new EnumMap<>(BypassPart.class);
    for (BypassPart part : BypassPart.values()) {
      if (part.item() == Item.BYPASS) {
        String text = loop.text(Item.BYPASS, part.word(), Column.AS_LEFT);
        if (!text.isEmpty()) {
          texts.put(part, text);
        }
      } else {
        loop.moment(Item.BYPASS_TIME, part.word(), Column.AS_LEFT, zone)
            .ifPresent(moment -> moments.put(part, moment));
      }
    }
    if (texts.isEmpty() && moments.isEmpty()) {
      return Optional.empty();
    }
    return new Cells(loop, texts, moments).bypass(point, outage, now);
  }

  private static FilledLoop.Place place(FilledLoop loop, BypassPart part) {
    return loop.place(part.item(), part.word(), Column.AS_LEFT);
  }

  /** What was typed, on its way to a bypass. */
  private record Cells(
      FilledLoop loop, Map<BypassPart, String> texts, Map<BypassPart, Instant> moments) {

    Optional<BypassFilled> bypass(long point, long outage, Instant now) {
      boolean off = has(BypassPart.OFF) || has(BypassPart.OFF_BY);
      boolean whole = true;
      for (BypassPart part : BypassPart.values()) {
        boolean ofRemoval = part == BypassPart.OFF || part == BypassPart.OFF_BY;
        if (!has(part) && (off || !ofRemoval)) {
          loop.complain(
              place(loop, part), PackProblem.BYPASS_LACKS, loop.sheet().tag(), part.word());
          whole = false;
        }
      }
      return whole && inOrder(off, now) ? made(point, outage, off) : Optional.empty();
    }

    private boolean has(BypassPart part) {
      return texts.containsKey(part) || moments.containsKey(part);
    }

    private String text(BypassPart part) {
      return texts.getOrDefault(part, "");
    }

    private Instant moment(BypassPart part) {
      return moments.getOrDefault(part, Instant.EPOCH);
    }

    private boolean inOrder(boolean off, Instant now) {
      BypassPart last = off ? BypassPart.OFF : BypassPart.ON;
      if (moment(last).isAfter(now)) {
        return complained(last, "This moment lies in the future. Check day and clock.");
      }
      return !off
          || !moment(BypassPart.OFF).isBefore(moment(BypassPart.ON))
          || complained(
              BypassPart.OFF, "It would be off before it was on. Check both days and times.");
    }

    private boolean complained(BypassPart part, String sentence) {
      loop.complain(place(loop, part), PackProblem.READING, sentence);
      return false;
    }

    private Optional<BypassFilled> made(long point, long outage, boolean off) {
      try {
        NewBypass bypass =
            new NewBypass(
                point,
                outage,
                text(BypassPart.NUMBER),
                text(BypassPart.FUNCTION),
                text(BypassPart.VOTE),
                text(BypassPart.AUTHORISER),
                text(BypassPart.OWNER),
                moment(BypassPart.ON),
                moment(BypassPart.EXPIRES));
        return Optional.of(
            new BypassFilled(
                bypass, off ? new Removal(moment(BypassPart.OFF), text(BypassPart.OFF_BY)) : null));
      } catch (Refused unfit) {
        complained(BypassPart.EXPIRES, unfit.getMessage());
        return Optional.empty();
      }
    }
  }
}
