package loopwright.journal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import loopwright.testing.Reference;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class HashesValidationTest {

  @TestFactory
  Stream<DynamicTest> theHashIsThatOfFips1804() {
    return Reference.read("sha256-fips-180-4.csv").rows().stream()
        .map(row -> DynamicTest.dynamicTest(row.get(0), () -> hashed(row.get(1), row.get(2))));
  }

  private static void hashed(String message, String expected) {
    assertThat(HexFormat.of().formatHex(Hashes.sha256().digest(bytes(message))))
        .isEqualTo(expected);
  }

  /** Hex, or {@code *n:xx}. */
  private static byte[] bytes(String message) {
    if (message.startsWith("*")) {
      String[] parts = message.substring(1).split(":");
      return HexFormat.of().parseHex(parts[1].repeat(Integer.parseInt(parts[0])));
    }
    return HexFormat.of().parseHex(message);
  }

  @TestFactory
  Stream<DynamicTest> aLeafIsHashedAsInACertificateLog() {
    return Reference.read("merkle-leaves-rfc-6962.csv").rows().stream()
        .map(
            row ->
                DynamicTest.dynamicTest("leaf " + row.get(0), () -> leaf(row.get(0), row.get(1))));
  }

  private static void leaf(String leaf, String expected) {
    byte[] hash = Hashes.leaf(HexFormat.of().parseHex(leaf));
    assertThat(HexFormat.of().formatHex(hash)).isEqualTo(expected);
  }

  @Test
  void eachLinkOfTheChainHashesTheOneBefore() {
    byte[] chain = Hashes.BEFORE_THE_FIRST;
    for (List<String> row : Reference.read("hash-chain.csv").rows()) {
      chain = Hashes.chain(chain, row.get(0).getBytes(UTF_8));
      assertThat(HexFormat.of().formatHex(chain)).isEqualTo(row.get(1));
    }
  }
}
