package loopwright.journal;

import static loopwright.db.gen.Tables.SITE;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import loopwright.db.Database;
import loopwright.db.Place;
import loopwright.testing.ChildJvm;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was acknowledged survives a process that is killed at any moment. */
class KillTest {
  @TempDir private Path folder;

  @Test
  void whatWasAcknowledgedSurvivesAKill() {
    killAndLook("a", 3, 60, new ArrayList<>());
  }

  @Test
  @Tag("long")
  void andSoItDoesAgainAndAgain() {
    List<String> acknowledged = new ArrayList<>();
    Random random = new Random(20260301);
    for (int round = 0; round < 25; round++) {
      killAndLook(round + "r", 1 + random.nextInt(6), random.nextInt(900), acknowledged);
    }
  }

  private void killAndLook(String prefix, int threads, int after, List<String> acknowledged) {
    try (ChildJvm writer =
        new ChildJvm(KilledWriter.class, folder.toString(), Integer.toString(threads), prefix)) {
      assertThat(writer.line()).isEqualTo("open");
      for (int i = 0; i < after; i++) {
        acknowledged.add(writer.line());
      }
      List<String> rest = writer.kill();
      // the last line may have been cut off in the middle
      acknowledged.addAll(rest.subList(0, Math.max(0, rest.size() - 1)));
    }
    try (Database database =
        Database.open(
            new Place.Folder(folder), new JournalStore(), new TestClock("2026-03-01T10:15:30Z"))) {
      Set<String> codes = database.read(sql -> Set.copyOf(sql.fetchValues(SITE.CODE)));
      assertThat(codes).containsAll(acknowledged);
      assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(after);
      assertThat(Verification.of(database).disagreement()).isNull();
    }
  }
}
