package loopwright.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Setup;
import loopwright.calibration.Stage;
import loopwright.drift.DriftSeries.Entry;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Which calibrations a line is drawn through, and where it begins anew. */
class DriftSeriesTest {
  private static final Instant FIRST = Instant.parse("2020-03-01T08:00:00Z");
  private static final Duration YEAR = Duration.ofDays(365);

  private final List<Calibrated> all = new ArrayList<>();

  private void taken(Stage stage, Instant at, @Nullable Double asf, String parts) {
    int id = all.size() + 1;
    OptionalDouble value = asf == null ? OptionalDouble.empty() : OptionalDouble.of(asf);
    all.add(
        new Calibrated(
            id,
            "C-" + id,
            parts,
            Setup.FITTED,
            7L,
            "V1X",
            stage,
            at,
            "Technician",
            "electrical",
            "",
            asf == null ? null : asf > 7.4 ? "conforms" : "does not conform",
            asf == null ? "dead" : null,
            "1",
            1L,
            new Calibrated.Numbers(
                value, value, value, OptionalDouble.empty(), OptionalDouble.empty(), null),
            List.of(),
            "entered",
            "Technician",
            at,
            "outage"));
  }

  private List<Entry> series(Long... superseded) {
    return DriftSeries.of(all, Set.of(superseded));
  }

  private static List<String> counted(List<Entry> entries) {
    return DriftSeries.counted(entries).stream()
        .map(entry -> entry.calibrated().number() + " level " + entry.level())
        .toList();
  }

  @Test
  void aJobWhereNothingWasTouchedIsOneObservation() {
    taken(Stage.NOTHING_TOUCHED, FIRST, 7.9, "a");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR), 7.8, "a");
    taken(Stage.AS_LEFT, FIRST.plus(YEAR).plus(Duration.ofHours(3)), 7.8, "a");
    assertThat(counted(series())).containsExactly("C-1 level 0", "C-2 level 0");
    assertThat(series().get(2).why()).contains("C-2", "once");
    assertThat(DriftSeries.foundWithin(series())).containsExactly(true, true);
  }

  @Test
  void whatWasLeftBeginsAnotherLevelAndTheNextAsFoundBelongsToIt() {
    taken(Stage.AS_LEFT, FIRST, 7.87, "a");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR), 7.70, "a");
    taken(Stage.AS_LEFT, FIRST.plus(YEAR).plus(Duration.ofHours(3)), 7.87, "a");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR).plus(YEAR), 7.72, "a");
    taken(Stage.AS_LEFT, FIRST.plus(YEAR).plus(YEAR), 7.90, "b");
    assertThat(counted(series()))
        .containsExactly("C-1 level 0", "C-2 level 0", "C-3 level 1", "C-4 level 1", "C-5 level 0");
  }

  @Test
  void sameFiguresAYearLaterAreAnotherObservation() {
    taken(Stage.AS_FOUND, FIRST, 7.8, "a");
    taken(Stage.AS_LEFT, FIRST.plus(YEAR), 7.8, "a");
    assertThat(counted(series())).containsExactly("C-1 level 0", "C-2 level 1");
  }

  @Test
  void supersededAndEnteredAgainDoNotCountAndStayListed() {
    taken(Stage.AS_FOUND, FIRST, 7.1, "a");
    taken(Stage.AS_FOUND, FIRST, 7.8, "a");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR), 7.0, "a");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR).plusSeconds(60), 7.7, "a");
    List<Entry> entries = series(3L);
    assertThat(entries).hasSize(4);
    assertThat(counted(entries)).containsExactly("C-2 level 0", "C-4 level 0");
    assertThat(entries.get(0).why()).contains("entered again as C-2");
    assertThat(entries.get(2).why()).contains("superseded");
    assertThat(DriftSeries.foundWithin(entries)).containsExactly(true, true);
  }

  @Test
  void aLoopOfWhichNoCurveCameWasNotWithinItsLimits() {
    taken(Stage.AS_FOUND, FIRST, 7.8, "a");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR), null, "a");
    taken(Stage.AS_LEFT, FIRST.plus(YEAR), 7.8, "b");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR).plus(YEAR), 7.0, "b");
    taken(Stage.AS_FOUND, FIRST.plus(YEAR).plus(YEAR).plus(Duration.ofHours(2)), 7.8, "b");
    assertThat(DriftSeries.foundWithin(series()))
        .as("of one shift the worst")
        .containsExactly(true, false, false);
  }
}
