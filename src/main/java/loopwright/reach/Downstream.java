package loopwright.reach;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.standard.Certificate;
import loopwright.standard.Standard;
import loopwright.standard.StandardEvent;
import loopwright.standard.Trace;
import org.jspecify.annotations.Nullable;

/**
 * Walks from a standard that was wrong in a time to every standard that was calibrated or checked
 * against it meanwhile, and on from there; nearest first, each certificate and check once.
 *
 * <p>What was calibrated against a standard that showed too much shows too much by as much itself:
 * records stand as read, corrections are not put into them. A check only says that both agreed
 * where they were compared, so by how much the checked one is wrong nobody can tell from it.
 */
final class Downstream {
  private static final LocalDate NEVER = LocalDate.of(9999, 12, 31);

  private final Standard found;
  private final Map<Long, Standard> all;
  private final List<Trace> traces;
  private final Map<String, Boolean> seen = new HashMap<>();

  private Downstream(Standard found, Collection<Standard> all, List<Trace> traces) {
    this.found = found;
    this.all = all.stream().collect(Collectors.toMap(Standard::id, Function.identity()));
    this.traces = traces;
  }

  /**
   * The standard itself first.
   *
   * @param from first day on which it was wrong
   * @param until first day on which it no longer was
   */
  static List<Affected> of(
      Standard found,
      LocalDate from,
      LocalDate until,
      Collection<Standard> all,
      List<Trace> traces) {
    String whyNot =
        found.kind().units().isEmpty() ? found.code() + " sets no gap and measures no output" : "";
    Affected itself = new Affected(found, null, from, until, List.of(found.code()), whyNot);
    return new Downstream(found, all, traces).walk(itself);
  }

  private List<Affected> walk(Affected itself) {
    List<Affected> reached = new ArrayList<>();
    Queue<Affected> next = new ArrayDeque<>(List.of(itself));
    while (!next.isEmpty()) {
      Affected here = next.remove();
      reached.add(here);
      for (Trace trace : traces) {
        Standard standard = all.get(trace.standard());
        if (standard != null && standard.id() != found.id() && isAgainst(here, trace)) {
          Affected further = further(here, standard, trace);
          if (saysMore(trace, further)) {
            next.add(further);
          }
        }
      }
    }
    return reached;
  }

  /** New, or reached so far only in ways that carry no numbers. */
  private boolean saysMore(Trace trace, Affected further) {
    String key =
        trace.isCheck()
            ? trace.standard() + " " + trace.on()
            : "certificate " + trace.certificate();
    Boolean before = seen.get(key);
    if (before == null || (!before && further.carries())) {
      seen.put(key, further.carries());
      return true;
    }
    return false;
  }

  private static boolean isAgainst(Affected here, Trace trace) {
    if (trace.reference() != here.standard().id()) {
      return false;
    }
    Long certificate = here.certificate();
    return certificate == null
        ? !trace.on().isBefore(here.from()) && trace.on().isBefore(here.until())
        : certificate == trace.referenceCertificate();
  }

  private Affected further(Affected here, Standard standard, Trace trace) {
    List<String> path = new ArrayList<>(here.path());
    path.add(step(standard, trace));
    return new Affected(
        standard,
        trace.certificate(),
        trace.on(),
        trace.isCheck() ? untilNext(standard, trace.on()) : NEVER,
        path,
        whyNot(here, standard, trace));
  }

  private static String step(Standard standard, Trace trace) {
    String how =
        trace.isCheck()
            ? "checked on " + trace.on()
            : "certificate " + number(standard, trace.certificate());
    return standard.code() + " (" + how + ")";
  }

  private static String number(Standard standard, @Nullable Long certificate) {
    return standard.certificates().stream()
        .filter(each -> certificate != null && each.id() == certificate)
        .map(Certificate::number)
        .findFirst()
        .orElse("?");
  }

  private String whyNot(Affected here, Standard standard, Trace trace) {
    if (!here.carries()) {
      return here.whyNot();
    }
    if (trace.isCheck()) {
      return "%s was only checked against %s: by how much it is wrong itself no check tells"
          .formatted(standard.code(), here.standard().code());
    }
    return standard.kind() == found.kind()
        ? ""
        : "%s is a %s and %s a %s: the error of one can't be put into the readings of the other"
            .formatted(found.code(), found.kind().word(), standard.code(), standard.kind().word());
  }

  /** A later certificate or check says anew what the standard is worth. */
  private static LocalDate untilNext(Standard standard, LocalDate on) {
    return Stream.concat(
            standard.certificates().stream().map(Certificate::issuedOn),
            standard.events().stream()
                .filter(event -> event.kind() == StandardEvent.Kind.CHECK_PASSED)
                .map(StandardEvent::on))
        .filter(day -> day.isAfter(on))
        .min(LocalDate::compareTo)
        .orElse(NEVER);
  }
}
