package loopwright.calibration;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.loop.Configuration;
import loopwright.loop.PartSet;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Component;
import loopwright.register.Register;
import org.jooq.DSLContext;

/** Sets of parts that are not simply what is fitted: read, checked, told in words. */
final class MeasuredSets {
  private final Register register;
  private final Configuration configuration;

  MeasuredSets(Register register, Configuration configuration) {
    this.register = register;
    this.configuration = configuration;
  }

  /**
   * The set that an address names.
   *
   * @throws Refused if it is none, or a part isn't in the register or can't sit in its slot
   */
  PartSet read(DSLContext sql, String text) {
    PartSet set = PartSet.read(text).orElseThrow(() -> new Refused(CalibrationProblem.NO_SET));
    Map<Long, Component> found = register.components(sql, set.components());
    for (Slot slot : set.slots()) {
      long number = set.part(slot).number();
      Component part = found.get(number);
      if (part == null) {
        throw new Refused(CalibrationProblem.NO_SUCH_PART, number);
      }
      refuseWrongPlace(slot, part);
    }
    return set;
  }

  private static void refuseWrongPlace(Slot slot, Component part) {
    if (part.kind().place() != place(slot)) {
      throw new Refused(
          CalibrationProblem.WRONG_PLACE,
          Text.capital(part.inWords()),
          part.kind().word(),
          slot.word());
    }
  }

  private static PartKind.Place place(Slot slot) {
    return switch (slot) {
      case PROBE -> PartKind.Place.PROBE_SLOT;
      case DRIVER -> PartKind.Place.DRIVER_SLOT;
      default -> PartKind.Place.PATH;
    };
  }

  /**
   * What is fitted, with the part of that serial or shop number standing in.
   *
   * @throws Refused if it names none or several, or can't sit there
   */
  PartSet standingIn(DSLContext sql, PartSet fitted, Slot slot, String serial) {
    List<Component> found = register.labelled(sql, serial);
    if (found.isEmpty()) {
      throw new Refused(CalibrationProblem.NO_SUCH_PART, serial);
    }
    if (found.size() > 1) {
      throw new Refused(
          CalibrationProblem.SEVERAL_PARTS,
          found.size(),
          serial,
          found.stream().map(Component::inWords).collect(Collectors.joining("; ")));
    }
    refuseWrongPlace(slot, found.get(0));
    return fitted.with(slot, found.get(0).id().number());
  }

  /** Parts that were on record fitted at another point then, each as a sentence to confirm. */
  List<String> elsewhere(DSLContext sql, NewCalibration fresh) {
    List<String> questions = new ArrayList<>();
    for (long number : fresh.with().parts().map(PartSet::components).orElse(List.of())) {
      Long here = fresh.with().atPoint();
      fittedAt(sql, number, fresh.measuredAt())
          .filter(placed -> here == null || placed.point() != here)
          .ifPresent(
              placed ->
                  questions.add(
                      Refused.say(
                          CalibrationProblem.ELSEWHERE,
                          words(sql, number),
                          configuration.tag(sql, placed.point()))));
    }
    return questions;
  }

  private Optional<Placed> fittedAt(DSLContext sql, long part, Instant at) {
    return configuration.ofComponent(sql, part).stream()
        .filter(placed -> placed.span().contains(at))
        .findFirst();
  }

  private String words(DSLContext sql, long number) {
    return register.components(sql, List.of(number)).values().stream()
        .findFirst()
        .map(Component::inWords)
        .orElse("part " + number);
  }

  /** How the parts of a kept record stood, in a sentence; empty for what was fitted. */
  String told(DSLContext sql, Calibrated c) {
    return switch (c.setup()) {
      case FITTED -> "";
      case BENCH -> "Taken on the bench, with these parts fitted at no loop.";
      case STOOD_IN -> stoodIn(sql, c);
    };
  }

  private String stoodIn(DSLContext sql, Calibrated c) {
    Long point = c.point();
    Optional<PartSet> fitted =
        point == null ? Optional.empty() : PartSet.of(configuration.at(sql, point, c.measuredAt()));
    String stood =
        fitted
            .flatMap(was -> PartSet.read(c.fingerprint()).map(set -> inPlace(sql, set, was)))
            .orElse("other parts than were fitted there");
    return "Taken at %s with %s. It is not the loop's own calibration and never counts as its as left."
        .formatted(c.tag(), stood);
  }

  private String inPlace(DSLContext sql, PartSet set, PartSet fitted) {
    return set.differingFrom(fitted).stream()
        .map(
            slot ->
                (set.parts().containsKey(slot) ? words(sql, set.part(slot).number()) : "nothing")
                    + " standing in for "
                    + (fitted.parts().containsKey(slot)
                        ? words(sql, fitted.part(slot).number())
                        : "nothing in slot " + slot.word()))
        .collect(Collectors.joining(", "));
  }

  /** Tags of the loops that are exactly this combination at that moment. */
  List<String> fittedSo(DSLContext sql, Calibrated c, Instant now) {
    Optional<PartSet> set = PartSet.read(c.fingerprint());
    return set.stream()
        .flatMap(s -> fittedAt(sql, s.part(Slot.PROBE).number(), now).stream())
        .map(Placed::point)
        .filter(point -> PartSet.of(configuration.at(sql, point, now)).equals(set))
        .map(point -> configuration.tag(sql, point))
        .toList();
  }
}
