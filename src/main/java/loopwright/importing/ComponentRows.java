package loopwright.importing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.register.Belief;
import loopwright.register.Component;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.ComponentId;
import loopwright.register.Condition;
import loopwright.register.FamilyId;
import loopwright.register.NewComponent;
import loopwright.register.NominalLength;
import loopwright.register.PartIdentity;
import loopwright.register.Shelf;
import loopwright.time.SiteMoment;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * Rows of a components file. A row is known by maker, model and serial, or by its shop number. What
 * a cell says is taken over, an empty cell leaves what is recorded. Facts that differ hold from the
 * row's {@code since} if that is later than what is recorded, else from the import on.
 */
final class ComponentRows {
  /** Where a day begins first: parts belong to no site, so their days have no other clock. */
  private static final ZoneOffset FIRST = ZoneOffset.ofHours(14);

  private final Planning planning;
  private final FamilyCells families;

  ComponentRows(Planning planning) {
    this.planning = planning;
    this.families = new FamilyCells(planning);
  }

  /** What a row says. */
  private record Draft(
      RowCells row,
      PartIdentity identity,
      Optional<PartKind> kind,
      UnaryOperator<ComponentDetails> details,
      UnaryOperator<ComponentFacts> facts,
      @Nullable Instant since) {
    World.Key key() {
      return ComponentRows.key(identity);
    }

    String what() {
      return kind.map(k -> k.word() + " ").orElse("") + identity.label();
    }
  }

  static World.Key key(PartIdentity identity) {
    return new World.Key(World.Thing.COMPONENT, identity.key());
  }

  void plan(List<Sheet> sheets) {
    List<Draft> drafts = new ArrayList<>();
    for (Sheet sheet : sheets) {
      sheet.rows(planning.complaints).forEach(row -> draft(row).ifPresent(drafts::add));
    }
    Map<String, Component> known =
        planning
            .features
            .register()
            .identified(planning.sql, drafts.stream().map(Draft::identity).toList());
    known.forEach(
        (key, part) ->
            planning.world.recorded(new World.Key(World.Thing.COMPONENT, key), part.id().number()));
    Map<String, RowPlace> seen = new HashMap<>();
    for (Draft draft : drafts) {
      RowPlace first = seen.putIfAbsent(draft.identity.key(), draft.row.place());
      if (first != null) {
        draft.row.complain(
            draft.identity.hasSerial() ? "serial" : "shop_number",
            ImportProblem.TWICE,
            draft.what(),
            first);
      }
      decide(draft, Optional.ofNullable(known.get(draft.identity.key())));
    }
  }

  private Optional<Draft> draft(RowCells row) {
    String maker = row.neededName("maker", "the maker");
    String model = row.neededName("model", "the model");
    String serial = row.name("serial");
    String shopNumber = row.name("shop_number");
    Optional<PartKind> kind = row.choice("kind", Arrays.asList(PartKind.values()), PartKind::word);
    UnaryOperator<ComponentFacts> facts = facts(row);
    UnaryOperator<ComponentDetails> details = details(row);
    Instant since = since(row);
    Optional<PartIdentity> identity =
        maker.isEmpty() || model.isEmpty() || !isRead(row, serial, shopNumber)
            ? Optional.empty()
            : row.attempt("serial", () -> new PartIdentity(maker, model, serial, shopNumber));
    if (identity.isEmpty()) {
      planning.refused(row, (serial + " " + shopNumber).strip());
    }
    return identity.map(named -> new Draft(row, named, kind, details, facts, since));
  }

  /** A name that was complained of reads as empty. */
  private static boolean isRead(RowCells row, String serial, String shopNumber) {
    return serial.isEmpty() != row.isFilled("serial")
        && shopNumber.isEmpty() != row.isFilled("shop_number");
  }

  private @Nullable Instant since(RowCells row) {
    Optional<LocalDate> day = row.day("since");
    Instant since = day.map(d -> SiteMoment.startOf(d, FIRST)).orElse(null);
    if (since != null && since.isAfter(planning.now)) {
      row.complain("since", ImportProblem.IN_FUTURE, row.text("since"));
    }
    return since;
  }

  private static UnaryOperator<ComponentDetails> details(RowCells row) {
    Optional<Integer> channels = row.whole("channels");
    Optional<LocalDate> due = row.day("due_on");
    String sensitivity = row.text("sensitivity");
    String note = row.text("note");
    return was ->
        new ComponentDetails(
            was.kind(),
            was.identity(),
            channels.orElse(was.channels()),
            sensitivity.isEmpty() ? was.sensitivity() : sensitivity,
            due.orElse(was.dueOn()),
            note.isEmpty() ? was.note() : note);
  }

