package loopwright.db;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Texts in capitals, as key columns hold them so that a tag is found however it is typed. */
public final class Capitals {
  private static final int AT_ONCE = 300;

  private Capitals() {}

  /**
   * As the database itself writes it: engines agree on the letters A to Z only, and the key columns
   * are checked against the engine's own capitals.
   */
  public static String of(DSLContext sql, String text) {
    return isPlain(text)
        ? text.toUpperCase(Locale.ROOT)
        : sql.select(DSL.upper(DSL.val(text))).fetchSingle().value1();
  }

  private static boolean isPlain(String text) {
    return text.chars().allMatch(c -> c < 128);
  }

  /** The same of many, asked of the database some hundreds at a time. */
  public static Map<String, String> of(DSLContext sql, Collection<String> texts) {
    Map<String, String> capitals = new HashMap<>();
    List<String> others = new ArrayList<>();
    for (String text : texts) {
      if (isPlain(text)) {
        capitals.put(text, text.toUpperCase(Locale.ROOT));
      } else {
        others.add(text);
      }
    }
    for (List<String> some : Chunks.of(others, AT_ONCE)) {
      Record row =
          sql.select(some.stream().map(each -> DSL.upper(DSL.val(each))).toList()).fetchSingle();
      for (int i = 0; i < some.size(); i++) {
        capitals.put(some.get(i), row.get(i, String.class));
      }
    }
    return capitals;
  }
}
