package loopwright.loop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What surveys, assemblies and corrections mean, told a second time and in another way than the
 * program does it: every slot of every point is a row of days, and what is said paints days. Knows
 * neither beliefs nor a database. The last day stands for all that come after it.
 */
final class PaintedHistory {
  static final int DAYS = 12;

  /** A slot of a point. */
  record Place(int point, Slot slot) implements Comparable<Place> {
    @Override
    public int compareTo(Place other) {
      return point == other.point
          ? slot.compareTo(other.slot)
          : Integer.compare(point, other.point);
    }
  }

  /** A stay as it reads off the painted days: {@code until} is the first day no more in it. */
  record Run(Place place, int from, int until, String content) {}

  private record Dispute(String part, int day, Place standing, Place other) {
    boolean claims(Place place) {
      return standing.equals(place) || other.equals(place);
    }
  }

  private static final class Days {
    private final @Nullable String[] content = new String[DAYS];
    private final int[] stay = new int[DAYS];
  }

  private final Map<Place, Days> places = new TreeMap<>();
  private final List<Dispute> disputes = new ArrayList<>();
  private final List<int[]> claims = new ArrayList<>();
  private int stays;

  private Days days(Place place) {
    return places.computeIfAbsent(place, p -> new Days());
  }

  @Nullable String at(Place place, int day) {
    return days(place).content[day];
  }

  int openDisputes() {
    return disputes.size();
  }

  /** What sits where, slot by slot and day by day; unaffected by what is painted later. */
  Map<Place, @Nullable String[]> picture() {
    Map<Place, @Nullable String[]> picture = new TreeMap<>();
    places.forEach((place, days) -> picture.put(place, days.content.clone()));
    return picture;
  }

  /** Every stay, place by place, the earliest first. */
  List<Run> runs() {
    List<Run> runs = new ArrayList<>();
    places.forEach(
        (place, days) -> {
          int from = 0;
          while (from < DAYS) {
            int until = end(place, from);
            String content = days.content[from];
            if (content != null) {
              runs.add(new Run(place, from, until, content));
            }
            from = until;
          }
        });
    return runs;
  }

  /** The first day after that one on which another stay, or none, is painted. */
  private int end(Place place, int day) {
    Days days = days(place);
    int until = day + 1;
    while (until < DAYS
        && (days.content[until] == null) == (days.content[day] == null)
        && days.stay[until] == days.stay[day]) {
      until++;
    }
    return until;
  }

  private int begin(Place place, int day) {
    Days days = days(place);
    int from = day;
    while (from > 0 && days.content[from - 1] != null && days.stay[from - 1] == days.stay[day]) {
      from--;
    }
    return from;
  }

  private int nextInSlot(Place place, int day) {
    int next = day + 1;
    while (next < DAYS && at(place, next) == null) {
      next++;
    }
    return next;
  }

  /** When the part next comes to sit somewhere after that day. */
  private int nextOfPart(String part, int day) {
    int next = DAYS;
    for (Run run : runs()) {
      if (run.content().equals(part) && run.from() > day) {
        next = Math.min(next, run.from());
      }
    }
    return next;
  }

  private @Nullable Place where(String part, int day) {
    return places.keySet().stream()
        .filter(place -> part.equals(at(place, day)))
        .findFirst()
        .orElse(null);
  }

  private void paint(Place place, int from, int until, @Nullable String content) {
    Days days = days(place);
    Arrays.fill(days.content, from, until, content);
    Arrays.fill(days.stay, from, until, content == null ? 0 : ++stays);
  }

  private boolean claimed(int point, int day) {
    return claims.stream().anyMatch(claim -> claim[0] == point && claim[1] == day);
  }

  static boolean isPart(String content) {
    return content.startsWith("part");
  }

  /** Something painted once all has been looked at. */
  private record Stroke(Place place, int from, int until, @Nullable String content) {}

