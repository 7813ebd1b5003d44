package loopwright.alloy;

import java.math.BigDecimal;
import java.util.List;

/**
 * Groups to begin with. Slopes of 200, 250, 290, 330, 370 and 380 mV/mil over 200 mV/mil, for a
 * driver made for 4140: vibration handbooks, from memory. Near-equivalents of 4140: transducer
 * manuals; 1.7225 from memory.
 */
final class UsualGroups {
  private static final String FROM_MEMORY = "vibration handbooks, from memory";

  private UsualGroups() {}

  static List<GroupDetails> all() {
    return List.of(
        group("Low-alloy steel", true, "1", "4140", "AISI 4140", "SCM440", "42CrMo4", "1.7225"),
        group("Austenitic stainless steel", true, "1.25", "304", "AISI 304", "316", "AISI 316"),
        group("Tungsten carbide", false, "1.45", "tungsten carbide"),
        group("Brass", false, "1.65", "brass"),
        group("Aluminium", false, "1.85", "aluminium", "aluminum"),
        group("Copper", false, "1.9", "copper"));
  }

  private static GroupDetails group(String name, boolean ferrous, String slope, String... alloys) {
    String source = slope.equals("1") ? "by definition" : FROM_MEMORY;
    return new GroupDetails(name, ferrous, new BigDecimal(slope), source, List.of(alloys));
  }
}
