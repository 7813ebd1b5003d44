package loopwright.pack;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One loop's sheet as it is printed and frozen. Every quantity is text as printed, so that the same
 * facts give the same bytes.
 *
 * @param loop tag, place and what is around it
 * @param chain probe, path and driver in order
 * @param balance nominal lengths fitted minus what the driver is tuned for, both units; empty when
 *     a length is not known
 * @param tolerance largest balance that counts as none, in metres
 * @param targetGap approved gap, both units; empty when none is approved
 * @param expectedVolts at the approved gap; empty when nothing says
 * @param limits at each gap; null when no profile is known for the loop
 * @param basis of what is expected
 * @param channels rack, slot, channel and settings, one a line
 * @param votes voting groups, one a line
 * @param jobs what is done, with steps
 * @param open findings that are worse than <em>matches</em>
 * @param spares parts put aside for it
 * @param mounting how the probe is mounted and reached, one fact a line
 */
record LoopSheet(
    About loop,
    List<Fitted> chain,
    String balance,
    String tolerance,
    String targetGap,
    String expectedVolts,
    @Nullable Limits limits,
    String basis,
    List<String> channels,
    List<String> votes,
    List<Job> jobs,
    List<String> open,
    List<String> spares,
    List<String> mounting) {

  /** What a loop is called and where it is. */
  record About(
      String tag,
      String train,
      String machine,
      String place,
      String kind,
      String box,
      String area,
      String alloy) {}

  /**
   * What stands in a slot.
   *
   * @param slot as returned files name it
   * @param content fitted, none or unknown
   * @param kind in words
   * @param serial or shop number; empty when it has none
   * @param about maker, model, family
   * @param metres nominal; empty when not known
   * @param note how weakly the length is known; may be empty
   */
  record Fitted(
      String slot,
      String content,
      String kind,
      String serial,
      String about,
      String metres,
      String note) {}

  /**
   * What a profile asks.
   *
   * @param version number of the profile's version in the register
   * @param name name, source and edition
   * @param unit of the gaps
   * @param isf limits of the incremental scale factor, both units
   * @param step by how much a reading must differ from the one before, V
   * @param dsl limit of the deviation from the straight line, both units
   */
  record Limits(
      String profile,
      String version,
      String name,
      String unit,
      String isf,
      String step,
      String dsl,
      List<Reading> readings) {
    Limits {
      readings = List.copyOf(readings);
    }
  }

  /**
   * One gap to set.
   *
   * @param gap in the unit of the limits
   * @param other the same in the other unit
   * @param expected V; empty when nothing says
   * @param lowest more negative end of the DSL corridor, V; empty when nothing says where the line
   *     lies
   * @param highest less negative end
   */
  record Reading(String gap, String other, String expected, String lowest, String highest) {}

  /**
   * One kind of work with its steps.
   *
   * @param emergent who found it to be needed while the outage was under way, when and why; empty
   *     for what was planned, and then not written, so that sheets issued before there was any keep
   *     their bytes
   */
  record Job(
      String work,
      List<String> steps,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) String emergent) {
    @JsonCreator
    Job(
        @JsonProperty("work") String work,
        @JsonProperty("steps") List<String> steps,
        @JsonProperty("emergent") @Nullable String emergent) {
      this.work = work;
      this.steps = List.copyOf(steps);
      this.emergent = emergent == null ? "" : emergent;
    }

    boolean isEmergent() {
      return !emergent.isEmpty();
    }
  }

  LoopSheet {
    chain = List.copyOf(chain);
    channels = List.copyOf(channels);
    votes = List.copyOf(votes);
    jobs = List.copyOf(jobs);
    open = List.copyOf(open);
    spares = List.copyOf(spares);
    // sheets frozen before there was room for it
    mounting = List.copyOf(Objects.requireNonNullElse(mounting, List.of()));
  }

  String tag() {
    return loop.tag();
  }

  /** The serial planned for a slot; empty for a slot that holds nothing or isn't known. */
  String planned(String slot) {
    return chain.stream()
        .filter(part -> part.slot().equals(slot))
        .map(Fitted::serial)
        .findFirst()
        .orElse("");
  }

  /** What of it differs from another one, in words for people; empty when nothing does. */
  List<String> differences(LoopSheet now) {
    List<String> different = new ArrayList<>();
    compare(different, "parts", chain, now.chain);
    compare(different, "length balance", balance, now.balance);
    compare(different, "approved gap", targetGap, now.targetGap);
    compare(different, "expected voltages and limits", limits, now.limits);
    compare(different, "expected voltage", expectedVolts, now.expectedVolts);
    compare(different, "channel settings", channels, now.channels);
    compare(different, "voting", votes, now.votes);
    compare(different, "work and steps", jobs, now.jobs);
    compare(different, "findings", open, now.open);
    compare(different, "spares", spares, now.spares);
    compare(different, "mounting and access", mounting, now.mounting);
    compare(different, "place and surroundings", loop, now.loop);
    return different;
  }

  private static void compare(
      List<String> different, String what, @Nullable Object before, @Nullable Object now) {
    if (!Objects.equals(before, now)) {
      different.add(what);
    }
  }
}
