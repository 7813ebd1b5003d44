package loopwright.loop;

import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import loopwright.time.TypedMoment;
import loopwright.web.Form;
import org.jooq.DSLContext;

/**
 * Reads the form on which the record is corrected: a slot, what sat there, from when to when. What
 * was typed is sent along once its effects were shown, so that nothing is corrected unseen.
 */
final class CorrectionForm {
  static final int LONGEST_REASON = 2000;
  private static final String PART = "part";
  private static final List<String> SAID = List.of("slot", "what", PART, "from", "until");
  private static final String SEEN = "seen";

  private final Form form;
  private final PartFacts parts;
  private final Opened opened;
  private final Instant now;

  CorrectionForm(Form form, PartFacts parts, Opened opened, Instant now) {
    this.form = form;
    this.parts = parts;
    this.opened = opened;
    this.now = now;
  }

  static Map<String, String> whats() {
    Map<String, String> whats = new LinkedHashMap<>();
    whats.put(PART, "this part");
    whats.put("none", "nothing was fitted");
    whats.put("unknown", "nobody can say");
    return whats;
  }

  /** The correction as typed; complaints stay with the form. */
  Optional<Correction> read(DSLContext sql) {
    Slot slot = form.read("slot", CorrectionForm::slot);
    Optional<Span> span = span();
    if (form.complaint("slot") != null) {
      return Optional.empty();
    }
    Content content =
        form.read(form.typed("what").equals(PART) ? PART : "what", t -> content(sql, slot));
    form.text("reason", LONGEST_REASON);
    if (!form.ok() || span.isEmpty()) {
      return Optional.empty();
    }
    complainOfUnborn(sql, content, span.get().from());
    return form.ok()
        ? Optional.of(new Correction(opened.number(), slot, content, span.get()))
        : Optional.empty();
  }

  private static Slot slot(String word) {
    return Slot.named(word)
        .orElseThrow(() -> new IllegalArgumentException("Choose the slot that is wrong."));
  }

  private Content content(DSLContext sql, Slot slot) {
    return switch (form.typed("what")) {
      case PART -> part(sql, slot);
      case "none" -> new Content.None();
      case "unknown" -> new Content.Unknown();
      default -> throw new IllegalArgumentException("Choose what sat there.");
    };
  }

  private Content part(DSLContext sql, Slot slot) {
    String typed = form.typed(PART).strip();
    if (typed.isEmpty()) {
      throw new IllegalArgumentException(
          "Give the serial or shop number of the part that sat there.");
    }
    return TypedPart.read(sql, parts, slot, typed, List.of());
  }

  /** A bare day is its start at the site; an empty end is none. */
  private Optional<Span> span() {
    Instant from = form.read("from", typed -> past(typed, opened.zone()));
    Optional<Instant> until = form.optional("until", typed -> past(typed, opened.zone()));
    if (form.complaint("from") != null || form.complaint("until") != null) {
      return Optional.empty();
    }
    if (until.filter(end -> !end.isAfter(from)).isPresent()) {
      form.complain(
          "until",
          "This is not after the beginning, %s. Give a later moment, or leave it empty if it is still so."
              .formatted(SiteMoment.shown(from, opened.zone())));
      return Optional.empty();
    }
    return Optional.of(new Span(from, until.orElse(Span.OPEN)));
  }

  private Instant past(String typed, ZoneId zone) {
    Instant moment = TypedMoment.read(typed, zone);
    if (moment.isAfter(now)) {
      throw new IllegalArgumentException(
          "%s is in the future: at the site it is %s now. Only what was so can be corrected."
              .formatted(SiteMoment.shown(moment, zone), SiteMoment.shown(now, zone)));
    }
    return moment;
  }

  private void complainOfUnborn(DSLContext sql, Content content, Instant from) {
    content.component().stream()
        .mapToObj(number -> parts.knownFrom(sql, number))
        .filter(known -> known.isAfter(from))
        .forEach(
            known ->
                form.complain(
                    PART,
                    "%s is on record only since %s. Give a later beginning, or say on its page since when it was so."
                        .formatted(
                            form.typed(PART).strip(), SiteMoment.shown(known, opened.zone()))));
  }

  /** What a correction says, in one text. */
  String said() {
    return SAID.stream().map(form::typed).map(String::strip).collect(Collectors.joining("|"));
  }

  /** Whether exactly this was shown with its effects before. */
  boolean wasSeen() {
    return form.typed(SEEN).equals(said());
  }

  /** The slots of the loop, with what sits there now. */
  static Map<String, String> slots(Opened opened, StayWords words, List<Placed> ever) {
    Map<String, String> slots = new LinkedHashMap<>();
    Stream.concat(ChangeForm.slots(opened.chain()).stream(), ever.stream().map(Placed::slot))
        .distinct()
        .sorted()
        .forEach(
            slot ->
                slots.put(
                    slot.word(),
                    Words.usual(slot)
                        + opened.chain().stream()
                            .filter(placed -> placed.slot() == slot)
                            .map(placed -> ", now " + words.content(placed.content()))
                            .findFirst()
                            .orElse("")));
    return slots;
  }
}
