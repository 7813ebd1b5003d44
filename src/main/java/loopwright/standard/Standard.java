package loopwright.standard;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * A reference standard: measuring equipment used to calibrate.
 *
 * @param code what the shop calls it
 * @param certificates newest first
 * @param events newest first
 */
public record Standard(
    long id,
    String code,
    StandardKind kind,
    String maker,
    String model,
    String serial,
    String note,
    List<Certificate> certificates,
    List<StandardEvent> events) {

  /** So long before its due date somebody should send it away (own choice). */
  static final int NOTICE_DAYS = 30;

  public Standard {
    certificates = List.copyOf(certificates);
    events = List.copyOf(events);
  }

  /** {@code DVM-2, voltmeter Nordling M4 serial 0017}. */
  public String inWords() {
    return "%s, %s %s %s serial %s".formatted(code, kind.word(), maker, model, serial);
  }

  /** The newest certificate of all. */
  public Optional<Certificate> newest() {
    return certificates.stream().findFirst();
  }

  /** The certificate that was in force on a day, overdue or not: the last one issued by then. */
  public Optional<Certificate> certificateOf(LocalDate day) {
    return certificates.stream().filter(c -> !c.issuedOn().isAfter(day)).findFirst();
  }

  /** {@code in use}, {@code out of use} or {@code failed its check}. */
  public String state() {
    return switch (latest()) {
      case OUT_OF_USE -> "out of use";
      case CHECK_FAILED -> "failed its check";
      default -> "in use";
    };
  }

  private StandardEvent.Kind latest() {
    return events.stream()
        .findFirst()
        .map(StandardEvent::kind)
        .orElse(StandardEvent.Kind.BACK_IN_USE);
  }

  public boolean inUse() {
    return state().equals("in use");
  }

  /** Whether it was out of use, or had failed a check that nothing followed, on that day. */
  public boolean unfitOn(LocalDate day) {
    return !new Standard(
            id,
            code,
            kind,
            maker,
            model,
            serial,
            note,
            certificates,
            events.stream().filter(event -> !event.on().isAfter(day)).toList())
        .inUse();
  }
}
