package loopwright.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.Set;
import loopwright.problem.Refused;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LabelCodeTest {
  private static final String DIGITS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  /**
   * Labels with these codes may hang in junction boxes: they must be read so for ever. Never change
   * a line; a later version gets lines of its own.
   */
  @ParameterizedTest(name = "{2}")
  @CsvSource(
      textBlock =
          """
          COMPONENT,                   1, 1C0001H
          COMPONENT,                   5, 1C0005S
          COMPONENT,                 417, 1C00D10
          COMPONENT,               32767, 1C0ZZZR
          COMPONENT,             1000000, 1CYGJ0K
          COMPONENT,             1234567, 1C15NM7H
          COMPONENT, 9223372036854775807, 1C7ZZZZZZZZZZZZH
          POINT,                       1, 1P0001C
          POINT,                       3, 1P00038
          POINT,                  200000, 1P63A0M
          """)
  void codesOfVersionOneAreReadForEver(LabelCode.Named named, long number, String code) {
    assertThat(LabelCode.read(code)).isEqualTo(new LabelCode(named, number));
    assertThat(new LabelCode(named, number).text()).isEqualTo(code);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1c00d10", "1C-00D-10", " 1C00D10 ", "1C 00D 10", "LCOODIO", "ic00dl0"})
  void writtenAsPeopleDoItIsTheSameCode(String typed) {
    assertThat(LabelCode.read(typed)).isEqualTo(LabelCode.ofComponent(417));
  }

  @Property(tries = 300)
  void aCodeIsReadBack(@ForAll @LongRange(min = 1) long number) {
    assertThat(LabelCode.read(LabelCode.ofComponent(number).text()))
        .isEqualTo(LabelCode.ofComponent(number));
    assertThat(LabelCode.read(LabelCode.ofPoint(number).text()))
        .isEqualTo(LabelCode.ofPoint(number));
  }

  @Property(tries = 100)
  void noSingleWrongCharacterIsTakenForAnotherPart(@ForAll @LongRange(min = 1) long number) {
    String code = LabelCode.ofComponent(number).text();
    for (int i = 0; i < code.length(); i++) {
      for (char wrong : DIGITS.toCharArray()) {
        if (wrong != code.charAt(i)) {
          refused(code.substring(0, i) + wrong + code.substring(i + 1));
        }
      }
    }
  }

  @Property(tries = 100)
  void noTwoCharactersThatChangedPlacesAreTakenForAnotherPart(
      @ForAll @LongRange(min = 1) long number) {
    char[] code = LabelCode.ofComponent(number).text().toCharArray();
    for (int i = 0; i < code.length; i++) {
      for (int j = i + 1; j < code.length; j++) {
        if (code[i] != code[j]) {
          char[] wrong = code.clone();
          wrong[i] = code[j];
          wrong[j] = code[i];
          refused(new String(wrong));
        }
      }
    }
  }

  private static void refused(String code) {
    assertThatThrownBy(() -> LabelCode.read(code))
        .isInstanceOfSatisfying(
            Refused.class,
            refused ->
                assertThat(refused.problem()).isIn(LabelProblem.MISREAD, LabelProblem.NO_CODE));
  }

  @Test
  void partsAndLoopsNeverShareACode() {
    Set<String> codes = new HashSet<>();
    for (long number = 1; number <= 2000; number++) {
      codes.add(LabelCode.ofComponent(number).text());
      codes.add(LabelCode.ofPoint(number).text());
    }
    assertThat(codes).hasSize(4000).allSatisfy(code -> assertThat(code).hasSize(7));
  }

  @ParameterizedTest(name = "“{0}”")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ''       | is not the code
          XC-51733 | is not the code
          1C00D1   | is not the code
          1CU0D10  | is not the code
          1C00D11  | misread or mistyped
          1C000D10 | misread or mistyped
          """)
  void whatIsNoCodeIsRefusedInWords(String typed, String words) {
    assertThatThrownBy(() -> LabelCode.read(typed))
        .isInstanceOf(Refused.class)
        .hasMessageContaining(words);
  }

  @Test
  void aCodeOfALaterVersionIsNotTakenForOneOfOurs() {
    assertThatThrownBy(() -> LabelCode.read("2C00D1" + checkOf("2C00D1")))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.problem()).isEqualTo(LabelProblem.NEWER));
  }

  /** The check character by trying each: the only one that isn't told to be misread. */
  private static char checkOf(String body) {
    for (char check : DIGITS.toCharArray()) {
      try {
        LabelCode.read(body + check);
      } catch (Refused refused) {
        if (refused.problem() == LabelProblem.NEWER) {
          return check;
        }
      }
    }
    throw new AssertionError("no check character for " + body);
  }
}
