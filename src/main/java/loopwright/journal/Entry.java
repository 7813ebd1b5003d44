package loopwright.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Act;
import loopwright.db.Fact;
import org.erdtman.jcs.JsonCanonicalizer;

/**
 * One journal entry as canonical JSON (RFC 8785). All numbers are strings, so that no reader rounds
 * them. The format number stands inside: old entries keep their format for ever.
 */
final class Entry {
  static final String FORMAT = "1";
  private static final ObjectMapper JSON = new ObjectMapper();

  private Entry() {}

  static byte[] canonical(
      long seq, long changeId, Act act, Instant at, int part, boolean last, List<Fact> facts) {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("format", FORMAT);
    entry.put("seq", Long.toString(seq));
    entry.put("change", Long.toString(changeId));
    entry.put("part", Integer.toString(part));
    entry.put("last", last);
    entry.put("at", at.toString());
    entry.put("actor", actor(act));
    entry.put("what", act.what());
    entry.put("reason", act.reason());
    List<Object> all = new ArrayList<>();
    for (Fact fact : facts) {
      all.add(fact(fact));
    }
    entry.put("facts", all);
    return canonical(entry);
  }

  private static Map<String, Object> actor(Act act) {
    Map<String, Object> actor = new LinkedHashMap<>();
    if (act.actorId() != null) {
      actor.put("id", act.actorId().toString());
    }
    actor.put("name", act.actorName());
    actor.put("role", act.actorRole());
    return actor;
  }

  private static Map<String, Object> fact(Fact fact) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("op", fact.operation());
    out.put("table", fact.table());
    out.put("key", fact.key());
    if (!fact.before().isEmpty()) {
      out.put("before", fact.before());
    }
    if (!fact.rows().isEmpty()) {
      out.put("rows", fact.rows());
    }
    if (!fact.hash().isEmpty()) {
      out.put("hash", fact.hash());
    }
    return out;
  }

  /** RFC 8785 by the reference implementation. */
  static byte[] canonical(Map<String, Object> entry) {
    try {
      return new JsonCanonicalizer(JSON.writeValueAsString(entry)).getEncodedUTF8();
    } catch (JsonProcessingException cannotHappen) {
      throw new IllegalStateException(cannotHappen);
    } catch (IOException notJson) {
      throw new IllegalArgumentException("A text in the entry can't be written as JSON.", notJson);
    }
  }
}
