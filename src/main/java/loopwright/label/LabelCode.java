package loopwright.label;

import java.util.Locale;
import java.util.regex.Pattern;
import loopwright.problem.Refused;

/**
 * The short name of a part or a loop that stands on its label and never changes: {@code 1C0D1X2}.
 *
 * <p>Version 1 is the digit 1, the letter C (component) or P (the point that a loop serves), the
 * number of the record to base 32, at least four digits, and a check character. Digits are 0–9 and
 * A–Z without I, L, O and U; small letters, hyphens and blanks don't matter when one is read, I and
 * L count as 1, O as 0.
 *
 * <p>The check character makes the code a multiple of x + α over GF(32) with α⁵ = α² + 1 (a
 * polynomial code with one check digit; textbook algebra). The powers α⁰ … α³⁰ differ, so that
 * every single wrong character and every two characters that changed places are noticed.
 *
 * @param number of the record in this register, from 1
 */
public record LabelCode(Named named, long number) {
  private static final String DIGITS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final int LEAST_DIGITS = 4;

  /** Version, letter, four to thirteen digits, check character; later versions are as long. */
  private static final Pattern SHAPE =
      Pattern.compile("[1-9][A-HJKMNP-TV-Z][" + DIGITS + "]{5,14}");

  /** What a code can stand for. */
  public enum Named {
    COMPONENT('C'),
    POINT('P');

    private final char letter;

    Named(char letter) {
      this.letter = letter;
    }
  }

  public LabelCode {
    if (number < 1) {
      throw new IllegalArgumentException("Records are numbered from 1, not " + number + ".");
    }
  }

  public static LabelCode ofComponent(long number) {
    return new LabelCode(Named.COMPONENT, number);
  }

  public static LabelCode ofPoint(long number) {
    return new LabelCode(Named.POINT, number);
  }

  /** As printed. */
  public String text() {
    StringBuilder digits = new StringBuilder();
    for (long rest = number; rest > 0; rest >>>= 5) {
      digits.append(DIGITS.charAt((int) (rest & 31)));
    }
    while (digits.length() < LEAST_DIGITS) {
      digits.append('0');
    }
    String body = "1" + named.letter + digits.reverse();
    return body + DIGITS.charAt(timesAlpha(sum(body)));
  }

  /** Whether somebody probably meant a code, be it a wrong one. */
  public static boolean looksLikeOne(String text) {
    return SHAPE.matcher(plain(text)).matches();
  }

  /**
   * Reads a code of this or any earlier version.
   *
   * @throws Refused {@link LabelProblem#NO_CODE}, {@link LabelProblem#MISREAD} or {@link
   *     LabelProblem#NEWER}
   */
  public static LabelCode read(String text) {
    String plain = plain(text);
    if (!SHAPE.matcher(plain).matches()) {
      throw new Refused(LabelProblem.NO_CODE, text.strip());
    }
    if (sum(plain) != 0) {
      throw new Refused(LabelProblem.MISREAD, text.strip());
    }
    if (plain.charAt(0) != '1') {
      throw new Refused(LabelProblem.NEWER, text.strip());
    }
    return versionOne(plain, text);
  }

  private static LabelCode versionOne(String plain, String text) {
    for (Named named : Named.values()) {
      if (plain.charAt(1) == named.letter) {
        long number = number(plain.substring(2, plain.length() - 1));
        if (number > 0 && new LabelCode(named, number).text().equals(plain)) {
          return new LabelCode(named, number);
        }
      }
    }
    throw new Refused(LabelProblem.MISREAD, text.strip());
  }

  /** Zero for one that is too large. */
  private static long number(String digits) {
    long number = 0;
    for (int i = 0; i < digits.length(); i++) {
      if (number >= 1L << 58) {
        return 0;
      }
      number = number << 5 | DIGITS.indexOf(digits.charAt(i));
    }
    return number;
  }

  /** In capitals, without what people put between, and with what they mix up put right. */
  private static String plain(String text) {
    return text.replaceAll("[\\s-]", "")
        .toUpperCase(Locale.ROOT)
        .replace('I', '1')
        .replace('L', '1')
        .replace('O', '0');
  }

  /** The polynomial's value at α, in GF(32): zero for a code with its check character. */
  private static int sum(String characters) {
    int sum = 0;
    for (int i = 0; i < characters.length(); i++) {
      sum = timesAlpha(sum) ^ DIGITS.indexOf(characters.charAt(i));
    }
    return sum;
  }

  private static int timesAlpha(int element) {
    int doubled = element << 1;
    return doubled < 32 ? doubled : doubled ^ 0b100101;
  }

  @Override
  public String toString() {
    return text();
  }
}
