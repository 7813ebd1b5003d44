package loopwright.spare;

import java.time.InstantSource;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.loop.Chain;
import loopwright.loop.Content;
import loopwright.loop.Judging;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.matching.Finding;
import org.jooq.DSLContext;

/** What the rules say of a loop with another part in one slot and everything else as it is. */
final class Proof {
  private static final int CHARACTERS = 8_000;

  private final Judging judging;
  private final InstantSource clock;

  Proof(Judging judging, InstantSource clock) {
    this.judging = judging;
    this.clock = clock;
  }

  /**
   * How it came out.
   *
   * @param verdict in its word
   * @param against why the loop could not be left so, in sentences; empty when it could
   * @param text every finding, one a line
   */
  record Said(String verdict, String against, String text) {
    boolean matches() {
      return against.isEmpty();
    }
  }

  Said of(DSLContext sql, Judging.Subject subject, Chain chain) {
    return said(judging.judge(sql, subject, chain, clock.instant()));
  }

  /** The loop as it was judged, with that part in that slot. */
  Said with(DSLContext sql, Judging.Judged now, Slot slot, long component) {
    Map<Slot, Content> slots = new EnumMap<>(Slot.class);
    for (Placed placed : now.chain()) {
      slots.put(placed.slot(), placed.content());
    }
    slots.put(slot, new Content.Part(component));
    return of(sql, now.subject(), new Chain(slots));
  }

  private static Said said(Judging.Judged judged) {
    String text =
        judged.judgement().findings().stream()
            .map(
                finding ->
                    finding.rule().name()
                        + ": "
                        + finding.verdict().word()
                        + ". "
                        + finding.message())
            .collect(Collectors.joining("\n"));
    List<Finding> against = judged.judgement().againstAssembly();
    return new Said(
        judged.judgement().verdict().word(),
        against.stream().map(Finding::sentences).collect(Collectors.joining(" ")),
        text.length() <= CHARACTERS ? text : text.substring(0, CHARACTERS));
  }
}
