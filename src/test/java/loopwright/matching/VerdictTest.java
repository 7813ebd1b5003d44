package loopwright.matching;

import static loopwright.matching.Verdict.ATTENTION;
import static loopwright.matching.Verdict.MATCHES;
import static loopwright.matching.Verdict.NOT_JUDGED;
import static loopwright.matching.Verdict.REFUSED;
import static loopwright.matching.Verdict.UNKNOWN;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class VerdictTest {

  @Test
  void isWorstInTheOrderRefusedUnknownAttentionMatches() {
    assertThat(Verdict.worst(List.of(MATCHES, ATTENTION, UNKNOWN, REFUSED))).isEqualTo(REFUSED);
    assertThat(Verdict.worst(List.of(MATCHES, ATTENTION, UNKNOWN))).isEqualTo(UNKNOWN);
    assertThat(Verdict.worst(List.of(MATCHES, ATTENTION))).isEqualTo(ATTENTION);
    assertThat(UNKNOWN.isWorseThan(ATTENTION)).isTrue();
    assertThat(MATCHES.isWorseThan(MATCHES)).isFalse();
  }

  @Test
  void notJudgedNeverWorsens() {
    assertThat(Verdict.worst(List.of(NOT_JUDGED, MATCHES))).isEqualTo(MATCHES);
    assertThat(Verdict.worst(List.of())).isEqualTo(NOT_JUDGED);
  }

  @Test
  void speaksTheWordsOfTheTrade() {
    assertThat(List.of(Verdict.values()))
        .extracting(Verdict::word)
        .containsExactly("refused", "unknown", "attention", "matches", "not judged");
  }
}
