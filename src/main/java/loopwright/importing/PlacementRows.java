package loopwright.importing;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.loop.Content;
import loopwright.loop.ImportedPlacements;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.matching.PartKind;
import loopwright.time.SiteMoment;
import loopwright.time.Span;

/**
 * Rows of a placements file, each a stay of something in a slot. They are surveys of their moments:
 * what was believed to go on ends where a row says something else; history that has ended is not
 * rewritten by a file.
 */
final class PlacementRows {
  private final Planning planning;
  private final PartCells partCells;
  private final List<Displaced> displaced = new ArrayList<>();

  PlacementRows(Planning planning) {
    this.planning = planning;
    this.partCells = new PartCells(planning);
  }

  /**
   * What a row says.
   *
   * @param what it is about, in words
   * @param isOpen the row gives no end: until the next thing known
   */
  record Draft(
      RowCells row,
      Tags.Tagged point,
      Slot slot,
      Content content,
      String what,
      Span span,
      boolean isOpen,
      String note) {
    Stay stay() {
      return new Stay(point.number(), slot, content, span, this, null);
    }
  }

  /** A slot whose part was found elsewhere: from then on nobody knows what is in it. */
  private record Displaced(long point, Slot slot, Instant at) {}

  void plan(List<Sheet> sheets) {
    partCells.preload(sheets);
    List<Draft> drafts = new ArrayList<>();
    for (Sheet sheet : sheets) {
      sheet.rows(planning.complaints).forEach(row -> draft(row).ifPresent(drafts::add));
    }
    Set<Long> points = new HashSet<>();
    Set<Long> components = new HashSet<>();
    for (Draft draft : drafts) {
      points.add(draft.point.number());
      draft.content.component().ifPresent(components::add);
    }
    planning.fitted.load(points, components);
    drafts.sort(Comparator.comparing(draft -> draft.span.from()));
    drafts.forEach(this::decide);
    displaced.forEach(this::becomesUnknown);
    write();
  }

  private Optional<Draft> draft(RowCells row) {
    Optional<Tags.Tagged> point = planning.tags.named(row, "tag");
    Optional<Slot> slot = slot(row);
    Optional<Contents> content = content(row);
    ZoneId zone = point.map(Tags.Tagged::zone).orElse(java.time.ZoneOffset.UTC);
    Optional<Span> span = span(row, zone);
    String note = row.text("note");
    content.ifPresent(c -> slot.ifPresent(s -> fits(row, c, s)));
    if (point.isEmpty() || slot.isEmpty() || content.isEmpty() || span.isEmpty() || !row.isGood()) {
      planning.refused(row, (row.name("tag") + " " + row.text("slot")).strip());
      return Optional.empty();
    }
    String what = point.get().tag() + " " + slot.get().word() + ": " + content.get().inWords();
    return Optional.of(
        new Draft(
            row,
            point.get(),
            slot.get(),
            content.get().content(),
            what,
            span.get(),
            !row.isFilled("until"),
            note));
  }

  private Optional<Slot> slot(RowCells row) {
    if (!row.isFilled("slot")) {
      row.complain("slot", ImportProblem.EMPTY_CELL, "the slot: probe, path-1 or driver");
    }
    return row.choice("slot", Arrays.asList(Slot.values()), Slot::word);
  }

  /** What sits in a slot, with the part's kind if it is one. */
  private record Contents(Content content, Optional<PartKind> kind, String inWords) {}

  private Optional<Contents> content(RowCells row) {
    Optional<String> word = row.choice("content", List.of("part", "none", "unknown"), w -> w);
    if (row.isFilled("content") && word.isEmpty()) {
      return Optional.empty();
    }
    if (word.filter(w -> !w.equals("part")).isPresent()) {
      PartCells.HEADINGS.stream()
          .filter(row::isFilled)
          .findFirst()
          .ifPresent(
              heading ->
                  row.complain(
                      heading,
                      ImportProblem.DISAGREES,
                      row.text(heading),
                      word.get(),
                      "column content"));
      return Optional.of(
          word.get().equals("none")
              ? new Contents(new Content.None(), Optional.empty(), "nothing fitted")
              : new Contents(new Content.Unknown(), Optional.empty(), "not known"));
    }
    return partCells
        .named(row)
        .map(
            part ->
                new Contents(
                    new Content.Part(part.number(), channel(row, part)),
                    Optional.of(part.kind()),
                    part.inWords()));
  }

