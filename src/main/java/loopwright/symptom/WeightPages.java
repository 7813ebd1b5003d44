package loopwright.symptom;

import io.javalin.http.Context;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import loopwright.cause.Cause;
import loopwright.cause.CauseProblem;
import loopwright.cause.Weights;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** The weights of causes before measuring: everybody sees them, engineers set them. */
public final class WeightPages implements Pages {
  static final String PATH = "/cause/weights";
  private static final int LONGEST = 2000;
  private static final int MOST_VERSIONS = 50;

  private final Database database;
  private final Page page;
  private final CauseWeights weights;

  public WeightPages(Database database, Page page, CauseWeights weights) {
    this.database = database;
    this.page = page;
    this.weights = weights;
  }

  @Override
  public void mount(Routes routes) {
    routes.get(PATH, Permission.READ, http -> show(http, 200, database.read(this::present)));
    routes.post(PATH, Permission.DECIDE, this::set);
    routes.post(PATH + "/built-in", Permission.DECIDE, this::backToBuiltIn);
  }

  /**
   * A cause.
   *
   * @param field of the form
   */
  record Row(String field, String label, String now, String builtIn) {}

  /** Who set weights, when and why. */
  record VersionRow(long number, String what, String when, String who, String reason) {}

  private static String field(Cause cause) {
    return "weight-" + cause.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private Form present(DSLContext sql) {
    Weights now = weights.now(sql);
    Form form = Form.blank().at(Long.toString(weights.version(sql)));
    for (Cause cause : Cause.values()) {
      form.put(field(cause), Numbers.plain(now.of(cause)));
    }
    return form;
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    database.read(
        sql -> {
          Weights now = weights.now(sql);
          List<WeightStore.Version> versions = weights.versions(sql, MOST_VERSIONS);
          model.put("origin", now.origin());
          model.put("rows", Arrays.stream(Cause.values()).map(cause -> row(cause, now)).toList());
          model.put("versions", versions.stream().map(WeightPages::row).toList());
          model.put("mayGoBack", !versions.isEmpty() && !versions.get(0).builtIn());
          return model;
        });
    page.show(http, status, "symptom/weights", model);
  }

  private static Row row(Cause cause, Weights now) {
    BigDecimal usual = Weights.builtIn().of(cause);
    return new Row(field(cause), cause.label(), Numbers.plain(now.of(cause)), Numbers.plain(usual));
  }

  private static VersionRow row(WeightStore.Version version) {
    return new VersionRow(
        version.id(),
        version.builtIn() ? "back to the built-in weights" : "set",
        CauseWeights.moment(version),
        version.who(),
        version.reason());
  }

  private void set(Context http) {
    Form form = Form.from(http);
    Map<Cause, BigDecimal> typed = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      BigDecimal weight = form.read(field(cause), text -> Weights.read(cause, text));
      if (weight != null) {
        typed.put(cause, weight);
      }
    }
    write(http, form, "reason", "set cause weights", tx -> weights.set(tx, new Weights(typed, "")));
  }

  private void backToBuiltIn(Context http) {
    Form form = Form.from(http);
    write(http, form, "back-reason", "set cause weights", weights::backToBuiltIn);
  }

  /** Writes unless a field is wrong or somebody else set weights since the page was opened. */
  private void write(Context http, Form form, String why, String what, Consumer<Tx> work) {
    String reason = form.read(why, text -> Text.needed("why the weights change", text, LONGEST));
    if (!form.ok() || reason == null) {
      refill(http, form);
      return;
    }
    Act act = People.act(Actor.of(http), what, reason);
    try {
      database.write(
          act,
          tx -> {
            if (form.stale(Long.toString(weights.version(tx.sql())))) {
              throw new Refused(CauseProblem.OTHER_WEIGHTS);
            }
            work.accept(tx);
            return act;
          });
      page.go(http, PATH, "They count from now on.");
    } catch (Refused refused) {
      form.complain(refused);
      refill(http, form);
    }
  }

  /** What was typed stays; a form that held no weights shows those that count. */
  private void refill(Context http, Form form) {
    if (form.typed(field(Cause.HEALTHY)).isEmpty() && !form.everything().containsKey("reason")) {
      database
          .read(sql -> weights.now(sql))
          .byCause()
          .forEach((cause, weight) -> form.put(field(cause), Numbers.plain(weight)));
    }
    show(http, 422, form.at(Long.toString(database.read(weights::version))));
  }
}
