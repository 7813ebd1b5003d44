package loopwright.loop;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.web.Form;
import org.jooq.DSLContext;

/**
 * What a person types for a part: its serial or shop number; where several parts share that, a
 * middle dot and the words behind it; for a driver box with several channels {@code BOX-7 #2}.
 */
final class TypedPart {
  private static final Pattern CHANNEL = Pattern.compile("(.+?)\\s*#\\s*(\\d{1,2})");
  private static final int LONGEST = 400;

  private final Slot slot;
  private final String typed;
  private final List<Placed> present;

  private TypedPart(Slot slot, String typed, List<Placed> present) {
    this.slot = slot;
    this.typed = typed;
    this.present = present;
  }

  /** The part meant; where that can't be said, the form complains at the slot. */
  static Optional<Content> read(
      DSLContext sql, PartFacts parts, Slot slot, String typed, List<Placed> present, Form form) {
    try {
      return Optional.of(read(sql, parts, slot, typed, present));
    } catch (IllegalArgumentException wrong) {
      form.complain(slot.word(), String.valueOf(wrong.getMessage()));
      return Optional.empty();
    }
  }

  /**
   * The part meant.
   *
   * @throws IllegalArgumentException if that can't be said
   */
  static Content read(
      DSLContext sql, PartFacts parts, Slot slot, String typed, List<Placed> present) {
    return new TypedPart(slot, typed, present).read(sql, parts);
  }

  /** How a part is typed so that it can't be mistaken for another one. */
  static String text(DSLContext sql, PartFacts parts, Slot slot, String label, Content.Part part) {
    String channel = part.channel() == 1 ? "" : " #" + part.channel();
    List<PartFacts.Choice> named = fitting(parts.named(sql, label), slot);
    return named.size() < 2
        ? label + channel
        : named.stream()
            .filter(choice -> choice.number() == part.number())
            .map(choice -> label + " · " + choice.about() + channel)
            .findFirst()
            .orElse(label + channel);
  }

  private Content read(DSLContext sql, PartFacts parts) {
    if (typed.length() > LONGEST) {
      throw new IllegalArgumentException(
          "This has %s characters; no serial is that long.".formatted(typed.length()));
    }
    List<PartFacts.Choice> found = named(sql, parts, typed);
    Matcher channel = CHANNEL.matcher(typed);
    if (found.isEmpty() && channel.matches()) {
      return placed(one(named(sql, parts, channel.group(1))), Integer.parseInt(channel.group(2)));
    }
    return placed(one(found), 0);
  }

  /** The whole text may be a label, else what stands before one of its middle dots. */
  private static List<PartFacts.Choice> named(DSLContext sql, PartFacts parts, String text) {
    List<PartFacts.Choice> whole = parts.named(sql, text);
    for (int dot = text.indexOf('·');
        whole.isEmpty() && dot > 0;
        dot = text.indexOf('·', dot + 1)) {
      String words = text.substring(dot + 1).strip();
      List<PartFacts.Choice> all = parts.named(sql, text.substring(0, dot).strip());
      List<PartFacts.Choice> meant = all.stream().filter(c -> c.about().equals(words)).toList();
      whole = meant.isEmpty() ? all : meant;
    }
    return whole;
  }

  private static List<PartFacts.Choice> fitting(List<PartFacts.Choice> named, Slot slot) {
    return named.stream().filter(choice -> choice.kind().place() == place(slot)).toList();
  }

  private PartFacts.Choice one(List<PartFacts.Choice> named) {
    List<PartFacts.Choice> fitting = fitting(named, slot);
    if (fitting.size() == 1) {
      return fitting.get(0);
    }
    throw new IllegalArgumentException(complaint(named, fitting));
  }

  private String complaint(List<PartFacts.Choice> named, List<PartFacts.Choice> fitting) {
    if (named.isEmpty()) {
      return "No part in the register is called %s. Check the serial, or add the part under Parts first."
          .formatted(typed);
    }
    if (fitting.isEmpty()) {
      return "%s is known as %s; that can't sit in the slot %s. Check the serial."
          .formatted(typed, named.get(0).kind().word(), Words.usual(slot));
    }
    return "%s parts are called %s: %s. Type the serial, a middle dot and the words behind it."
        .formatted(
            fitting.size(),
            fitting.get(0).label(),
            fitting.stream().map(PartFacts.Choice::about).collect(Collectors.joining("; ")));
  }

  /**
   * @param channel 0 where none was typed: then a box that stays keeps the one it has here
   */
  private Content placed(PartFacts.Choice part, int channel) {
    Optional<Content> stays =
        present.stream()
            .filter(placed -> placed.slot() == slot)
            .map(Placed::content)
            .filter(content -> content.component().orElse(0) == part.number())
            .filter(content -> channel == 0 || content.channel() == channel)
            .findFirst();
    if (stays.isPresent() || channel == 0 && part.channels() == 1) {
      return stays.orElse(new Content.Part(part.number()));
    }
    if (channel < 1 || channel > part.channels()) {
      throw new IllegalArgumentException(
          "%s has %s. Say which one belongs to this loop, such as %s #1."
              .formatted(
                  part.label(),
                  part.channels() == 1 ? "1 channel" : part.channels() + " channels",
                  part.label()));
    }
    return new Content.Part(part.number(), channel);
  }

  static PartKind.Place place(Slot slot) {
    return switch (slot) {
      case PROBE -> PartKind.Place.PROBE_SLOT;
      case DRIVER -> PartKind.Place.DRIVER_SLOT;
      default -> PartKind.Place.PATH;
    };
  }

  /** How the parts of a chain are typed, by slot. */
  static Map<Slot, String> texts(
      DSLContext sql, PartFacts parts, List<Placed> chain, Map<Long, PartView> views) {
    Map<Slot, String> texts = new EnumMap<>(Slot.class);
    for (Placed placed : chain) {
      if (placed.content() instanceof Content.Part part && views.containsKey(part.number())) {
        String label = Proposed.label(views.get(part.number()));
        texts.put(placed.slot(), text(sql, parts, placed.slot(), label, part));
      }
    }
    return texts;
  }
}
