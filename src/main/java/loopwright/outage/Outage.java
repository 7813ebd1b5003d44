package loopwright.outage;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.problem.Refused;
import loopwright.problem.Text;

/**
 * A time when trains stand still and loops can be worked on.
 *
 * @param zone clock of its site
 * @param begins first day of the window
 * @param ends last day, itself inside
 * @param team who does the work, in words; may be empty
 * @param trains that stand still, by code
 * @param steps oldest first; the last one says where it stands
 */
public record Outage(
    long id,
    long site,
    String siteName,
    ZoneId zone,
    String name,
    LocalDate begins,
    LocalDate ends,
    String team,
    int version,
    List<Standing> trains,
    List<Step> steps) {

  public Outage {
    trains = List.copyOf(trains);
    steps = List.copyOf(steps);
  }

  /** A train that stands still. */
  public record Standing(long train, String code) {}

  /** Who moved it on, when and why. */
  public record Step(OutageState state, String who, Instant at, String note) {}

  /** What a planner says of one. */
  public record Details(String name, LocalDate begins, LocalDate ends, String team) {
    /** Refuses a window that ends before it begins. */
    public Details {
      name = Text.needed("the name", name, 120);
      team = Text.kept("the team", team, 400);
      if (ends.isBefore(begins)) {
        throw new Refused(OutageProblem.ENDS_BEFORE, begins, ends);
      }
    }
  }

  /** As people say it. */
  public String number() {
    return number(id);
  }

  static String number(long id) {
    return "O-" + id;
  }

  public String href() {
    return "/outages/" + number();
  }

  public OutageState state() {
    return steps.isEmpty() ? OutageState.PLANNED : steps.get(steps.size() - 1).state();
  }

  public boolean isClosed() {
    return state() == OutageState.CLOSED;
  }

  /** When it was brought into that state; empty if it never was. */
  public Optional<Step> step(OutageState state) {
    return steps.stream().filter(step -> step.state() == state).findFirst();
  }

  /** Whether it is that very plan. */
  boolean isPlanned(Details details, List<Long> sortedTrains) {
    return new Details(name, begins, ends, team).equals(details)
        && trains.stream().map(Standing::train).sorted().toList().equals(sortedTrains);
  }

  /** Codes of its trains in one line. */
  public String trainCodes() {
    return trains.stream().map(Standing::code).collect(Collectors.joining(", "));
  }
}
