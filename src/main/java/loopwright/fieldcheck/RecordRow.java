package loopwright.fieldcheck;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.matching.Verdict;
import loopwright.time.SiteMoment;
import org.jspecify.annotations.Nullable;

/**
 * A reading or a check in a list.
 *
 * @param href of its own page; null where the line says all of it
 */
record RecordRow(
    Instant at,
    String when,
    String kind,
    @Nullable String href,
    String verdict,
    String said,
    String by) {

  /** Newest first. */
  static List<RecordRow> of(
      List<GapReading> readings, List<FieldCheck> checks, ZoneId zone, int most) {
    return Stream.concat(
            readings.stream().map(reading -> of(reading, zone)),
            checks.stream().map(check -> of(check, zone)))
        .sorted(Comparator.comparing(RecordRow::at).reversed())
        .limit(most)
        .toList();
  }

  private static RecordRow of(GapReading reading, ZoneId zone) {
    List<String> words = new ArrayList<>();
    words.add(reading.volts() + " at the " + reading.tappedAt().label());
    words.add("machine " + reading.state().label());
    if (reading.warmth() != Warmth.NOT_RECORDED) {
      words.add(reading.warmth().word());
    }
    Stream.of(reading.rotorPosition(), reading.note())
        .filter(text -> !text.isEmpty())
        .forEach(words::add);
    return new RecordRow(
        reading.readAt(),
        SiteMoment.shown(reading.readAt(), zone),
        reading.origin().equals("imported") ? "gap reading, imported" : "gap reading",
        null,
        Verdict.NOT_JUDGED.word(),
        String.join(", ", words),
        reading.readBy());
  }

  private static RecordRow of(FieldCheck check, ZoneId zone) {
    String told =
        check.said().stream()
            .filter(said -> said.verdict() == Verdict.ATTENTION)
            .map(said -> said.about() + ": " + said.sentence())
            .collect(Collectors.joining(" "));
    return new RecordRow(
        check.takenAt(),
        SiteMoment.shown(check.takenAt(), zone),
        check.kind().word(),
        check.href(),
        check.verdict(),
        told.isEmpty() ? typed(check) : told,
        check.takenBy());
  }

  private static String typed(FieldCheck check) {
    return check.entries().all().stream()
        .filter(entered -> entered.row() == 0)
        .limit(3)
        .map(entered -> check.kind().label(entered.item()) + " " + entered.shown())
        .collect(Collectors.joining(", "));
  }
}
