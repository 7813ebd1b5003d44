package loopwright.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The cause finder against loops that don't follow its law; synthetic. {@link #main} prints the
 * tables of {@code src/docs/cause.md}.
 */
class SimulatedLoopsTest {
  private static final double[] EXTRA = {-1, -0.5, 0.5, 1};

  /** System length in m and tank in F: a weak and a strong effect of length. */
  private enum Driver {
    FIVE_WEAK(5, 1.0e-9),
    FIVE_STRONG(5, 0.62e-9),
    NINE_WEAK(9, 1.0e-9),
    NINE_STRONG(9, 0.75e-9);

    private final double system;
    private final double tank;

    Driver(double system, double tank) {
      this.system = system;
      this.tank = tank;
    }

    Simulated loop(long seed) {
      return new Simulated(system, tank, seed);
    }
  }

  /** Faults, by how often they are drawn. */
  private enum Fault {
    NONE(0.35, Cause.HEALTHY),
    MOVED(0.20, Cause.GAP_MOVED),
    LONG(0.14, Cause.OVER_LENGTH),
    SHORT(0.11, Cause.UNDER_LENGTH),
    WET(0.05, Cause.CONNECTOR),
    LOADED(0.02, Cause.LOADING),
    ALLOY(0.03, Cause.OTHER_ALLOY),
    SUPPLY(0.03, Cause.SUPPLY_LOW),
    REFERENCE(0.04, Cause.METER_ERROR),
    OPEN(0.03, Cause.OPEN_OR_SHORT);

    private final double share;
    private final Cause cause;

    Fault(double share, Cause cause) {
      this.share = share;
      this.cause = cause;
    }

    static Fault drawn(double at) {
      double sum = 0;
      for (Fault fault : values()) {
        sum += fault.share;
        if (at < sum) {
          return fault;
        }
      }
      return OPEN;
    }

    Diagnosis found(Simulated simulated) {
      SimulatedLoop loop = simulated.loop();
      boolean regapped = simulated.chance(0.4);
      return switch (this) {
        case NONE -> simulated.diagnose(simulated.gap(false));
        case MOVED -> simulated.diagnose(simulated.uniform(800, 1750));
        case LONG -> wrongLength(simulated, simulated.chance(0.6) ? 0.5 : 1.0, regapped);
        case SHORT -> wrongLength(simulated, simulated.chance(0.6) ? -0.5 : -1.0, regapped);
        case WET -> {
          loop.with(loop.circuit().withConnector(simulated.uniform(2e-5, 1e-4), 20e-12));
          yield simulated.diagnose(simulated.gap(simulated.chance(0.2)));
        }
        case LOADED -> {
          double factor = simulated.uniform(0.85, 0.97);
          yield simulated.diagnose(simulated.gap(false), factor, factor);
        }
        case ALLOY -> {
          loop.with(loop.circuit().withCoil(8, 0.287, simulated.uniform(0.6, 0.8)));
          yield simulated.diagnose(simulated.gap(regapped));
        }
        case SUPPLY -> {
          loop.clippedAt(simulated.uniform(-11, -8));
          yield simulated.diagnose(simulated.gap(false));
        }
        case REFERENCE -> simulated.diagnose(simulated.gap(false), 1, 1 + (regapped ? 0.1 : -0.1));
        case OPEN -> {
          loop.clippedAt(-0.7);
          yield simulated.diagnose(simulated.gap(false), 1, 0.02);
        }
      };
    }
  }

  private static Diagnosis wrongLength(Simulated simulated, double extra, boolean regapped) {
    simulated.fit(extra);
    return simulated.diagnose(simulated.gap(regapped));
  }

  private static boolean directionIsRight(Diagnosis diagnosis, double extra) {
    double over = diagnosis.probability(Cause.OVER_LENGTH);
    double under = diagnosis.probability(Cause.UNDER_LENGTH);
    double implied =
        diagnosis.impliedLength().metres()
            - diagnosis.situation().systemLength().metres().doubleValue();
    return extra * (over - under) > 0 && extra * implied > 0;
  }

  private static boolean isInside(Diagnosis diagnosis, double metres) {
    ImpliedLength implied = diagnosis.impliedLength();
    return metres >= implied.lowMetres() && metres <= implied.highMetres();
  }

  @Test
  void theDirectionIsAlwaysRightAndTheLengthNearlyAlwaysInside() {
    int inside = 0;
    int all = 0;
    for (Driver driver : Driver.values()) {
      for (double extra : EXTRA) {
        for (boolean regapped : new boolean[] {false, true}) {
          Diagnosis diagnosis = wrongLength(driver.loop(31L * all + 7), extra, regapped);
          assertThat(directionIsRight(diagnosis, extra))
              .as("%s %+.1f m regapped %s", driver, extra, regapped)
              .isTrue();
          inside += isInside(diagnosis, driver.system + extra) ? 1 : 0;
          all++;
        }
      }
    }
    assertThat(inside).isGreaterThanOrEqualTo((int) (0.85 * all));
  }

