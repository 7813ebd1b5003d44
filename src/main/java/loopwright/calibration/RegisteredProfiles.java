package loopwright.calibration;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveResult;
import loopwright.loop.Configuration;
import loopwright.loop.Placed;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.register.Component;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyId;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Which tolerance profile judges a loop: that of the family fitted, else of the one called for. */
public final class RegisteredProfiles {
  private final ToleranceProfiles profiles;
  private final Register register;
  private final FamilyBook families;
  private final Plant plant;

  public RegisteredProfiles(
      ToleranceProfiles profiles, Register register, FamilyBook families, Plant plant) {
    this.profiles = profiles;
    this.register = register;
    this.families = families;
    this.plant = plant;
  }

  List<ToleranceProfiles.Stored> newest(DSLContext sql) {
    return profiles.newest(sql);
  }

  Optional<ToleranceProfiles.Stored> newest(DSLContext sql, String code) {
    return profiles.newest(sql, code);
  }

  List<ToleranceProfiles.Stored> versions(DSLContext sql, String code) {
    return profiles.versions(sql, code);
  }

  /** That version of a profile. */
  public Optional<ToleranceProfiles.Stored> version(DSLContext sql, long number) {
    return profiles.version(sql, number);
  }

  /** A kept curve judged again by the version that judged it then. */
  public Optional<CurveResult> judged(DSLContext sql, Calibrated calibrated, Curve curve) {
    return Optional.ofNullable(calibrated.profileVersion())
        .flatMap(version -> version(sql, version))
        .map(stored -> CurveAnalysis.of(curve, stored.profile()));
  }

  /**
   * The profile for what is fitted: the driver decides, since its lineariser makes the curve.
   *
   * @param chain as fitted, see {@link Configuration#at}
   */
  public Optional<ToleranceProfiles.Stored> suiting(
      DSLContext sql, long point, List<Placed> chain) {
    List<Long> parts =
        chain.stream().flatMap(p -> p.content().component().stream().boxed()).toList();
    Map<Long, Component> components = register.components(sql, parts);
    Stream<FamilyId> fitted =
        driverFirst(parts).stream().map(components::get).map(RegisteredProfiles::family);
    Stream<FamilyId> calledFor =
        plant.point(sql, new PointId(point)).map(Point::details).map(d -> d.family()).stream();
    return Stream.concat(fitted, calledFor)
        .filter(Objects::nonNull)
        .map(id -> families.family(sql, id))
        .flatMap(Optional::stream)
        .map(Family::details)
        .map(details -> details.profile())
        .filter(Objects::nonNull)
        .findFirst()
        .flatMap(code -> profiles.newest(sql, code));
  }

  private static List<Long> driverFirst(List<Long> parts) {
    List<Long> turned = new ArrayList<>(parts);
    Collections.reverse(turned);
    return turned;
  }

  private static @Nullable FamilyId family(@Nullable Component component) {
    return component == null ? null : component.facts().family();
  }
}
