package loopwright.field;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import loopwright.pack.FieldReturns;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * One loop as a device sends it.
 *
 * @param uuid given by the device once, however often it is sent
 * @param identity of the pack's revision it was filled in on
 * @param asOf when the device last heard how things stood, by our clock
 * @param typedAt when it was put into the outbox, by the device's clock
 * @param confirmed how many questions about the readings the device asked, and the person confirmed
 */
record SentEntry(
    String uuid,
    String tag,
    String identity,
    String asOf,
    String typedAt,
    int confirmed,
    List<FieldReturns.Cell> cells) {
  static final Pattern UUID =
      Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");

  private static final int MOST_CHARACTERS = 200_000;
  private static final int MOST_CELLS = 500;
  private static final int LONGEST_CELL = 2000;
  private static final ObjectMapper JSON =
      JsonMapper.builder().enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES).build();

  /**
   * Reads what was sent.
   *
   * @throws Refused {@link FieldProblem#UNREADABLE}
   */
  static SentEntry read(String body) {
    if (body.length() > MOST_CHARACTERS) {
      throw unreadable("it is too long");
    }
    SentEntry entry = parsed(body);
    entry
        .wrong()
        .ifPresent(
            why -> {
              throw unreadable(why);
            });
    return entry;
  }

  private static Refused unreadable(String why) {
    return new Refused(FieldProblem.UNREADABLE, why);
  }

  /** One that was taken before, as it is kept. */
  static SentEntry kept(String content) {
    return parsed(content);
  }

  private static SentEntry parsed(String body) {
    try {
      SentEntry entry = JSON.readValue(body, SentEntry.class);
      if (entry == null) {
        throw unreadable("it is empty");
      }
      return entry;
    } catch (JsonProcessingException broken) {
      throw unreadable("it is not written as it should be");
    }
  }

  /** What is wrong; the parser leaves what isn't there as null. */
  private Optional<String> wrong() {
    if (missing(uuid) || missing(tag) || missing(identity) || missing(asOf) || missing(typedAt)) {
      return Optional.of("something is missing");
    }
    if (!UUID.matcher(uuid).matches()) {
      return Optional.of("its number is none");
    }
    if (!isMoment(asOf)) {
      return Optional.of("its moment is none");
    }
    if (cells == null || cells.size() > MOST_CELLS) {
      return Optional.of("it has no cells, or too many");
    }
    return cells.stream().flatMap(cell -> wrong(cell).stream()).findFirst();
  }

  private static Optional<String> wrong(FieldReturns.Cell cell) {
    if (missing(cell.line())
        || missing(cell.column())
        || cell.of() == null
        || missing(cell.text())) {
      return Optional.of("a cell is incomplete");
    }
    if (cell.text().length() > LONGEST_CELL) {
      return Optional.of("a cell is too long");
    }
    return FieldReturns.knows(cell)
        ? Optional.empty()
        : Optional.of("there is no cell " + cell.line() + ", " + cell.column());
  }

  private static boolean missing(@Nullable String text) {
    return text == null || text.isBlank();
  }

  private static boolean isMoment(String text) {
    try {
      Instant.parse(text);
      return true;
    } catch (DateTimeException none) {
      return false;
    }
  }

  Instant since() {
    return Instant.parse(asOf);
  }

  /** When it was put into the outbox; empty where a device says no moment. */
  Optional<Instant> typed() {
    return isMoment(typedAt) ? Optional.of(Instant.parse(typedAt)) : Optional.empty();
  }

  FieldReturns.Filled filled(String device) {
    return new FieldReturns.Filled(identity, tag, device, cells);
  }

  String written() {
    try {
      return JSON.writeValueAsString(this);
    } catch (JsonProcessingException cannotHappen) {
      throw new IllegalStateException(cannotHappen);
    }
  }
}
