package loopwright.loop;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.time.SiteMoment;
import loopwright.web.Form;
import org.jooq.DSLContext;

/** Reads the form on which a survey or an assembly is entered: a serial a slot. */
final class ChangeForm {
  /** What is typed where somebody looked and can't tell. */
  static final String UNREADABLE = "?";

  /** Slots that the form offers; the others are for files. */
  static final List<Slot> SLOTS =
      List.of(Slot.PROBE, Slot.PATH_1, Slot.PATH_2, Slot.PATH_3, Slot.DRIVER);

  private final Form form;
  private final PartFacts parts;

  ChangeForm(Form form, PartFacts parts) {
    this.form = form;
    this.parts = parts;
  }

  /** The slots to offer for a loop: the usual ones and whatever else holds something there. */
  static List<Slot> slots(List<Placed> present) {
    return Stream.concat(SLOTS.stream(), present.stream().map(Placed::slot))
        .distinct()
        .sorted()
        .toList();
  }

  /**
   * The chain as typed; complaints stay with the form where a serial can't be taken.
   *
   * @param present what is on record now; a driver box that stays keeps its channel
   */
  Optional<Chain> chain(DSLContext sql, List<Placed> present) {
    Map<Slot, Content> slots = new EnumMap<>(Slot.class);
    List<Slot> offered = slots(present);
    for (Slot slot : offered) {
      String typed = form.typed(slot.word()).strip();
      if (typed.equals(UNREADABLE)) {
        slots.put(slot, new Content.Unknown());
      } else if (!typed.isEmpty()) {
        TypedPart.read(sql, parts, slot, typed, present, form)
            .ifPresent(part -> slots.put(slot, part));
      } else if (slot == Slot.PATH_1) {
        slots.put(slot, new Content.None());
      }
    }
    complainOfTwice(slots);
    return offered.stream().allMatch(slot -> form.complaint(slot.word()) == null)
        ? Optional.of(new Chain(slots))
        : Optional.empty();
  }

  /** Complains of parts that nobody knew of at that moment; false if there are any. */
  boolean complainOfUnborn(DSLContext sql, Chain chain, Instant at, ZoneId zone) {
    chain
        .slots()
        .forEach(
            (slot, content) ->
                content.component().stream()
                    .mapToObj(number -> parts.knownFrom(sql, number))
                    .filter(from -> from.isAfter(at))
                    .forEach(from -> form.complain(slot.word(), unborn(slot, from, zone))));
    return form.ok();
  }

  private String unborn(Slot slot, Instant from, ZoneId zone) {
    return "%s is on record only since %s. Give a later moment, or say on its page since when it was so."
        .formatted(form.typed(slot.word()).strip(), SiteMoment.shown(from, zone));
  }

  private void complainOfTwice(Map<Slot, Content> slots) {
    Map<Content, Slot> first = new HashMap<>();
    slots.forEach(
        (slot, content) -> {
          if (content instanceof Content.Part) {
            Slot other = first.putIfAbsent(content, slot);
            if (other != null) {
              form.complain(
                  slot.word(),
                  "This part stands already as " + Words.usual(other) + ". Choose another one.");
            }
          }
        });
  }

  /**
   * Fills in what is on record now.
   *
   * @param texts how the parts are typed, by slot
   */
  static Form filled(List<Placed> chain, Map<Slot, String> texts, Instant now, ZoneId zone) {
    Form form = Form.blank();
    for (Placed placed : chain) {
      if (placed.content() instanceof Content.Part) {
        form.put(placed.slot().word(), texts.getOrDefault(placed.slot(), UNREADABLE));
      } else if (placed.content() instanceof Content.Unknown) {
        form.put(placed.slot().word(), UNREADABLE);
      }
    }
    List<String> moment = new ArrayList<>(List.of(SiteMoment.shown(now, zone).split(" ")));
    return form.put("on", moment.get(0)).put("time", moment.get(1));
  }
}
