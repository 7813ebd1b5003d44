package loopwright.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Act;
import loopwright.db.Fact;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * An entry as its canonical bytes say it. Each format that was ever written keeps its reader here,
 * so that old entries show their difference for ever.
 *
 * @param part counted from 1 within the change
 * @param last whether the change is complete with it
 */
record EntryBody(
    long seq, long change, int part, boolean last, Instant at, Act act, List<Fact> facts) {
  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * @param seq the number under which it is stored, for complaints
   * @throws IOException if it is no entry at all
   * @throws Refused {@link JournalProblem#UNKNOWN_FORMAT}
   */
  static EntryBody read(long seq, byte[] body) throws IOException {
    JsonNode entry = JSON.readTree(body);
    String format = text(entry, "format");
    if (!format.equals(Entry.FORMAT)) {
      throw new Refused(JournalProblem.UNKNOWN_FORMAT, seq, format);
    }
    return format1(entry);
  }

  private static EntryBody format1(JsonNode entry) throws IOException {
    try {
      return new EntryBody(
          Long.parseLong(text(entry, "seq")),
          Long.parseLong(text(entry, "change")),
          Integer.parseInt(text(entry, "part")),
          needed(entry, "last").booleanValue(),
          Instant.parse(text(entry, "at")),
          act(entry),
          facts(needed(entry, "facts")));
    } catch (RuntimeException malformed) {
      throw new IOException("a field does not read: " + malformed.getMessage(), malformed);
    }
  }

  private static Act act(JsonNode entry) throws IOException {
    JsonNode actor = needed(entry, "actor");
    return new Act(
        actor.has("id") ? Long.valueOf(text(actor, "id")) : null,
        text(actor, "name"),
        text(actor, "role"),
        text(entry, "what"),
        text(entry, "reason"));
  }

  private static List<Fact> facts(JsonNode all) throws IOException {
    List<Fact> facts = new ArrayList<>(all.size());
    for (JsonNode fact : all) {
      List<Map<String, String>> rows = new ArrayList<>();
      for (JsonNode row : fact.path("rows")) {
        rows.add(texts(row));
      }
      facts.add(
          new Fact(
              text(fact, "op"),
              text(fact, "table"),
              text(fact, "key"),
              texts(fact.path("before")),
              rows,
              fact.path("hash").asText("")));
    }
    return facts;
  }

  private static Map<String, String> texts(JsonNode object) {
    Map<String, String> texts = new LinkedHashMap<>();
    object.properties().forEach(entry -> texts.put(entry.getKey(), entry.getValue().textValue()));
    return texts;
  }

  private static JsonNode needed(JsonNode object, String name) throws IOException {
    @Nullable JsonNode found = object.get(name);
    if (found == null) {
      throw new IOException("it has no \"" + name + "\"");
    }
    return found;
  }

  private static String text(JsonNode object, String name) throws IOException {
    JsonNode found = needed(object, name);
    if (!found.isTextual()) {
      throw new IOException("\"" + name + "\" is no text");
    }
    return found.textValue();
  }
}
