package loopwright.matching.rules;

import java.util.List;
import java.util.stream.Collectors;
import loopwright.matching.Evidence;
import loopwright.matching.KnownLength;
import loopwright.matching.PartView;
import loopwright.problem.Text;
import loopwright.units.Length;

/** Turns of phrase that several rules share. */
final class Words {
  /** First step of every remedy: more records are wrong than parts. */
  static final String LOOK_FIRST = "Look first whether a part or only its record is wrong.";

  private Words() {}

  /** First letter as a capital, and a full stop. */
  static String sentence(String clause) {
    return Text.capital(clause) + ".";
  }

  /** {@code a}, {@code a and b}, {@code a, b and c}. */
  static String list(List<String> words) {
    return list(words, "and");
  }

  static String list(List<String> words, String last) {
    int n = words.size();
    return n < 2
        ? String.join("", words)
        : String.join(", ", words.subList(0, n - 1)) + " " + last + " " + words.get(n - 1);
  }

  /** {@code 3.5, 4.0 and 4.5 m}. */
  static String lengths(List<Length> lengths) {
    return list(lengths.stream().map(Words::bare).toList()) + " m";
  }

  /** {@code 1.0 + 4.5}. */
  static String sum(List<Length> lengths) {
    return lengths.stream().map(Words::bare).collect(Collectors.joining(" + "));
  }

  /** With its article: {@code a 4.0 m}, {@code an 8.5 m}. */
  static String one(Length length) {
    String text = length.inMetres();
    boolean an = text.startsWith("8") || text.startsWith("11.") || text.startsWith("18.");
    return (an ? "an " : "a ") + text;
  }

  private static String bare(Length length) {
    return length.inMetres().replace(" m", "");
  }

  /** What to do about a length that rests on weak evidence. */
  static String prove(List<PartView> unproved) {
    return "Read it on the part, take it from its certificate, or measure the unplugged cable's"
        + " capacitance ("
        + list(unproved.stream().map(Words::known).toList())
        + ").";
  }

  /** {@code extension cable XC-1: 4.0 m, assumed}. */
  static String known(PartView part) {
    KnownLength known = part.length();
    return known == null
        ? part.words()
        : part.words() + ": " + known.length() + ", " + known.evidence().phrase();
  }

  static boolean isProved(KnownLength known) {
    Evidence evidence = known.evidence();
    return evidence.proves();
  }
}
