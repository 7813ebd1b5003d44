package loopwright.register;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import loopwright.curve.Grid;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Database;
import loopwright.dynamic.ResponseBand;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jspecify.annotations.Nullable;

/** Tolerance profiles to read: limits in both units, with where they come from. */
final class ProfilePages implements Pages {
  /** 1 mV/µm is 25.4 mV/mil exactly. */
  private static final double MIL_IN_MICROMETRES = 25.4;

  private final Database database;
  private final Page page;
  private final ToleranceProfiles profiles;
  private final FamilyBook families;

  ProfilePages(Database database, Page page, ToleranceProfiles profiles, FamilyBook families) {
    this.database = database;
    this.page = page;
    this.profiles = profiles;
    this.families = families;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/profiles", Permission.READ, this::list);
    routes.get("/profiles/{code}", Permission.READ, this::show);
  }

  /** One version, in words. */
  record Version(
      String code,
      String name,
      int version,
      String slope,
      String isf,
      String isfLimits,
      String dsl,
      String shift,
      List<String> grids,
      String rule,
      boolean review,
      @Nullable String temperatures,
      List<String> response,
      @Nullable String responseSource,
      String source,
      String edition) {

    static Version of(ToleranceProfiles.Stored stored) {
      ToleranceProfile profile = stored.profile();
      return new Version(
          profile.code(),
          profile.name(),
          profile.version(),
          PartWords.scale(profile.nominal()),
          "±" + Numbers.plain(profile.isfTolerancePercent()) + " %",
          isfLimits(profile),
          "±" + both(profile.dslLimit()),
          profile.shiftRule().label(),
          profile.grids().stream().map(Grid::toString).toList(),
          stored.terms().ruleInWords(),
          stored.terms().reviewAsked(),
          stored.terms().temperatures().map(TemperatureRange::inWords).orElse(null),
          stored.terms().response().map(BandWords::of).orElse(List.of()),
          stored.terms().response().map(ResponseBand::source).orElse(null),
          profile.source(),
          profile.edition());
    }

    private static String isfLimits(ToleranceProfile profile) {
      return String.format(
          Locale.ROOT,
          "%.3f to %.3f mV/µm (%.1f to %.1f mV/mil)",
          profile.isfLowest(),
          profile.isfHighest(),
          profile.isfLowest() * MIL_IN_MICROMETRES,
          profile.isfHighest() * MIL_IN_MICROMETRES);
    }

    private static String both(Reported limit) {
      Unit other = limit.unit() == Unit.MIL ? Unit.MICROMETRE : Unit.MIL;
      return String.format(
          Locale.ROOT,
          "%s (%.2f %s)",
          limit,
          other.fromCanonical(limit.canonical()),
          other.symbol());
    }
  }

  private void list(Context http) {
    List<Version> rows = database.read(profiles::newest).stream().map(Version::of).toList();
    page.show(http, "register/profiles", Map.of("rows", rows));
  }

  private void show(Context http) {
    String code = http.pathParam("code");
    List<Version> versions =
        database.read(sql -> profiles.versions(sql, code)).stream().map(Version::of).toList();
    if (versions.isEmpty()) {
      throw new NotFoundResponse();
    }
    Map<String, Object> model = new HashMap<>();
    model.put("newest", versions.get(0));
    model.put("versions", versions);
    model.put(
        "families",
        database.read(families::all).stream()
            .filter(family -> code.equals(family.details().profile()))
            .toList());
    page.show(http, "register/profile", model);
  }
}
