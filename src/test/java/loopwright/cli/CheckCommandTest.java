package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {
  private static final String HEADINGS =
      "tag,family,probe_serial,probe_length_m,cable_serial,cable_length_m,driver_serial,"
          + "system_length_m\n";
  private static final String GOOD = HEADINGS + "T-1,,P1,1.0,C1,4.0,D1,5.0\n";
  private static final String MIXED =
      GOOD
          + "T-2,,P2,1.0,C2,4.5,D2,5.0\n"
          + "T-3,,P3,1.0,C3,,D3,5.0\n"
          + "T-4,,P4,1.0,,4.0,D4,5.0\n"
          + "T-5,,P5,0.5,C5,4.5,D5,5.0\n";

  @TempDir private Path folder;

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private static CliRun check(String... args) {
    return CliRun.of(Stream.concat(Stream.of("check"), Arrays.stream(args)).toArray(String[]::new));
  }

  @Test
  void exitsWithZeroWhenEveryLoopMatches() throws IOException {
    CliRun run = check(file("shop.csv", GOOD));
    assertThat(run.exit()).isEqualTo(Exit.GOOD);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains("matches     T-1  length balance: 1.0 + 4.0 = 5.0 m")
        .contains("1 loop: 0 refused, 0 unknown, 0 attention, 1 matches.")
        .contains("Not judged in any loop, for want of facts: same family,");
  }

  @Test
  void printsOneLineAFindingTheWorstFirst() throws IOException {
    CliRun run = check(file("shop.csv", MIXED));
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    assertThat(run.out().lines().takeWhile(line -> !line.isEmpty()).map(l -> l.substring(0, 15)))
        .containsExactly(
            "refused     T-2",
            "unknown     T-3",
            "attention   T-4",
            "matches     T-1",
            "matches     T-5");
    assertThat(run.out()).contains("5 loops: 1 refused, 1 unknown, 1 attention, 2 matches.");
  }

  @Test
  void printsEveryFindingWhenAsked() throws IOException {
    CliRun run = check("--all", file("shop.csv", GOOD));
    assertThat(run.out().lines().takeWhile(line -> !line.isEmpty())).hasSize(14);
    assertThat(run.out()).contains("not judged  T-1  calibrated as fitted: ");
  }

  @Test
  void printsOneJsonDocument() throws IOException {
    CliRun run = check("--json", file("shop.csv", MIXED));
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    JsonNode document = new ObjectMapper().readTree(run.out());
    assertThat(document.at("/summary").toString())
        .isEqualTo("{\"loops\":5,\"refused\":1,\"unknown\":1,\"attention\":1,\"matches\":2}");
    JsonNode second = document.at("/loops/1");
    assertThat(second.get("tag").asText()).isEqualTo("T-2");
    assertThat(second.get("verdict").asText()).isEqualTo("refused");
    assertThat(second.get("lengthBalanceMetres").isNumber()).isTrue();
    assertThat(second.get("lengthBalanceMetres").decimalValue()).isEqualByComparingTo("0.5");
    assertThat(second.at("/findings/0/rule").asText()).isEqualTo("length balance");
    assertThat(second.at("/findings/0/verdict").asText()).isEqualTo("refused");
    assertThat(second.at("/findings/0/message").asText()).contains("Fit a 4.0 m cable");
    assertThat(document.at("/loops/2/lengthBalanceMetres").isNull()).isTrue();
    assertThat(document.at("/loops/0/lengthBalanceMetres").toString()).isEqualTo("0");
    assertThat(document.at("/rules/0/basis").asText()).isNotBlank();
  }

  @Test
  void takesSeveralFilesAsOneRegister() throws IOException {
    String other = file("other.csv", HEADINGS + "U-1,,P1,1.0,C9,4.0,D9,5.0\n");
    CliRun run = check(file("shop.csv", GOOD), other);
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    assertThat(run.out())
        .contains(
            "refused     T-1  not fitted elsewhere: Probe P1 also stands at U-1 (other.csv, row 2).")
        .contains(
            "refused     U-1  not fitted elsewhere: Probe P1 also stands at T-1 (shop.csv, row 2).");
  }

  @Test
  void judgesByAListOfFamilies() throws IOException {
    String families =
        file(
            "fam.csv", "family,probe_lengths_m,cable_lengths_m,system_lengths_m\nR8,1.0,4.0,5.0\n");
    String shop = file("shop.csv", HEADINGS + "T-1,R8,P1,1.2,C1,3.8,D1,5.0\n");
    assertThat(check(shop).exit()).isEqualTo(Exit.GOOD);
    CliRun run = check(shop, "--families", families);
    assertThat(run.exit()).isEqualTo(Exit.FOUND_SOMETHING);
    assertThat(run.out()).contains("refused     T-1  lengths on offer: Probe P1 (1.2 m) is not");
  }

  @Test
  void unusableInputIsToldWholeOnStandardErrorAndNothingElse() throws IOException {
    Path binary = Files.write(folder.resolve("binary.csv"), new byte[] {'P', 'K', 3, 4, 0, 0});
    Path large = folder.resolve("large.csv");
    Files.writeString(large, "x".repeat(26_000_000), StandardCharsets.US_ASCII);
    CliRun run =
        check(
            "--json",
            file("bad.csv", HEADINGS + "T-1,,P1,400,C1,four,D1,5.0\n"),
            binary.toString(),
            large.toString(),
            folder.resolve("nowhere.csv").toString());
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .contains("bad.csv, row 2, column probe_length_m: '400'")
        .contains("bad.csv, row 2, column cable_length_m: 'four' is not a number")
        .contains("binary.csv: this is not a text file")
        .contains("large.csv: the file holds 26 MB; at most 25 MB are read")
        .contains("nowhere.csv: there is no such file")
        .contains("Nothing was judged: 5 problems.");
  }

  @Test
  void aBrokenListOfFamiliesIsUnusableToo() throws IOException {
    CliRun run =
        check(file("shop.csv", GOOD), "--families", file("fam.csv", "family,tip_mm\nR8,big\n"));
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("fam.csv, row 2, column tip_mm: 'big' is not a number");
  }

  @Test
  void oneFileGivenTwiceIsRefused() throws IOException {
    String shop = file("shop.csv", GOOD);
    CliRun run = check(shop, folder + "/./shop.csv");
    assertThat(run.exit()).isEqualTo(Exit.UNUSABLE);
    assertThat(run.err()).contains("the file is given twice").contains("1 problem.");
  }

  @Test
  void saysTheSameEachTime() throws IOException {
    String shop = file("shop.csv", MIXED);
    assertThat(check("--json", shop)).isEqualTo(check("--json", shop));
  }

  @Test
  void aTagWithALineBreakStaysOnItsLine() throws IOException {
    CliRun run = check(file("shop.csv", HEADINGS + "\"T\n1\",,P1,1.0,C1,4.0,D1,5.0\n"));
    assertThat(run.out()).contains("matches     T 1  length balance");
  }
}
