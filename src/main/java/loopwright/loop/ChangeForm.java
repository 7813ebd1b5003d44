package loopwright.loop;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.matching.PartKind;
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

  /** The chain as typed; complaints stay with the form where a serial can't be taken. */
  Optional<Chain> chain(DSLContext sql) {
    Map<Slot, Content> slots = new EnumMap<>(Slot.class);
    for (Slot slot : SLOTS) {
      String typed = form.typed(slot.word()).strip();
      if (typed.equals(UNREADABLE)) {
        slots.put(slot, new Content.Unknown());
      } else if (!typed.isEmpty()) {
        part(sql, slot, typed).ifPresent(part -> slots.put(slot, part));
      } else if (slot == Slot.PATH_1) {
        slots.put(slot, new Content.None());
      }
    }
    complainOfTwice(slots);
    return SLOTS.stream().allMatch(slot -> form.complaint(slot.word()) == null)
        ? Optional.of(new Chain(slots))
        : Optional.empty();
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

  private Optional<Content> part(DSLContext sql, Slot slot, String typed) {
    String label = typed.split("\\s*·\\s*", 2)[0].strip();
    List<PartFacts.Choice> named = parts.named(sql, label);
    List<PartFacts.Choice> fitting =
        named.stream().filter(choice -> choice.kind().place() == place(slot)).toList();
    if (fitting.size() == 1) {
      return Optional.of(new Content.Part(fitting.get(0).number()));
    }
    List<PartFacts.Choice> meant =
        fitting.stream().filter(choice -> typed.endsWith(choice.about())).toList();
    if (meant.size() == 1) {
      return Optional.of(new Content.Part(meant.get(0).number()));
    }
    form.complain(slot.word(), complaint(slot, label, named, fitting));
    return Optional.empty();
  }

  private static String complaint(
      Slot slot, String label, List<PartFacts.Choice> named, List<PartFacts.Choice> fitting) {
    if (named.isEmpty()) {
      return "No part in the register is called %s. Check the serial, or add the part under Parts first."
          .formatted(label);
    }
    if (fitting.isEmpty()) {
      return "%s is a %s; it can't sit in the slot %s. Check the serial."
          .formatted(label, named.get(0).kind().word(), Words.usual(slot));
    }
    return "%d parts are called %s: %s. Type the serial, a middle dot and the words behind it."
        .formatted(
            fitting.size(),
            label,
            fitting.stream().map(PartFacts.Choice::about).collect(Collectors.joining("; ")));
  }

  static PartKind.Place place(Slot slot) {
    return switch (slot) {
      case PROBE -> PartKind.Place.PROBE_SLOT;
      case DRIVER -> PartKind.Place.DRIVER_SLOT;
      default -> PartKind.Place.PATH;
    };
  }

  /** The moment, on the site's clock; complaints stay with the form. */
  Optional<Instant> at(ZoneId zone) {
    LocalDate day = form.read("on", SiteMoment::day);
    LocalTime time = form.read("time", SiteMoment::time);
    if (form.complaint("on") != null || form.complaint("time") != null) {
      return Optional.empty();
    }
    Instant at = form.read("time", typed -> SiteMoment.of(day, time, zone));
    return form.complaint("time") == null ? Optional.of(at) : Optional.empty();
  }

  /** Fills in what is on record now. */
  static Form filled(List<Placed> chain, Map<Long, String> labels, Instant now, ZoneId zone) {
    Form form = Form.blank();
    for (Placed placed : chain) {
      if (placed.content() instanceof Content.Part part) {
        form.put(placed.slot().word(), labels.getOrDefault(part.number(), ""));
      } else if (placed.content() instanceof Content.Unknown) {
        form.put(placed.slot().word(), UNREADABLE);
      }
    }
    List<String> moment = new ArrayList<>(List.of(SiteMoment.shown(now, zone).split(" ")));
    return form.put("on", moment.get(0)).put("time", moment.get(1));
  }
}