  private UnaryOperator<ComponentFacts> facts(RowCells row) {
    List<UnaryOperator<ComponentFacts>> says = new ArrayList<>();
    families.named(row, "family").ifPresent(f -> says.add(was -> was.withFamily(new FamilyId(f))));
    length(row).ifPresent(length -> says.add(was -> withLength(was, length)));
    physical(row).ifPresent(length -> says.add(was -> withPhysical(was, length)));
    row.number("tip_mm", tip -> ComponentFacts.NOTHING_KNOWN.withTip(tip).tipMillimetres())
        .ifPresent(tip -> says.add(was -> was.withTip(tip)));
    scaleFactor(row).ifPresent(scale -> says.add(was -> was.withScaleFactor(scale)));
    condition(row).ifPresent(says::add);
    shelf(row).ifPresent(says::add);
    return was -> {
      ComponentFacts facts = was;
      for (UnaryOperator<ComponentFacts> say : says) {
        facts = say.apply(facts);
      }
      return facts;
    };
  }

  /**
   * Without a column for it a length counts as read on the part; an empty cell in it as assumed.
   */
  private static Optional<NominalLength> length(RowCells row) {
    Optional<Reported> typed = row.quantity("length_m", Unit.METRE, "length_ft", Unit.FOOT);
    Optional<Evidence> evidence =
        row.choice("length_evidence", Arrays.asList(Evidence.values()), Evidence::word);
    if (typed.isEmpty()) {
      if (evidence.isPresent() && !row.anyFilled(List.of("length_m", "length_ft"))) {
        row.complain("length_m", ImportProblem.EMPTY_CELL, "the length that the evidence is for");
      }
      return Optional.empty();
    }
    Evidence unsaid = row.hasColumn("length_evidence") ? Evidence.ASSUMED : Evidence.READ_ON_PART;
    return row.attempt(
        heading("length", typed.get()),
        () -> new NominalLength(typed.get(), evidence.orElse(unsaid)));
  }

  private static String heading(String stem, Reported typed) {
    return stem + "_" + typed.unit().symbol();
  }

  /** The same length in other words is no change. */
  private static ComponentFacts withLength(ComponentFacts was, NominalLength length) {
    NominalLength known = was.length();
    boolean same =
        known != null
            && known.length().equals(length.length())
            && known.evidence() == length.evidence();
    return same ? was : was.withLength(length);
  }

  private static Optional<Reported> physical(RowCells row) {
    Optional<Reported> typed =
        row.quantity("physical_length_m", Unit.METRE, "physical_length_ft", Unit.FOOT);
    return typed.flatMap(
        length ->
            row.attempt(
                heading("physical_length", length),
                () -> {
                  ComponentFacts.NOTHING_KNOWN.withPhysicalLength(length);
                  return length;
                }));
  }

  private static ComponentFacts withPhysical(ComponentFacts was, Reported length) {
    Reported known = was.physicalLength();
    boolean same = known != null && known.canonical() == length.canonical();
    return same ? was : was.withPhysicalLength(length);
  }

  private static Optional<ScaleFactor> scaleFactor(RowCells row) {
    return ScaleCells.read(row)
        .flatMap(
            scale ->
                row.attempt(
                    ScaleCells.heading(scale),
                    () -> {
                      ComponentFacts.NOTHING_KNOWN.withScaleFactor(scale);
                      return scale;
                    }));
  }

  private static Optional<UnaryOperator<ComponentFacts>> condition(RowCells row) {
    Optional<Condition> condition =
        row.choice("condition", Arrays.asList(Condition.values()), Condition::word);
    String reason = row.text("condition_reason");
    return condition.flatMap(
        said ->
            row.attempt(
                "condition_reason",
                () -> {
                  ComponentFacts.NOTHING_KNOWN.withCondition(said, reason);
                  return was -> was.withCondition(said, reason);
                }));
  }

  private static Optional<UnaryOperator<ComponentFacts>> shelf(RowCells row) {
    String store = row.text("store");
    String bin = row.text("bin");
    if (store.isEmpty() && bin.isEmpty()) {
      return Optional.empty();
    }
    return row.attempt("store", () -> new Shelf(store, bin))
        .map(
            shelf ->
                was ->
                    was.withShelf(
                        new Shelf(
                            store.isEmpty() ? was.shelf().store() : shelf.store(),
                            bin.isEmpty() ? was.shelf().bin() : shelf.bin())));
  }

