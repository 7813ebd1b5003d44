package loopwright.standard;

import java.time.LocalDate;
import loopwright.problem.Refused;

/**
 * A reference standard under one of its certificates, as a calibration was made with it.
 *
 * @param certificate in force when it was used
 */
public record StandardUsed(Standard standard, Certificate certificate) {

  /**
   * The standard with its certificate of that day, overdue or not.
   *
   * @throws Refused {@link StandardProblem#NO_CERTIFICATE_THEN}
   */
  public static StandardUsed on(LocalDate day, Standard standard) {
    return new StandardUsed(
        standard,
        standard
            .certificateOf(day)
            .orElseThrow(
                () ->
                    new Refused(
                        StandardProblem.NO_CERTIFICATE_THEN,
                        standard.code(),
                        day,
                        first(standard))));
  }

  private static String first(Standard standard) {
    return standard.certificates().stream()
        .map(Certificate::issuedOn)
        .min(LocalDate::compareTo)
        .map(LocalDate::toString)
        .orElse("no day yet");
  }

  /** {@code DVM-2, voltmeter …; certificate K-1 of Lab, 2026-01-05}. */
  public String inWords() {
    return standard.inWords() + "; certificate " + certificate.inWords();
  }
}
