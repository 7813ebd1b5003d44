package loopwright.calibration;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import loopwright.curve.CurveReading;

/**
 * What a signature under a calibration covers, as one text: number, parts, stage, moment, who took
 * it, what it was judged by, the equipment, the readings as typed. Lines are {@code name=value};
 * what a new version of the program adds to a record belongs below the lines that are here.
 */
final class SignedContent {
  private SignedContent() {}

  /** SHA-256 of the text, hexadecimal. */
  static String hash(
      Calibrated c, List<CurveReading> readings, List<Long> certificates, Conditions under) {
    return sha256(text(c, readings, certificates, under));
  }

  static String text(
      Calibrated c, List<CurveReading> readings, List<Long> certificates, Conditions under) {
    StringBuilder text = new StringBuilder();
    line(text, "number", c.number());
    line(text, "parts", c.fingerprint());
    line(text, "point", String.valueOf(c.point()));
    line(text, "stage", c.stage().word());
    line(text, "measured", c.measuredAt().toString());
    line(text, "by", c.performedBy());
    line(text, "zero", c.zero());
    line(text, "alloy", c.targetAlloy());
    line(text, "profile version", String.valueOf(c.profileVersion()));
    line(text, "analysis", String.valueOf(c.analysisVersion()));
    line(text, "outcome", c.outcome());
    line(text, "no curve", String.valueOf(c.noCurveReason()));
    certificates.forEach(each -> line(text, "certificate", each.toString()));
    for (CurveReading reading : readings) {
      line(text, "reading", reading.run().label() + " " + reading.gap() + " " + reading.output());
    }
    under.temperature().ifPresent(t -> line(text, "temperature", t.toString()));
    under.runOut().ifPresent(r -> line(text, "run-out", r.toString()));
    if (!under.procedure().isEmpty()) {
      line(text, "procedure", under.procedure());
    }
    if (c.setup() != Setup.FITTED) {
      line(text, "setup", c.setup().shown());
    }
    return text.toString();
  }

  private static void line(StringBuilder text, String name, String content) {
    text.append(name).append('=').append(content.replace("\n", "\\n")).append('\n');
  }

  private static String sha256(String text) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }
}
