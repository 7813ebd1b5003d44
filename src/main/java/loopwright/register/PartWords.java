package loopwright.register;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/** Parts in words, and the words in which people choose. */
final class PartWords {
  static final String NOT_KNOWN = "not known";

  private PartWords() {}

  static PartKind kind(String word) {
    return needed(word, PartKind.named(word), "a kind of part", kinds());
  }

  static Evidence evidence(String word) {
    if (word.isBlank()) {
      throw new Refused(RegisterProblem.NO_EVIDENCE);
    }
    return needed(word, Evidence.named(word), "a way of knowing a length", evidences());
  }

  static PartState state(String word) {
    return needed(word, PartState.named(word), "a state", states());
  }

  private static <T> T needed(
      String word, Optional<T> found, String what, Map<String, String> all) {
    return found.orElseThrow(
        () ->
            new Refused(RegisterProblem.UNKNOWN_WORD, word, what, String.join(", ", all.keySet())));
  }

  static Map<String, String> kinds() {
    return choices(Stream.of(PartKind.values()), PartKind::word);
  }

  static Map<String, String> evidences() {
    return choices(Stream.of(Evidence.values()), Evidence::word);
  }

  static Map<String, String> states() {
    return choices(Stream.of(PartState.values()), PartState::word);
  }

  /** By code, shown with the name. */
  static Map<String, String> families(List<Family> families) {
    Map<String, String> choices = new LinkedHashMap<>();
    families.forEach(family -> choices.put(family.code(), family.code() + " · " + family.name()));
    return choices;
  }

  private static <T> Map<String, String> choices(Stream<T> all, Function<T, String> word) {
    return all.collect(Collectors.toMap(word, word, (a, b) -> a, LinkedHashMap::new));
  }

  /** With a first choice that asks for nothing. */
  static Map<String, String> orNone(String shown, Map<String, String> choices) {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("", shown);
    all.putAll(choices);
    return all;
  }

  /** As typed first: what was typed shows again exactly so. */
  static String typedAndBoth(Reported typed) {
    Length length = Length.of(typed);
    String other = typed.unit() == Unit.FOOT ? length.inMetres() : length.inFeet();
    return typed + " (" + other + ")";
  }

  static String length(@Nullable NominalLength length) {
    return length == null
        ? NOT_KNOWN
        : typedAndBoth(length.typed()) + ", " + length.evidence().phrase();
  }

  static String physical(@Nullable Reported length) {
    return length == null ? NOT_KNOWN : typedAndBoth(length);
  }

  /** As declared, with the other unit. */
  static String scale(@Nullable ScaleFactor scaleFactor) {
    if (scaleFactor == null) {
      return NOT_KNOWN;
    }
    String other =
        scaleFactor.unit() == Unit.MILLIVOLT_PER_MIL
            ? String.format(Locale.ROOT, "%.3f mV/µm", scaleFactor.millivoltsPerMicrometre())
            : String.format(Locale.ROOT, "%.2f mV/mil", scaleFactor.millivoltsPerMil());
    return scaleFactor + " (" + other + ")";
  }

  /** What the length of that kind of part is called. */
  static String lengthName(PartKind kind) {
    return switch (kind) {
      case PROBE -> "Lead, nominal length";
      case DRIVER, TRANSMITTER -> "System length it is tuned for";
      default -> "Nominal length";
    };
  }
}
