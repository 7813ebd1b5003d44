package loopwright.mounting;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import org.jspecify.annotations.Nullable;

/**
 * How the probe of a point is mounted and reached, as typed; what nobody said is empty.
 *
 * @param thread of the probe body, such as M10x1
 * @param torque of its lock nut, with its unit
 * @param insertionDepth from a face that is named, with its unit
 * @param terminals of the driver and the field cable
 * @param access what must be opened or taken off before
 * @param hours of work, all kinds of work together; null when nobody reckoned
 */
public record Mounting(
    String thread,
    String torque,
    String insertionDepth,
    String terminals,
    String access,
    @Nullable BigDecimal hours) {
  static final int MOST = 200;
  static final int MOST_ACCESS = 400;
  private static final BigDecimal MOST_HOURS = BigDecimal.valueOf(500);

  /** Nobody said anything. */
  public static final Mounting NOTHING_SAID = new Mounting("", "", "", "", "", null);

  /** Refuses too long texts and hours that can't be. */
  public Mounting {
    thread = Text.kept("the thread", thread, MOST);
    torque = Text.kept("the torque", torque, MOST);
    insertionDepth = Text.kept("the insertion depth", insertionDepth, MOST);
    terminals = Text.kept("the terminals", terminals, MOST);
    access = Text.kept("what must be taken off first", access, MOST_ACCESS);
    if (hours != null && (hours.signum() <= 0 || hours.compareTo(MOST_HOURS) > 0)) {
      throw new Refused(MountingProblem.HOURS, Numbers.plain(hours), MOST_HOURS);
    }
  }

  /** What is said, by what it is called, in the order of a sheet. */
  public Map<String, String> facts() {
    Map<String, String> facts = new LinkedHashMap<>();
    facts.put("Access", access);
    facts.put("Thread", thread);
    facts.put("Torque", torque);
    facts.put("Insertion depth", insertionDepth);
    facts.put("Terminals", terminals);
    facts.put("Hours", hours == null ? "" : Numbers.plain(hours));
    facts.values().removeIf(String::isEmpty);
    return facts;
  }
}
