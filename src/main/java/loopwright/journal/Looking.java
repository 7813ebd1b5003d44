package loopwright.journal;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import loopwright.problem.Refused;
import loopwright.time.SiteMoment;
import loopwright.time.TypedMoment;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * From which moment and with what knowledge a reader looks, as the page's address says it: {@code
 * at} and {@code known}, each a moment as {@link TypedMoment} reads it; {@code known} may also be
 * the number of a journal entry. A minute of {@code known} counts to its end, since the record
 * shows minutes.
 *
 * @param past whether something else than the present is looked at
 * @param at as typed
 * @param known as typed
 * @param shown both times in words
 * @param query both as they stand in an address, {@code &} between; empty for the present
 * @param complaints what could not be read; then the present is looked at
 */
public record Looking(
    Viewpoint viewpoint,
    boolean past,
    String at,
    String known,
    String shown,
    String query,
    List<String> complaints) {
  private static final int MOST_TYPED = 40;

  public Looking {
    complaints = List.copyOf(complaints);
  }

  /** The status with which the page is answered. */
  public int status() {
    return complaints.isEmpty() ? 200 : 422;
  }

  /**
   * @param zone of the site
   */
  public static Looking of(Context http, DSLContext sql, ZoneId zone, Instant now) {
    return of(http, sql, zone, now, new Fields("at", "known"));
  }

  /** The same where a page looks from several moments, each with names of its own. */
  public static Looking of(Context http, DSLContext sql, ZoneId zone, Instant now, Fields fields) {
    return new Reader(sql, zone, now, fields, new ArrayList<>())
        .read(typed(http, fields.at()), typed(http, fields.known()));
  }

  /** The names under which the two times stand in the address. */
  public record Fields(String at, String known) {}

  private static String typed(Context http, String name) {
    String typed = http.queryParam(name);
    String text = typed == null ? "" : typed.strip();
    return text.length() > MOST_TYPED ? text.substring(0, MOST_TYPED) : text;
  }

  private record Reader(
      DSLContext sql, ZoneId zone, Instant now, Fields fields, List<String> complaints) {
    Looking read(String at, String known) {
      Instant moment = at.isEmpty() ? now : complaining(() -> moment(at));
      @Nullable Long entry = known.isEmpty() ? null : complaining(() -> entry(known));
      if (moment == null || !complaints.isEmpty()) {
        return new Looking(Viewpoint.of(now), false, at, known, words(now, "now"), "", complaints);
      }
      return new Looking(
          new Viewpoint(moment, entry),
          !at.isEmpty() || !known.isEmpty(),
          at,
          known,
          words(moment, entry == null ? "now" : words(known, entry)),
          query(fields, at, known),
          List.of());
    }

    private <T> @Nullable T complaining(Supplier<T> reading) {
      try {
        return reading.get();
      } catch (Refused | IllegalArgumentException wrong) {
        complaints.add(String.valueOf(wrong.getMessage()));
        return null;
      }
    }

    private Instant moment(String typed) {
      Instant moment = TypedMoment.read(typed, zone);
      if (moment.isAfter(now)) {
        throw new Refused(JournalProblem.LOOKS_AHEAD, SiteMoment.shown(moment, zone));
      }
      return moment;
    }

    private long entry(String typed) {
      if (isNumber(typed)) {
        long head = JournalStore.head(sql);
        if (Long.parseLong(typed) > head) {
          throw new Refused(JournalProblem.NO_ENTRY, typed, head);
        }
        return Long.parseLong(typed);
      }
      Instant moment = moment(typed);
      Instant end = TypedMoment.isMinute(typed) ? moment.plusSeconds(60).minusNanos(1) : moment;
      return KnownTimeStore.entryBy(sql, end);
    }

    private static boolean isNumber(String typed) {
      return typed.matches("\\d{1,12}");
    }

    private String words(String typed, long entry) {
      String upTo = entry == 0 ? "before the first entry of the record" : "up to entry " + entry;
      return isNumber(typed)
          ? upTo
          : "on " + SiteMoment.shown(TypedMoment.read(typed, zone), zone) + " (" + upTo + ")";
    }

    private String words(Instant moment, String known) {
      return "as of %s at the site · as known %s".formatted(SiteMoment.shown(moment, zone), known);
    }
  }

  private static String query(Fields fields, String at, String known) {
    List<String> parts = new ArrayList<>();
    if (!at.isEmpty()) {
      parts.add(fields.at() + "=" + URLEncoder.encode(at, StandardCharsets.UTF_8));
    }
    if (!known.isEmpty()) {
      parts.add(fields.known() + "=" + URLEncoder.encode(known, StandardCharsets.UTF_8));
    }
    return String.join("&", parts);
  }
}
