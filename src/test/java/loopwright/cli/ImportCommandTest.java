package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ImportCommandTest {
  private static final String PARTS =
      "kind,maker,model,serial,length_m\nprobe,Anymaker,P,0041,1.0\nprobe,Anymaker,P,0042,1.0\n";

  @TempDir private Path folder;

  private CliRun run(String... more) {
    List<String> args = new ArrayList<>(List.of("import", "--data", data().toString()));
    args.addAll(List.of(more));
    return CliRun.of(args.toArray(String[]::new));
  }

  private Path data() {
    return folder.resolve("data");
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private static JsonNode json(CliRun run) throws IOException {
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void writesOnceAndTheSameFileAgainChangesNothing() throws IOException {
    String parts = file("parts.csv", PARTS);
    CliRun first = run(parts);
    assertThat(first.exit()).isEqualTo(Exit.GOOD);
    assertThat(first.out().strip())
        .isEqualTo("Written: 2 added, 0 changed, 0 unchanged, 0 refused.");
    CliRun again = run(parts, "--json");
    assertThat(again.exit()).isEqualTo(Exit.GOOD);
    assertThat(json(again).get("added").asInt()).isZero();
    assertThat(json(again).get("unchanged").asInt()).isEqualTo(2);
    assertThat(CliRun.of("verify", "--data", data().toString()).exit()).isEqualTo(Exit.GOOD);
  }

  @Test
  void aDryRunWritesNothingNotEvenAFolder() throws IOException {
    CliRun dry = run(file("parts.csv", PARTS), "--dry-run", "--json");
    assertThat(dry.exit()).isEqualTo(Exit.GOOD);
    assertThat(json(dry).get("added").asInt()).isEqualTo(2);
    assertThat(data()).doesNotExist();
  }

  @Test
  void aDryRunOverDataLeavesItAsItIs() throws IOException {
    run(file("parts.csv", PARTS));
    String other = file("other.csv", PARTS.replace("0042,1.0", "0042,0.5"));
    CliRun dry = run(other, "--dry-run");
    assertThat(dry.out()).contains("probe 0042, length: 1 m → 0.5 m").contains("Would be written");
    assertThat(json(run(other, "--dry-run", "--json")).get("changed").asInt()).isEqualTo(1);
  }

  @Test
  void refusedRowsAreAllNamedAndNothingIsWritten() throws IOException {
    String bad =
        file(
            "bad.csv",
            PARTS
                + "probe,Anymaker,P,0043,one\nprob,Anymaker,P,0044,1.0\nprobe,Anymaker,P,0041,1.0\n");
    CliRun run = run(bad, "--json");
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    JsonNode refused = json(run).get("refused");
    assertThat(refused).hasSize(3);
    assertThat(refused.get(0).get("file").asText()).isEqualTo("bad.csv");
    assertThat(refused.get(0).get("row").asInt()).isEqualTo(4);
    assertThat(refused.get(0).get("column").asText()).isEqualTo("length_m");
    assertThat(refused.get(0).get("code").asText()).isEqualTo("I-103");
    assertThat(refused.get(1).get("message").asText()).contains("Did you mean 'probe'?");
    assertThat(json(run(file("parts.csv", PARTS), "--json")).get("added").asInt()).isEqualTo(2);
    assertThat(run(bad).err().lines()).hasSize(3);
  }

  @Test
  void anUnusableFileEndsWithTwo() throws IOException {
    CliRun unknown = run(file("x.csv", "colour,shape\nred,round\n"), "--json");
    assertThat(unknown.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(json(unknown).get("refused").get(0).get("code").asText()).isEqualTo("I-101");
    CliRun missing = run(folder.resolve("none.csv").toString());
    assertThat(missing.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(missing.err()).contains("none.csv");
    CliRun mark = run(file("parts.csv", PARTS), "--decimal", "dot");
    assertThat(mark.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(mark.err()).contains("Say point or comma");
  }

  @Test
  void aFileOfFiftyMegabytesIsRefusedUnread() throws IOException {
    Path large = folder.resolve("large.csv");
    try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
      file.setLength(50_000_000);
    }
    CliRun run = run(large.toString());
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("large.csv").contains("50 MB").contains("Split it");
    assertThat(data()).doesNotExist();
  }

  @Test
  void theDemosOwnFilesAreUnderstood() throws IOException {
    CliRun run =
        run(
            "--dry-run",
            "--json",
            "demo-data/families.csv",
            "demo-data/components.csv",
            "demo-data/points.csv",
            "demo-data/placements.csv",
            "demo-data/calibrations.csv");
    assertThat(run.exit()).isEqualTo(Exit.GOOD);
    assertThat(json(run).get("added").asInt()).isGreaterThan(5_000);
    assertThat(json(run).get("refused")).isEmpty();
  }
}
