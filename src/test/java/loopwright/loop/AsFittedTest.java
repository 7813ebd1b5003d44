package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loopwright.matching.AlloyGroup;
import loopwright.matching.Alloys;
import loopwright.matching.Calibration;
import loopwright.time.Span;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When a curve taken elsewhere counts for a loop, and when it no longer does. */
class AsFittedTest {
  private static final Instant BENCH = Instant.parse("2026-01-10T09:00:00Z");
  private static final Instant FITTED = Instant.parse("2026-02-01T09:00:00Z");
  private static final String SET = "probe:1/path-1:2/driver:3";
  private static final Alloys GROUPS =
      Alloys.of(List.of(new AlloyGroup("low alloy", true, 1.0, "", List.of("4140", "42CrMo4"))));

  private static List<Placed> fitted(Instant at) {
    return PartSet.read(SET).orElseThrow().chain().stream()
        .map(placed -> placed.during(Span.from(at)))
        .toList();
  }

  private static AsLeftFacts.AsLeft curve(
      String set, Instant at, boolean here, String alloy, String... reservations) {
    return new AsLeftFacts.AsLeft(
        1,
        set,
        LocalDate.parse("2026-01-10"),
        at,
        here,
        Calibration.Outcome.CONFORMS,
        alloy,
        7.87,
        List.of(reservations));
  }

  private static Calibration judged(String shaft, PartsSince since, AsLeftFacts.AsLeft... curves) {
    return new AsFitted(fitted(FITTED), shaft, GROUPS, Map.of(), since)
        .calibration(List.of(curves));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      textBlock =
          """
      shaft of the target's alloy    | SET                             | 4140    | 4140    | -               | -
      written otherwise              | SET                             | 41-40   | 4140    | -               | -
      of one group                   | SET                             | 42CrMo4 | 4140    | -               | -
      another alloy                  | SET                             | 17-4PH  | 4140    | -               | its target was of 4140, the shaft is of 17-4PH
      shaft's alloy not recorded     | SET                             | ''      | 4140    | -               | alloy of this shaft is not recorded
      target's alloy not recorded    | SET                             | 4140    | ''      | -               | alloy of its target is not recorded
      another cable                  | probe:1/path-1:9/driver:3       | 4140    | 4140    | the present path-1 | -
      another channel, one cable more| probe:1/path-1:2/path-2:8/driver:3 | 4140 | 4140    | an empty path-2 | -
      """)
  void aBenchCurveOfExactlyThisSetCounts(
      String name, String set, String shaft, String alloy, String change, String reservation) {
    Calibration judged =
        judged(
            shaft, PartsSince.NOTHING, curve(set.equals("SET") ? SET : set, BENCH, false, alloy));
    assertThat(judged.belongs()).isEqualTo(change == null && reservation == null);
    assertThat(judged.elsewhere()).isEqualTo(change == null);
    assertThat(judged.changedSince())
        .hasSize(change == null ? 0 : 1)
        .allSatisfy(said -> assertThat(said).contains(change));
    assertThat(judged.reservations())
        .hasSize(reservation == null ? 0 : 1)
        .allSatisfy(said -> assertThat(said).contains(reservation));
  }

  @ParameterizedTest(name = "length changed on {0}: voids {1}")
  @CsvSource({"2026-01-09, false", "2026-01-20, true"})
  void aCableReTerminatedSinceIsAnotherOne(LocalDate on, boolean voids) {
    PartsSince since =
        new PartsSince(Map.of(2L, List.of(Instant.parse(on + "T12:00:00Z"))), Map.of());
    for (boolean here : new boolean[] {true, false}) {
      Instant taken = here ? FITTED.plusSeconds(60) : BENCH;
      List<Instant> changes = here ? List.of(taken.plusSeconds(voids ? 9 : -9)) : null;
      PartsSince asked = here ? new PartsSince(Map.of(2L, changes), Map.of()) : since;
      Calibration judged = judged("4140", asked, curve(SET, taken, here, "4140"));
      assertThat(judged.changedSince()).as("here: " + here).hasSize(voids ? 1 : 0);
    }
  }

  /** Out and back again: an exchange, even though it is the same part in the end. */
  @ParameterizedTest(name = "also fitted from {0}: voids {1}")
  @CsvSource({"2026-01-05, false", "2026-01-15, true", "2026-02-03, false"})
  void aPartThatWasFittedElsewhereMeanwhileVoidsIt(LocalDate on, boolean voids) {
    Instant from = Instant.parse(on + "T00:00:00Z");
    List<Placed> stays = new ArrayList<>(fitted(FITTED));
    stays.add(
        Placed.fresh(
            7, Slot.PATH_1, new Content.Part(2), new Span(from, from.plusSeconds(60)), "survey"));
    PartsSince since = PartsSince.of(Map.of(), stays);
    Calibration judged = judged("4140", since, curve(SET, BENCH, false, "4140"));
    assertThat(judged.belongs()).isEqualTo(!voids);
    if (voids) {
      assertThat(judged.changedSince().get(0)).contains("came back");
    }
  }

  @Test
  void anotherProfileIsToldAndTheLoopsOwnCurveGoesBeforeOneThatDoesNotCount() {
    AsLeftFacts.AsLeft own = curve(SET, FITTED.plusSeconds(60), true, "4140");
    AsLeftFacts.AsLeft bench =
        curve(SET, FITTED.plusSeconds(120), false, "4140", "it was judged by profile B");
    assertThat(judged("4140", PartsSince.NOTHING, bench).reservations())
        .containsExactly("it was judged by profile B");
    assertThat(judged("4140", PartsSince.NOTHING, bench, own).elsewhere()).isFalse();
    AsLeftFacts.AsLeft good = curve(SET, FITTED.plusSeconds(120), false, "4140");
    assertThat(judged("4140", PartsSince.NOTHING, good, own).elsewhere()).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "probe:1/driver:2",
        "probe:1/path-1:7/driver:31#2",
        "probe:1/path-1:7/path-2:8/driver:31"
      })
  void aSetIsReadAsItIsNamed(String fingerprint) {
    assertThat(PartSet.read(fingerprint).orElseThrow().fingerprint()).isEqualTo(fingerprint);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''",
        "probe:1",
        "driver:2",
        "probe:1/driver:1",
        "probe:0/driver:2",
        "probe:1/path-9:3/driver:2",
        "probe:1/probe:3/driver:2",
        "probe:1/driver:2/",
        "probe:-1/driver:2",
        "probe:1/driver:99999999999999999999"
      })
  void whatNamesNoSetIsNone(String fingerprint) {
    assertThat(PartSet.read(fingerprint)).isEmpty();
  }
}