  /** Of a box with several channels the one meant has to be said; nobody guesses. */
  private static int channel(RowCells row, Parts.Part part) {
    Optional<Integer> said = row.whole("driver_channel");
    boolean unreadable = said.isEmpty() && row.isFilled("driver_channel");
    if (unreadable || said.isEmpty() && part.channels() == 1) {
      return 1;
    }
    if (said.filter(c -> c >= 1 && c <= part.channels()).isEmpty()) {
      row.complain(
          "driver_channel",
          ImportProblem.OUT_OF_RANGE,
          said.map(String::valueOf).orElse("an empty cell"),
          part.inWords()
              + (part.channels() == 1
                  ? " has one channel. Leave the cell empty."
                  : " has " + part.channels() + " channels. Say which one."));
      return 1;
    }
    return said.get();
  }

  private static void fits(RowCells row, Contents content, Slot slot) {
    content
        .kind()
        .filter(kind -> kind.place() != place(slot))
        .ifPresent(
            kind -> row.complain("slot", ImportProblem.WRONG_SLOT, kind.word(), slot.word()));
  }

  private static PartKind.Place place(Slot slot) {
    return switch (slot) {
      case PROBE -> PartKind.Place.PROBE_SLOT;
      case DRIVER -> PartKind.Place.DRIVER_SLOT;
      default -> PartKind.Place.PATH;
    };
  }

  private Optional<Span> span(RowCells row, ZoneId zone) {
    if (!row.isFilled("from")) {
      row.complain("from", ImportProblem.EMPTY_CELL, "the day or moment since when it sat there");
    }
    Optional<Instant> from = row.past("from", zone, planning.now);
    Optional<Instant> until = row.past("until", zone, planning.now);
    if (from.isEmpty() || (row.isFilled("until") && until.isEmpty())) {
      return Optional.empty();
    }
    Instant end = until.orElse(Span.OPEN);
    if (!from.get().isBefore(end)) {
      row.complain("until", ImportProblem.ENDS_FIRST, row.text("until"), row.text("from"));
      return Optional.empty();
    }
    return Optional.of(new Span(from.get(), end));
  }

  private void decide(Draft draft) {
    Timelines lines = planning.fitted.lines();
    Optional<Stay> same =
        lines.inSlot(draft.stay()).stream()
            .filter(stay -> stay.row() == null)
            .filter(stay -> stay.content().equals(draft.content))
            .filter(stay -> !stay.span().from().isAfter(draft.span.from()))
            .findFirst();
    if (same.isPresent()) {
      sameAgain(draft, same.get());
      return;
    }
    List<String> endings = new ArrayList<>();
    Optional<Stay> free = room(draft, draft.stay(), lines.inSlot(draft.stay()), true, endings);
    free = free.flatMap(stay -> room(draft, stay, lines.ofPart(stay), false, endings));
    if (free.isEmpty()) {
      planning.refused(draft.row, draft.what);
      return;
    }
    lines.put(free.get());
    planning.fate(
        RowFate.of(draft.row.place(), Fate.ADDED, draft.what).noting(String.join(" ", endings)));
  }

  /** The register has that part in that slot then already: at most the file knows its end. */
  private void sameAgain(Draft draft, Stay known) {
    Instant end = draft.span.until();
    if (draft.isOpen || end.equals(known.span().until())) {
      planning.fate(RowFate.of(draft.row.place(), Fate.UNCHANGED, draft.what));
    } else if (known.span().isOpen()) {
      planning.fitted.lines().remove(known);
      planning.fitted.lines().put(known.until(end));
      planning.fate(
          RowFate.changed(
              draft.row.place(),
              draft.what,
              List.of(new FieldChange("until", "", shown(draft, end)))));
    } else {
      draft.row.complain(
          "until",
          ImportProblem.SLOT_TAKEN,
          draft.point.tag(),
          draft.slot.word(),
          told(draft, known));
      planning.refused(draft.row, draft.what);
    }
  }

