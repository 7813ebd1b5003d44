package loopwright.loop;

import java.time.Instant;
import java.util.List;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What another feature tells in a loop's history. */
public interface LoopStory {

  /**
   * Something that was done at the loop.
   *
   * @param kind in a few words
   * @param verdict null where nothing was judged
   * @param href of its own page; null where the line says all of it
   */
  record Told(
      Instant at,
      String kind,
      @Nullable String verdict,
      String note,
      String by,
      @Nullable String href) {}

  /** The newest of them, as seen from the loop's viewpoint. */
  List<Told> story(DSLContext sql, LoopPanel.Loop loop, int most);
}