  /** A survey or an assembly: the whole chain at a point, seen on a day. */
  void seen(int point, int day, Map<Slot, String> chain) {
    List<Stroke> gone = new ArrayList<>();
    List<Stroke> unknown = new ArrayList<>();
    List<Stroke> found = new ArrayList<>();
    for (Slot slot : Slot.values()) {
      Place here = new Place(point, slot);
      String present = at(here, day);
      String wanted = credible(here, day, chain.getOrDefault(slot, "none"));
      boolean nothingSaid = present == null && !chain.containsKey(slot);
      if (nothingSaid || wanted.equals(present)) {
        continue;
      }
      int until = present == null ? nextInSlot(here, day) : end(here, day);
      if (present != null) {
        gone.add(new Stroke(here, day, until, null));
      }
      if (isPart(wanted)) {
        Place elsewhere = where(wanted, day);
        if (elsewhere != null) {
          int stayed = end(elsewhere, day);
          gone.add(new Stroke(elsewhere, day, stayed, null));
          if (elsewhere.point() != point) {
            unknown.add(new Stroke(elsewhere, day, stayed, "unknown"));
          }
        }
        until = Math.min(until, nextOfPart(wanted, day));
      }
      found.add(new Stroke(here, day, until, wanted));
    }
    for (List<Stroke> strokes : List.of(gone, unknown, found)) {
      strokes.forEach(s -> paint(s.place(), s.from(), s.until(), s.content()));
    }
    claims.add(new int[] {point, day});
  }

  private String credible(Place here, int day, String wanted) {
    Place elsewhere = isPart(wanted) ? where(wanted, day) : null;
    if (elsewhere == null
        || elsewhere.point() == here.point()
        || !claimed(elsewhere.point(), day)) {
      return wanted;
    }
    boolean known =
        disputes.stream()
            .anyMatch(
                open ->
                    open.part().equals(wanted)
                        && open.day() == day
                        && open.claims(here)
                        && open.claims(elsewhere));
    if (!known) {
      disputes.add(new Dispute(wanted, day, elsewhere, here));
    }
    return "unknown";
  }

  /**
   * A correction of the days from one until before another.
   *
   * @return false if it must be refused: the part sits elsewhere, or nothing would change
   */
  boolean corrected(Place place, int from, int until, String content) {
    List<Dispute> decided =
        disputes.stream()
            .filter(open -> open.claims(place) && open.day() >= from && open.day() < until)
            .toList();
    boolean said = content.equals(at(place, from)) && end(place, from) >= until;
    if (elsewhere(place, from, until, content) || said && decided.isEmpty()) {
      return false;
    }
    if (!said) {
      repaint(place, from, until, content);
    }
    decided.forEach(dispute -> decide(dispute, place, content));
    claims.add(new int[] {place.point(), from});
    return true;
  }

  private boolean elsewhere(Place place, int from, int until, String content) {
    return isPart(content)
        && runs().stream()
            .filter(run -> run.content().equals(content) && !run.place().equals(place))
            .anyMatch(run -> run.from() < until && from < run.until());
  }

  /** What is the same right beside the corrected days, or shares some, becomes one stay. */
  private void repaint(Place place, int from, int until, String content) {
    int first = from;
    int last = until;
    for (int day : new int[] {from - 1, from}) {
      if (day >= 0 && content.equals(at(place, day))) {
        first = Math.min(first, begin(place, day));
      }
    }
    for (int day : new int[] {until - 1, until}) {
      if (day < DAYS && content.equals(at(place, day))) {
        last = Math.max(last, end(place, day));
      }
    }
    splitAt(place, until);
    paint(place, first, last, content);
  }

  /** What lasts longer than the corrected days goes on after them as a stay of its own. */
  private void splitAt(Place place, int until) {
    if (until < DAYS) {
      String after = at(place, until);
      if (after != null && days(place).stay[until - 1] == days(place).stay[until]) {
        paint(place, until, end(place, until), after);
      }
    }
  }

  private void decide(Dispute dispute, Place place, String content) {
    disputes.remove(dispute);
    Place other = dispute.other();
    boolean givesWay = dispute.standing().equals(place) && !content.equals(dispute.part());
    if (givesWay && "unknown".equals(at(other, dispute.day()))) {
      int until = Math.min(end(other, dispute.day()), nextOfPart(dispute.part(), dispute.day()));
      if (!elsewhere(other, dispute.day(), until, dispute.part())) {
        repaint(other, dispute.day(), until, dispute.part());
      }
    }
  }

  /** A chain of these three; the other slots are not mentioned. */
  static Map<Slot, String> chain(String probe, String first, @Nullable String second) {
    Map<Slot, String> chain = new EnumMap<>(Slot.class);
    chain.put(Slot.PROBE, probe);
    chain.put(Slot.PATH_1, first);
    chain.put(Slot.DRIVER, "unknown");
    if (second != null) {
      chain.put(Slot.PATH_2, second);
    }
    return chain;
  }
}