  /**
   * Makes room for a stay among those of its slot or of its part: what was open before it ends, and
   * a stay without an end of its own ends where the next one begins.
   *
   * @return the stay, perhaps shortened; empty when another stands in its way
   */
  private Optional<Stay> room(
      Draft draft, Stay stay, List<Stay> others, boolean inSlot, List<String> endings) {
    Stay fitted = stay;
    for (Stay other : others) {
      if (!other.span().overlaps(fitted.span())) {
        continue;
      }
      boolean recorded = other.row() == null;
      Instant from = fitted.span().from();
      if (recorded && other.span().isOpen() && other.span().from().isBefore(from)) {
        endings.add(ended(other));
        planning.fitted.lines().remove(other);
        planning.fitted.lines().put(other.until(from));
        if (!inSlot) {
          displaced.add(new Displaced(other.point(), other.slot(), from));
        }
      } else if (recorded && draft.isOpen && other.span().from().isAfter(from)) {
        fitted = fitted.until(other.span().from());
        endings.add("It ends where the register knows of something later.");
      } else {
        inTheWay(draft, other, inSlot);
        return Optional.empty();
      }
    }
    return Optional.of(fitted);
  }

  private void inTheWay(Draft draft, Stay other, boolean inSlot) {
    if (inSlot) {
      draft.row.complain(
          "from",
          ImportProblem.SLOT_TAKEN,
          draft.point.tag(),
          draft.slot.word(),
          told(draft, other));
    } else {
      draft.row.complain(
          "from", ImportProblem.PART_TAKEN, words(draft.content), told(draft, other));
    }
  }

  /** The other stay in words, with the row or the register that says so. */
  private String told(Draft draft, Stay other) {
    String until =
        other.span().isOpen() ? "with no end" : "until " + shown(draft, other.span().until());
    String by = other.row() == null ? "the register" : other.row().row().place().toString();
    return "%s at %s %s, from %s %s (%s)"
        .formatted(
            words(other.content()),
            planning.tags.shown(other.point()),
            other.slot().word(),
            shown(draft, other.span().from()),
            until,
            by);
  }

  private String ended(Stay other) {
    return "%s at %s %s ends then."
        .formatted(words(other.content()), planning.tags.shown(other.point()), other.slot().word());
  }

  private String words(Content content) {
    if (content instanceof Content.Part part) {
      return planning.fitted.words(part.number());
    }
    return content instanceof Content.None ? "nothing fitted" : "something not known";
  }

  private static String shown(Draft draft, Instant moment) {
    return SiteMoment.shown(moment, draft.point.zone());
  }

  private void becomesUnknown(Displaced slot) {
    Timelines lines = planning.fitted.lines();
    if (lines.at(slot.point, slot.slot, slot.at).isEmpty()) {
      Instant until = lines.next(slot.point, slot.slot, slot.at).orElse(Span.OPEN);
      lines.put(
          new Stay(
              slot.point, slot.slot, new Content.Unknown(), new Span(slot.at, until), null, null));
    }
  }

  private void write() {
    List<Stay> changed =
        planning.fitted.lines().all().stream()
            .filter(stay -> stay.recorded() == null || stay.isShortened())
            .toList();
    if (changed.isEmpty()) {
      return;
    }
    planning.steps.add(
        (tx, ids) ->
            planning.features.configuration().importPlacements(tx, imported(changed, ids)));
  }

  private static ImportedPlacements imported(List<Stay> changed, Ids ids) {
    List<Placed> retired = new ArrayList<>();
    List<Placed> taken = new ArrayList<>();
    Map<ImportedPlacements.Place, String> notes = new HashMap<>();
    for (Stay stay : changed) {
      Placed was = stay.recorded();
      if (was != null) {
        retired.add(was);
      }
      Placed placed = stay.placed(ids);
      taken.add(placed);
      Draft row = stay.row();
      if (row != null && !row.note.isEmpty()) {
        notes.put(new ImportedPlacements.Place(placed.point(), placed.span().from()), row.note);
      }
    }
    return new ImportedPlacements(retired, taken, notes);
  }
}
