package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import loopwright.db.Act;
import loopwright.matching.PartKind;
import loopwright.plant.PointDetails;
import loopwright.plant.PointKind;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Several people leave loops with the same cable at the same second. */
@ParameterizedClass
@EnumSource(Engine.class)
class SameCableAtOnceTest {
  private static final int PEOPLE = 5;
  private static final int ROUNDS = 4;

  private final Engine engine;
  private final List<Long> points = new ArrayList<>();
  private final List<Content> probes = new ArrayList<>();
  private final List<Content> drivers = new ArrayList<>();

  SameCableAtOnceTest(Engine engine) {
    this.engine = engine;
  }

  /** What became of one person's assembly: empty for the one who was first. */
  private record Answer(int person, String refusal) {}

  @Test
  void exactlyOneWinsAndTheOthersAreToldByWhom() throws Exception {
    try (OneLoop shop = new OneLoop(engine)) {
      for (int i = 0; i < PEOPLE; i++) {
        PointDetails details = PointDetails.of(tag(i), PointKind.RADIAL).build();
        points.add(shop.write(tx -> shop.world.plant.addPoint(tx, shop.machine, details)).number());
        probes.add(new Content.Part(shop.part(PartKind.PROBE, "PB-" + i, "1")));
        drivers.add(new Content.Part(shop.part(PartKind.DRIVER, "DV-" + i, "5")));
      }
      for (int round = 0; round < ROUNDS; round++) {
        round(shop, new Content.Part(shop.part(PartKind.CABLE, "XC-" + round, "4")));
      }
    }
  }

  private static String tag(int person) {
    return "W-" + person;
  }

  private void round(OneLoop shop, Content.Part cable) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(PEOPLE);
    CyclicBarrier start = new CyclicBarrier(PEOPLE);
    try {
      List<Future<Answer>> pending = new ArrayList<>();
      for (int i = 0; i < PEOPLE; i++) {
        int person = i;
        pending.add(
            threads.submit(
                () -> {
                  start.await();
                  return assemble(shop, person, cable);
                }));
      }
      List<Answer> answers = new ArrayList<>();
      for (Future<Answer> one : pending) {
        answers.add(one.get());
      }
      check(shop, answers, cable);
    } finally {
      threads.shutdownNow();
    }
  }

  private Answer assemble(OneLoop shop, int person, Content cable) {
    Chain chain = Chain.of(probes.get(person), List.of(cable), drivers.get(person));
    long point = points.get(person);
    Act act = new Act(null, "Person " + person, "technician", "assembly", "outage");
    try {
      shop.world.database.write(
          act,
          tx -> {
            shop.world.configuration.holdStill(tx, point, chain);
            return shop.world.configuration.assembly(tx, point, chain, OneLoop.NOW, "");
          });
      return new Answer(person, "");
    } catch (Refused refused) {
      return new Answer(person, String.valueOf(refused.getMessage()));
    }
  }

  private void check(OneLoop shop, List<Answer> answers, Content.Part cable) {
    List<Answer> winners = answers.stream().filter(one -> one.refusal().isEmpty()).toList();
    assertThat(winners).hasSize(1);
    int winner = winners.get(0).person();
    assertThat(answers)
        .filteredOn(one -> one.person() != winner)
        .allSatisfy(
            loser ->
                assertThat(loser.refusal())
                    .contains("also stands at " + tag(winner))
                    .contains("recorded by Person " + winner));
    List<Placed> stays =
        shop.world.database.read(sql -> shop.world.configuration.ofComponent(sql, cable.number()));
    assertThat(stays).hasSize(1);
    assertThat(stays.get(0).point()).isEqualTo(points.get(winner));
  }
}
