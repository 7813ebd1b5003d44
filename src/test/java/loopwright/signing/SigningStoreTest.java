package loopwright.signing;

import static loopwright.db.gen.Tables.PERSON;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.BrokenBarrierException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import java.util.stream.Stream;
import loopwright.calibration.Calibrated;
import loopwright.calibration.CalibrationWorld;
import loopwright.db.Act;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PersonRecord;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.standard.Standards;
import loopwright.testing.Engine;
import loopwright.web.Actor;
import loopwright.web.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Signing from two sides at one moment. */
@ParameterizedClass
@EnumSource(Engine.class)
class SigningStoreTest {
  private static final Signing.Days DAYS =
      new Signing.Days(LocalDate.parse("2026-02-01"), LocalDate.parse("2026-03-01"));

  private static CalibrationWorld world;
  private static Signing signing;
  private static Actor taker;
  private static Actor first;
  private static Actor second;

  @Parameter Engine engine;

  private Calibrated record;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    world = new CalibrationWorld(engine);
    signing = new Signing(world.calibrations, new Standards());
    taker = person("taker", "A. Tester");
    first = person("first", "F. Reviewer");
    second = person("second", "S. Reviewer");
    authorise(taker, Scope.SIGN, first);
    authorise(first, Scope.REVIEW, taker);
    authorise(second, Scope.REVIEW, taker);
  }

  @AfterParameterizedClassInvocation
  static void close() {
    world.close();
  }

  @BeforeEach
  void keep() {
    world.another();
    record = world.numbered(world.keep(world.curve()));
  }

  private record Somebody(String id, String name) implements Actor {
    @Override
    public Role role() {
      return Role.TECHNICIAN;
    }
  }

  private static Actor person(String login, String name) {
    return world.write(
        tx -> new Somebody(tx.insert(row(tx, login, name)).getId().toString(), name));
  }

  private static PersonRecord row(Tx tx, String login, String name) {
    PersonRecord row = tx.row(PERSON);
    row.setLogin(login);
    row.setFullName(name);
    row.setRole("technician");
    row.setActive(true);
    row.setPasswordHash("none");
    row.setMustChangePassword(false);
    return row;
  }

  private static void authorise(Actor person, Scope scope, Actor by) {
    Authorisation fresh =
        new Authorisation(
            0,
            Long.parseLong(person.id()),
            person.name(),
            scope,
            LocalDate.parse("2026-01-01"),
            LocalDate.parse("2027-01-01"),
            "examined",
            by.name(),
            null,
            "");
    world.write(
        tx -> {
          new SigningStore().add(tx, fresh, Long.parseLong(by.id()));
          return 0;
        });
  }

  private static Optional<Problem> done(Function<Tx, Object> work) {
    try {
      world.write(work::apply);
      return Optional.empty();
    } catch (Refused refused) {
      return Optional.of(refused.problem());
    }
  }

  /** What became of each, run at one moment; nothing for the one that was served. */
  private static List<Optional<Problem>> atOnce(Stream<Function<Tx, Object>> works) {
    return works.map(work -> CompletableFuture.supplyAsync(() -> done(work))).toList().stream()
        .map(CompletableFuture::join)
        .toList();
  }

  private Function<Tx, Object> sign(Calibrated of, Actor signer) {
    return tx -> {
      signing.sign(tx, of, signer, DAYS);
      return 0;
    };
  }

  private Function<Tx, Object> review(Actor reviewer) {
    return tx -> {
      signing.review(tx, record, reviewer, DAYS);
      return 0;
    };
  }

  private static void onlyOne(List<Optional<Problem>> ended, Problem... others) {
    assertThat(ended).containsOnlyOnce(Optional.empty());
    assertThat(ended.stream().flatMap(Optional::stream))
        .hasSize(ended.size() - 1)
        .allMatch(problem -> List.of(others).contains(problem));
  }

  @Test
  void twoWindowsSignOnceAndTwoReviewersReviewOnce() {
    Function<Tx, Object> sign = sign(record, taker);
    onlyOne(
        atOnce(Stream.of(sign, sign, sign)), SigningProblem.ALREADY_SIGNED, DbProblem.MEANWHILE);
    onlyOne(
        atOnce(Stream.of(review(first), review(second))),
        SigningProblem.ALREADY_REVIEWED,
        DbProblem.MEANWHILE);
    List<Signature> signatures = world.database().read(sql -> signing.signatures(sql, record));
    assertThat(signatures).hasSize(2);
  }

  /** Both have looked before either writes; on the embedded engine the other one waits outside. */
  @Test
  void whatTwoEnterAtOneMomentIsRefusedInWords() {
    CyclicBarrier bothLooked = new CyclicBarrier(2);
    String login = "same-" + record.number().toLowerCase(Locale.ROOT);
    onlyOne(
        atOnce(
            Stream.of(first, second)
                .map(
                    by ->
                        tx -> {
                          meet(bothLooked);
                          return tx.insert(row(tx, login, "By " + by.name()));
                        })),
        DbProblem.MEANWHILE);
    assertThatThrownBy(() -> world.write(tx -> tx.insert(row(tx, login, "Once more"))))
        .hasMessageContaining("(person login)")
        .hasMessageContaining("look at it again");
  }

  private static void meet(CyclicBarrier barrier) {
    try {
      barrier.await(1, TimeUnit.SECONDS);
    } catch (InterruptedException | BrokenBarrierException | TimeoutException alone) {
      Thread.yield(); // one writer at a time: the other one can't come
    }
  }

  @Test
  void whoEnteredWhatTheyTookSignsItByTheirAccountNotByTheirName() {
    Actor namesake = person("namesake-" + record.id(), record.performedBy());
    authorise(namesake, Scope.SIGN, first);
    Act act =
        new Act(Long.valueOf(taker.id()), taker.name(), "technician", "calibration", "outage");
    world.another();
    String number = world.database().write(act, tx -> world.calibrations.keep(tx, world.curve()));
    Calibrated taken = world.numbered(number);
    assertThat(done(sign(taken, namesake))).contains(SigningProblem.SOMEBODY_ELSES);
    assertThat(done(sign(taken, taker))).isEmpty();
  }
}
