package loopwright.register;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Database;
import loopwright.people.People;
import loopwright.problem.Text;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jspecify.annotations.Nullable;

/** Tolerance profiles to add and to change, which always makes a new version. */
final class ProfileEditPages implements Pages {
  private final Database database;
  private final Page page;
  private final ToleranceProfiles profiles;

  ProfileEditPages(Database database, Page page, ToleranceProfiles profiles) {
    this.database = database;
    this.page = page;
    this.profiles = profiles;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/profiles/new", Permission.DECIDE, http -> show(http, 200, fresh(), null));
    routes.post("/profiles", Permission.DECIDE, this::add);
    routes.get("/profiles/{code}/change", Permission.DECIDE, this::open);
    routes.post("/profiles/{code}/change", Permission.DECIDE, this::change);
  }

  private static Form fresh() {
    return Form.of(Map.of("rule", "SIMPLE", "shift", "MINIMAX"));
  }

  private ToleranceProfiles.Stored newest(Context http) {
    List<ToleranceProfiles.Stored> versions =
        database.read(sql -> profiles.versions(sql, http.pathParam("code")));
    return versions.stream().findFirst().orElseThrow(NotFoundResponse::new);
  }

  private void open(Context http) {
    ToleranceProfiles.Stored stored = newest(http);
    Form form = ProfileForm.of(stored).at(Integer.toString(stored.profile().version()));
    show(http, 200, form, stored.profile());
  }

  private void show(Context http, int status, Form form, @Nullable ToleranceProfile present) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("present", present);
    model.put("slopeUnits", List.of("mV/µm", "mV/mil"));
    model.put("gapUnits", List.of("µm", "mil"));
    model.put("shifts", ProfileForm.shifts());
    model.put("rules", ProfileForm.rules());
    model.put("bandRows", BandForm.rows(form));
    model.put("bandHeadings", BandForm.HEADINGS);
    page.show(http, status, "register/profile-form", model);
  }

  private void add(Context http) {
    Form form = Form.from(http);
    ProfileForm typed = new ProfileForm(form);
    String code = typed.code();
    String name = typed.name();
    if (code != null && database.read(sql -> profiles.newest(sql, code)).isPresent()) {
      form.complain("code", "There is a profile " + code + " already: make a new version of it.");
    }
    keep(http, form, typed.read(code, name), typed.terms(), null);
  }

  private void change(Context http) {
    ToleranceProfile present = newest(http).profile();
    Form form = Form.from(http);
    ProfileForm typed = new ProfileForm(form);
    if (form.stale(Integer.toString(present.version()))) {
      form.complain(
          "Version %s was made meanwhile. Look at it; if yours is still wanted, send it again."
              .formatted(present.version()));
      form.at(Integer.toString(present.version()));
      show(http, 409, form, present);
      return;
    }
    keep(http, form, typed.read(present.code(), present.name()), typed.terms(), present);
  }

  private void keep(
      Context http,
      Form form,
      Optional<ToleranceProfile> fresh,
      ProfileTerms terms,
      @Nullable ToleranceProfile present) {
    String reason = form.read("reason", text -> Text.needed("the reason", text, 2000));
    if (!form.ok() || fresh.isEmpty()) {
      show(http, 422, form, present);
      return;
    }
    ToleranceProfile profile = fresh.get();
    database.write(
        People.act(Actor.of(http), "tolerance profile", reason),
        tx -> profiles.add(tx, profile, terms));
    page.go(
        http,
        "/profiles/" + PathSegment.of(profile.code()),
        "Kept as a new version. Records judged before keep theirs.");
  }
}
