package loopwright.register;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.time.SiteMoment;
import org.jspecify.annotations.Nullable;

/** What was said of a part, change by change: per fact before and after, who, when and why. */
final class FactHistory {
  private final Function<ComponentFacts, Map<String, String>> words;
  private final ZoneId zone;

  /**
   * @param words the facts in words
   * @param zone whose clock is shown
   */
  FactHistory(Function<ComponentFacts, Map<String, String>> words, ZoneId zone) {
    this.words = words;
    this.zone = zone;
  }

  /**
   * One change.
   *
   * @param lines what it said: since when, which fact, before and after
   */
  record Said(String when, String by, String reason, List<String> lines) {}

  /** The latest first. */
  List<Said> of(List<Belief> all) {
    Map<Long, List<Belief>> byChange = new LinkedHashMap<>();
    for (Belief belief : all) {
      ChangeNote made = belief.made();
      if (made != null) {
        byChange.computeIfAbsent(made.change(), change -> new ArrayList<>()).add(belief);
      }
    }
    List<Said> said = new ArrayList<>();
    byChange.forEach((change, taken) -> said.add(said(change, taken, all)));
    return said;
  }

  private Said said(long change, List<Belief> taken, List<Belief> all) {
    List<Belief> given =
        all.stream().filter(b -> b.givenUp() != null && b.givenUp().change() == change).toList();
    List<String> lines = new ArrayList<>();
    taken.stream()
        .sorted(Comparator.comparing(belief -> belief.span().from()))
        .forEach(belief -> tell(lines, belief, before(given, belief.span().from())));
    ChangeNote note = taken.get(0).made();
    return note == null
        ? new Said("", "", "", lines)
        : new Said(SiteMoment.shown(note.at(), zone), note.by(), note.reason(), lines);
  }

  private static Optional<Belief> before(List<Belief> given, Instant moment) {
    return given.stream().filter(belief -> belief.span().contains(moment)).findFirst();
  }

  private void tell(List<String> lines, Belief belief, Optional<Belief> before) {
    String since = "since " + SiteMoment.shown(belief.span().from(), zone) + ": ";
    Map<String, String> now = words.apply(belief.facts());
    if (before.isEmpty()) {
      now.forEach((name, text) -> addKnown(lines, since, name, text));
      return;
    }
    FactLines.changed(words.apply(before.get().facts()), now)
        .forEach((name, text) -> lines.add(since + name + " " + text));
  }

  private static void addKnown(
      List<String> lines, String since, String name, @Nullable String text) {
    if (text != null && !text.equals(PartWords.NOT_KNOWN) && !text.equals("not said")) {
      lines.add(since + name + " " + text);
    }
  }
}
