package loopwright.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.PartIdentity;
import loopwright.register.Register;

/**
 * Finds the part that a row names: by maker, model and serial (or shop number), or by the serial or
 * shop number alone where only one part is called so.
 */
final class PartCells {
  static final List<String> HEADINGS = List.of("maker", "model", "serial", "shop_number");

  private final Planning planning;
  private final Register register;

  PartCells(Planning planning) {
    this.planning = planning;
    this.register = planning.features.register();
  }

  /** Looks up in one go what rows name in full. */
  void preload(List<Sheet> sheets) {
    List<PartIdentity> identities = new ArrayList<>();
    for (Sheet sheet : sheets) {
      sheet
          .table()
          .rows()
          .forEach(
              row ->
                  identity(
                          sheet.table().cell(row, "maker"),
                          sheet.table().cell(row, "model"),
                          sheet.table().cell(row, "serial"),
                          sheet.table().cell(row, "shop_number"))
                      .ifPresent(identities::add));
    }
    register.identified(planning.sql, identities).values().forEach(this::recorded);
  }

  private static Optional<PartIdentity> identity(
      String maker, String model, String serial, String shopNumber) {
    if (maker.isEmpty() || model.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new PartIdentity(maker, model, serial, shopNumber));
    } catch (Refused notOne) {
      return Optional.empty();
    }
  }

  private void recorded(Component part) {
    planning.world.recorded(ComponentRows.key(part.details().identity()), part.id().number());
    planning.parts.recorded(part);
  }

  Optional<Parts.Part> named(RowCells row) {
    String serial = row.name("serial");
    String shopNumber = row.name("shop_number");
    String label = serial.isEmpty() ? shopNumber : serial;
    String heading = serial.isEmpty() && !shopNumber.isEmpty() ? "shop_number" : "serial";
    if (label.isEmpty()) {
      row.complain(
          heading,
          ImportProblem.EMPTY_CELL,
          "the part's serial or shop number, or write none or unknown under content");
      return Optional.empty();
    }
    Optional<PartIdentity> full =
        identity(row.name("maker"), row.name("model"), serial, shopNumber);
    return full.isPresent() ? inFull(row, heading, full.get()) : byLabel(row, heading, label);
  }

  private Optional<Parts.Part> inFull(RowCells row, String heading, PartIdentity identity) {
    Optional<World.Entry> entry = planning.world.find(ComponentRows.key(identity));
    if (entry.isEmpty()) {
      return missing(row, heading, identity.label());
    }
    if (entry.get().refused()) {
      return unread(row, identity.label(), entry.get());
    }
    return planning.parts.find(entry.get().number());
  }

  private Optional<Parts.Part> byLabel(RowCells row, String heading, String label) {
    List<Parts.Part> all = new ArrayList<>(planning.parts.plannedLabelled(label));
    for (Component part : register.labelled(planning.sql, label)) {
      recordedOnce(part);
      planning.parts.find(part.id().number()).ifPresent(all::add);
    }
    if (all.size() > 1) {
      row.complain(heading, ImportProblem.AMBIGUOUS_PART, Shown.cell(label));
      return Optional.empty();
    }
    return all.isEmpty() ? missing(row, heading, label) : Optional.of(all.get(0));
  }

  private void recordedOnce(Component part) {
    if (planning.parts.find(part.id().number()).isEmpty()) {
      recorded(part);
    }
  }

  private static Optional<Parts.Part> missing(RowCells row, String heading, String label) {
    row.complain(
        heading,
        ImportProblem.NOT_THERE,
        "component",
        Shown.cell(label),
        "Check maker, model and serial, or import the components first or together with this file.");
    return Optional.empty();
  }

  private static Optional<Parts.Part> unread(RowCells row, String label, World.Entry entry) {
    row.complainOfRow(ImportProblem.LEFT_UNREAD, "component " + label + " (" + entry.row() + ")");
    return Optional.empty();
  }
}
