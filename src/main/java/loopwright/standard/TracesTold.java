package loopwright.standard;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Against what a standard was calibrated and checked, and what was against it, in words. */
record TracesTold(Standard standard, Map<Long, Standard> all, List<Trace> traces) {

  static TracesTold of(Standard standard, Collection<Standard> all, List<Trace> traces) {
    return new TracesTold(
        standard,
        all.stream().collect(Collectors.toMap(Standard::id, Function.identity())),
        traces);
  }

  /** The codes of what a certificate of it rests on; empty for an outside laboratory. */
  String under(Certificate certificate) {
    return traces.stream()
        .filter(trace -> Objects.equals(trace.certificate(), certificate.id()))
        .map(trace -> code(trace.reference()))
        .collect(Collectors.joining(", "));
  }

  /** Its checks against others of the shop. */
  List<String> checks() {
    return traces.stream()
        .filter(trace -> trace.isCheck() && trace.standard() == standard.id())
        .map(trace -> "On " + trace.on() + " against " + code(trace.reference()) + ".")
        .toList();
  }

  /** What was calibrated or checked against it. */
  List<String> downstream() {
    return traces.stream()
        .filter(trace -> trace.reference() == standard.id())
        .map(
            trace ->
                "%s was %s against it on %s."
                    .formatted(
                        code(trace.standard()),
                        trace.isCheck() ? "checked" : "calibrated",
                        trace.on()))
        .toList();
  }

  private String code(long number) {
    Standard found = all.get(number);
    return found == null ? "?" : found.code();
  }
}
