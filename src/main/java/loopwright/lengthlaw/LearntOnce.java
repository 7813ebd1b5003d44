package loopwright.lengthlaw;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.cause.LawLearning;
import loopwright.cause.LengthLaw;
import loopwright.matching.LearntLaws;

/** Weighs the confirmed lengths of a family when they are first asked for, and only once. */
final class LearntOnce implements LearntLaws {
  private final Map<String, List<Taught>> evidence = new HashMap<>();
  private final Map<String, LearntLaw> learnt = new HashMap<>();

  /**
   * @param counting by the family's code
   */
  LearntOnce(Map<String, List<Taught>> counting) {
    counting.forEach((code, taught) -> evidence.put(key(code), taught));
  }

  @Override
  public Optional<LearntLaw> of(String family) {
    String code = key(family);
    return Optional.ofNullable(evidence.get(code))
        .map(taught -> learnt.computeIfAbsent(code, same -> law(taught)));
  }

  private static LearntLaw law(List<Taught> taught) {
    LengthLaw law =
        LawLearning.learnt(LengthLaw.unproved(), taught.stream().map(Taught::proved).toList());
    return new LearntLaw(law.n(), law.nUncertainty(), taught.size());
  }

  private static String key(String code) {
    return code.strip().toLowerCase(Locale.ROOT);
  }
}
