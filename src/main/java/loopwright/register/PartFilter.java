package loopwright.register;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** Which parts are asked for, as it stands in an address: {@code kind=probe&state=in stock}. */
public final class PartFilter {
  private static final List<String> FIELDS =
      List.of("kind", "family", "length", "length-unit", "state", "maker", "serial", "order");

  private PartFilter() {}

  /** What the form asks for; complaints stay with it. */
  public static ComponentQuery query(Form form, List<Family> known) {
    return ComponentQuery.EVERYTHING
        .ofKind(form.optional("kind", PartWords::kind).orElse(null))
        .inState(form.optional("state", PartWords::state).orElse(null))
        .ofFamily(form.optional("family", code -> named(known, code)).map(Family::id).orElse(null))
        .ofLength(length(form).orElse(null))
        .ofMaker(form.optional("maker", PartFilter::maker).orElse(""))
        .withSerial(form.optional("serial", PartFilter::serial).orElse(""))
        .inOrder(ComponentQuery.Order.named(form.typed("order")));
  }

  static Family named(List<Family> known, String code) {
    return known.stream()
        .filter(family -> family.code().equalsIgnoreCase(code.strip()))
        .findFirst()
        .orElseThrow(() -> new Refused(RegisterProblem.UNKNOWN_FAMILY, code.strip()));
  }

  /** Checked like a length that a part can have, or the list would silently be empty. */
  private static Optional<Length> length(Form form) {
    @Nullable Unit unit = form.usualUnit("length-unit", List.of(Unit.METRE, Unit.FOOT));
    return unit == null ? Optional.empty() : length(form, unit);
  }

  private static Optional<Length> length(Form form, Unit unit) {
    return form.optional(
        "length",
        text -> {
          Reported typed = NominalLength.reported(text, unit);
          NominalLength.refuseImpossible(typed, NominalLength.MOST_METRES);
          return Length.of(typed);
        });
  }

  private static String maker(String text) {
    return ComponentQuery.EVERYTHING.ofMaker(text).maker();
  }

  private static String serial(String text) {
    return ComponentQuery.EVERYTHING.withSerial(text).serial();
  }

  /** Where in the list; null at its beginning. */
  public static @Nullable Cursor cursor(Form form) {
    return form.optional("before", text -> Cursor.read(true, text))
        .or(() -> form.optional("after", text -> Cursor.read(false, text)))
        .orElse(null);
  }

  /** The filter as it stands in an address; empty when nothing is asked for. */
  public static String text(Form form) {
    return FIELDS.stream()
        .filter(field -> !form.typed(field).isBlank())
        .map(field -> field + "=" + encoded(form.typed(field)))
        .collect(Collectors.joining("&"));
  }

  /**
   * The list on that page at another place; null when there is none.
   *
   * @param name {@code before} or {@code after}
   */
  public static @Nullable String address(String page, Form form, String name, @Nullable Cursor at) {
    if (at == null) {
      return null;
    }
    String filter = text(form);
    return page + "?" + filter + (filter.isEmpty() ? "" : "&") + name + "=" + encoded(at.text());
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
