package loopwright.register;

import java.util.List;

/** A part in a list, in words. */
record PartLine(
    long id,
    String label,
    boolean shopNumber,
    String kind,
    String makerModel,
    String family,
    String metres,
    String feet,
    String evidence,
    String state,
    String shelf,
    List<String> tags) {

  static PartLine of(PartRow row) {
    Component part = row.part();
    PartIdentity identity = part.details().identity();
    NominalLength length = part.facts().length();
    return new PartLine(
        part.id().number(),
        part.label(),
        !identity.hasSerial(),
        part.kind().word(),
        identity.maker() + " " + identity.model(),
        row.family(),
        length == null ? "" : length.length().inMetres(),
        length == null ? "" : length.length().inFeet(),
        length == null ? "not known" : length.evidence().word(),
        part.state().word(),
        row.now().isEmpty() ? part.facts().shelf().inWords() : "",
        row.now().stream().map(Whereabouts::tag).distinct().toList());
  }
}