  /** What is plain comes out first. */
  @Test
  void plainCasesAreTold() {
    for (Driver driver : Driver.values()) {
      assertThat(Fault.NONE.found(driver.loop(3)).first().cause()).isEqualTo(Cause.HEALTHY);
      Simulated moved = driver.loop(4);
      assertThat(moved.diagnose(950).first().cause()).isEqualTo(Cause.GAP_MOVED);
      assertThat(Fault.OPEN.found(driver.loop(5)).first().cause()).isEqualTo(Cause.OPEN_OR_SHORT);
    }
  }

  /** Over faults drawn as often as they are met, the first cause is right as often as it says. */
  @Test
  void statedProbabilitiesAreKept() {
    double stated = 0;
    int right = 0;
    int draws = 80;
    for (int i = 0; i < draws; i++) {
      Drawn drawn = Drawn.of(1000 + i);
      stated += drawn.diagnosis().first().probability();
      right += drawn.isRight() ? 1 : 0;
    }
    assertThat((double) right / draws).isGreaterThan(stated / draws - 0.15);
  }

  private record Drawn(Fault fault, Diagnosis diagnosis) {
    static Drawn of(long seed) {
      Driver driver = Driver.values()[(int) (seed % Driver.values().length)];
      Simulated simulated = driver.loop(seed);
      Fault fault = Fault.drawn(simulated.uniform(0, 1));
      return new Drawn(fault, fault.found(simulated));
    }

    boolean isRight() {
      return diagnosis.first().cause() == fault.cause;
    }
  }

  /** Prints the tables of the documentation. */
  public static void main(String[] args) {
    int draws = args.length > 0 ? Integer.parseInt(args[0]) : 2000;
    List<Drawn> all = new ArrayList<>();
    for (int i = 0; i < draws; i++) {
      all.add(Drawn.of(50_000 + i));
    }
    confusion(all);
    reliability(all);
    lengths();
  }

  private static void confusion(List<Drawn> all) {
    System.out.println("confusion: true fault, draws, first causes");
    for (Fault fault : Fault.values()) {
      Map<Cause, Integer> firsts = new EnumMap<>(Cause.class);
      all.stream()
          .filter(drawn -> drawn.fault() == fault)
          .forEach(drawn -> firsts.merge(drawn.diagnosis().first().cause(), 1, Integer::sum));
      int sum = firsts.values().stream().mapToInt(Integer::intValue).sum();
      System.out.println(fault.cause.label() + " " + sum + " " + firsts);
    }
  }

  private static void reliability(List<Drawn> all) {
    System.out.println("reliability of the first cause: stated, draws, mean stated, right");
    double[] edges = {0, 0.3, 0.5, 0.7, 0.8, 0.9, 1.01};
    for (int i = 1; i < edges.length; i++) {
      double from = edges[i - 1];
      double to = edges[i];
      List<Drawn> bin =
          all.stream()
              .filter(d -> d.diagnosis().first().probability() >= from)
              .filter(d -> d.diagnosis().first().probability() < to)
              .toList();
      System.out.printf(
          Locale.ROOT,
          "%.2f–%.2f %d %.2f %.2f%n",
          from,
          to,
          bin.size(),
          bin.stream().mapToDouble(d -> d.diagnosis().first().probability()).average().orElse(0),
          bin.stream().mapToDouble(d -> d.isRight() ? 1 : 0).average().orElse(0));
    }
  }

  private static void lengths() {
    System.out.println("lengths: driver extra regapped | direction first inside likeliestLength");
    int repeats = 50;
    for (Driver driver : Driver.values()) {
      for (double extra : EXTRA) {
        for (boolean regapped : new boolean[] {false, true}) {
          int direction = 0;
          int first = 0;
          int inside = 0;
          int length = 0;
          for (int i = 0; i < repeats; i++) {
            Diagnosis d = wrongLength(driver.loop(90_000 + i), extra, regapped);
            direction += directionIsRight(d, extra) ? 1 : 0;
            first +=
                d.first().cause() == (extra > 0 ? Cause.OVER_LENGTH : Cause.UNDER_LENGTH) ? 1 : 0;
            inside += isInside(d, driver.system + extra) ? 1 : 0;
            length +=
                d.lengthProbabilities().entrySet().stream()
                            .filter(e -> Math.abs(e.getKey().doubleValue() - driver.system) > 0.1)
                            .max(Map.Entry.comparingByValue())
                            .orElseThrow()
                            .getKey()
                            .doubleValue()
                        == driver.system + extra
                    ? 1
                    : 0;
          }
          System.out.printf(
              Locale.ROOT,
              "%s %+.1f %s | %d %d %d %d of %d%n",
              driver,
              extra,
              regapped,
              direction,
              first,
              inside,
              length,
              repeats);
        }
      }
    }
  }
}
