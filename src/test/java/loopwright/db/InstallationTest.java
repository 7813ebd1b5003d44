package loopwright.db;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import loopwright.db.Installation.Purpose;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass
@EnumSource(Engine.class)
class InstallationTest {
  private static final TestClock CLOCK = new TestClock("2026-03-01T10:15:30Z");

  private final Engine engine;

  InstallationTest(Engine engine) {
    this.engine = engine;
  }

  @Test
  void aDatabaseKeepsItsIdentityAndPurpose() {
    try (Database database = engine.open(CLOCK)) {
      assertThat(Installation.of(database)).isEmpty();
      Installation made = Installation.claim(database, Purpose.SITE, CLOCK);
      assertThat(Installation.claim(database, Purpose.SITE, CLOCK)).isEqualTo(made);
      assertThatThrownBy(() -> Installation.claim(database, Purpose.DEMO, CLOCK))
          .isInstanceOfSatisfying(
              Refused.class,
              refused -> assertThat(refused.problem()).isEqualTo(DbProblem.OTHER_PURPOSE));
      assertThat(Installation.of(database)).contains(made);
    }
  }
}
