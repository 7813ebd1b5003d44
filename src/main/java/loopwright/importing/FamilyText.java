package loopwright.importing;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import loopwright.matching.PartKind;
import loopwright.register.FamilyDetails;
import loopwright.units.Length;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;

/** A family field by field, as it is compared and shown. */
final class FamilyText {
  private FamilyText() {}

  static Map<String, String> of(FamilyDetails family) {
    Map<String, String> text = new LinkedHashMap<>();
    text.put("name", family.name());
    text.put("maker", family.maker());
    text.put("scale factor", family.scaleFactor().toString());
    text.put("linear range from", micrometres(family.range().fromMicrometres()));
    text.put("linear range to", micrometres(family.range().toMicrometres()));
    text.put("start voltage", plain(family.startVolts(), " V"));
    text.put("tip", plain(family.tipMillimetres(), " mm"));
    text.put("probe lengths", lengths(family, PartKind.PROBE));
    text.put("cable lengths", lengths(family, PartKind.CABLE));
    text.put("system lengths", lengths(family, PartKind.DRIVER));
    text.put("length tolerance", metres(family.lengthTolerance()));
    text.put("cable use", family.cableUse().word());
    text.put("two cables", family.twoCablesAllowed() ? "allowed" : "refused");
    text.put("connectors", family.connectors());
    text.put("target alloy", family.targetAlloy());
    text.put("output", family.output().toString());
    text.put("profile", Objects.toString(family.profile(), ""));
    text.put("note", family.note());
    return text;
  }

  private static String micrometres(@Nullable Double gap) {
    return gap == null ? "" : plain(BigDecimal.valueOf(gap), " µm");
  }

  private static String plain(@Nullable BigDecimal number, String unit) {
    return number == null ? "" : Numbers.plain(number) + unit;
  }

  private static String lengths(FamilyDetails family, PartKind part) {
    return family.lengthsOf(part).stream()
        .map(offered -> metres(offered.length()))
        .collect(Collectors.joining(", "));
  }

  private static String metres(Length length) {
    return Numbers.plain(length.metres()) + " m";
  }
}