  private void decide(Draft draft, Optional<Component> known) {
    if (known.isPresent()) {
      compare(draft, known.get());
      return;
    }
    if (draft.kind.isEmpty() && !draft.row.isFilled("kind")) {
      draft.row.complain("kind", ImportProblem.EMPTY_CELL, "what kind of part it is");
    }
    Optional<ComponentDetails> details =
        draft.kind.flatMap(
            kind ->
                draft.row.attempt(
                    "note", () -> draft.details.apply(ComponentDetails.of(kind, draft.identity))));
    if (!draft.row.isGood() || details.isEmpty()) {
      planning.world.refuse(draft.key(), draft.row.place());
      planning.refused(draft.row, draft.what());
      return;
    }
    add(draft, details.get());
  }

  private void add(Draft draft, ComponentDetails details) {
    long planned = planning.world.plan(draft.key(), draft.row.place());
    planning.parts.planned(planned, details);
    ComponentFacts facts = draft.facts.apply(ComponentFacts.NOTHING_KNOWN);
    planning.parts.family(planned, facts.family());
    planning.steps.add(
        (tx, ids) -> {
          Instant from = draft.since == null ? tx.at() : draft.since;
          ComponentId id =
              planning
                  .features
                  .register()
                  .add(tx, new NewComponent(details, real(facts, ids), from));
          ids.made(planned, id.number());
        });
    planning.fate(RowFate.of(draft.row.place(), Fate.ADDED, draft.what()));
  }

  private static ComponentFacts real(ComponentFacts facts, Ids ids) {
    FamilyId family = facts.family();
    return family == null ? facts : facts.withFamily(new FamilyId(ids.real(family.number())));
  }

  private void compare(Draft draft, Component known) {
    if (draft.kind.isPresent() && draft.kind.get() != known.kind()) {
      draft.row.complain(
          "kind",
          ImportProblem.FIXED,
          draft.kind.get().word(),
          known.kind().word(),
          "read the serial again, or register the part under its own.");
    }
    Optional<ComponentDetails> details =
        draft.row.attempt("note", () -> draft.details.apply(withNames(known, draft.identity)));
    if (!draft.row.isGood() || details.isEmpty()) {
      planning.refused(draft.row, draft.what());
      return;
    }
    ComponentFacts facts = draft.facts.apply(known.facts());
    planning.parts.recorded(known, details.get());
    planning.parts.family(known.id().number(), facts.family());
    List<FieldChange> changes =
        FieldChange.between(
            ComponentText.of(known.details(), known.facts(), planning.familyCodes),
            ComponentText.of(details.get(), facts, planning.familyCodes));
    if (changes.isEmpty()) {
      planning.fate(RowFate.of(draft.row.place(), Fate.UNCHANGED, known.inWords()));
      return;
    }
    change(draft, known, details.get());
    planning.fate(RowFate.changed(draft.row.place(), known.inWords(), changes));
  }

  /** A shop number may come later; maker, model and serial are what the part is known by. */
  private static ComponentDetails withNames(Component known, PartIdentity typed) {
    PartIdentity was = known.details().identity();
    String shopNumber = typed.shopNumber().isEmpty() ? was.shopNumber() : typed.shopNumber();
    return new ComponentDetails(
        known.kind(),
        new PartIdentity(was.maker(), was.model(), was.serial(), shopNumber),
        known.details().channels(),
        known.details().sensitivity(),
        known.details().dueOn(),
        known.details().note());
  }

  private void change(Draft draft, Component known, ComponentDetails details) {
    Instant later = laterThanRecorded(draft, known.id());
    planning.steps.add(
        (tx, ids) -> {
          if (!details.equals(known.details())) {
            planning.features.register().changeDetails(tx, known.id(), known.version(), details);
          }
          Instant from = later == null ? tx.at() : later;
          planning
              .features
              .register()
              .changeFacts(tx, known.id(), from, was -> real(draft.facts.apply(was), ids));
        });
  }

  private @Nullable Instant laterThanRecorded(Draft draft, ComponentId id) {
    if (draft.since == null) {
      return null;
    }
    List<Belief> beliefs = planning.features.register().beliefs(planning.sql, id);
    Instant latest = beliefs.get(beliefs.size() - 1).span().from();
    return draft.since.isAfter(latest) ? draft.since : null;
  }
}
