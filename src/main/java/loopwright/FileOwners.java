package loopwright;

import java.util.Map;
import java.util.Optional;
import loopwright.attachment.Owner;
import loopwright.attachment.OwnerKind;
import loopwright.register.ComponentId;
import loopwright.web.PathSegment;

/** Whose files are kept: how each kind of owner is found by what people call it. */
final class FileOwners {
  private final Workings of;

  FileOwners(Workings of) {
    this.of = of;
  }

  Map<OwnerKind, Owner.Finder> finders() {
    return Map.of(
        OwnerKind.LOOP,
        (sql, tag) ->
            of.plant
                .pointTagged(sql, tag)
                .map(
                    point ->
                        new Owner(
                            OwnerKind.LOOP,
                            point.id().number(),
                            point.tag(),
                            "/loops/" + PathSegment.of(point.tag()))),
        OwnerKind.CALIBRATION,
        (sql, number) ->
            of.calibrations
                .find(sql, number)
                .map(
                    kept ->
                        new Owner(
                            OwnerKind.CALIBRATION,
                            kept.id(),
                            kept.number(),
                            "/calibrations/" + kept.number())),
        OwnerKind.STANDARD,
        (sql, code) ->
            of.standards
                .find(sql, code)
                .map(
                    standard ->
                        new Owner(
                            OwnerKind.STANDARD,
                            standard.id(),
                            standard.code(),
                            "/standards/" + PathSegment.of(standard.code()))),
        OwnerKind.PART,
        (sql, id) ->
            id.matches("\\d{1,18}")
                ? of.register
                    .component(sql, new ComponentId(Long.parseLong(id)))
                    .map(
                        part ->
                            new Owner(
                                OwnerKind.PART,
                                part.id().number(),
                                part.inWords(),
                                "/parts/" + part.id().number()))
                : Optional.empty(),
        OwnerKind.CHECK,
        (sql, number) ->
            of.fieldChecks
                .numbered(sql, number)
                .map(id -> new Owner(OwnerKind.CHECK, id, number, "/checks/" + number)));
  }
}
