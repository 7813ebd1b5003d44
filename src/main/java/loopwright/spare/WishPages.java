package loopwright.spare;

import io.javalin.http.Context;
import loopwright.db.Database;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;

/** Wanting a spare for a slot without naming one, and taking that back. */
public final class WishPages implements Pages {
  private final Database database;
  private final Page page;
  private final Spares spares;
  private final SparePages shown;

  /**
   * @param shown where wishes are listed
   */
  public WishPages(Database database, Page page, Spares spares, SparePages shown) {
    this.database = database;
    this.page = page;
    this.spares = spares;
    this.shown = shown;
  }

  @Override
  public void mount(Routes routes) {
    routes.post(
        "/outages/{number}/spares/wish", Permission.PLAN, http -> settle(http, true, "why"));
    routes.post(
        "/outages/{number}/spares/no-wish",
        Permission.PLAN,
        http -> settle(http, false, "no-more"));
  }

  private void settle(Context http, boolean wanted, String reasonField) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> OutagePages.named(sql, spares.outages(), http));
    String reason =
        form.read(
            reasonField,
            text ->
                Text.needed(
                    wanted ? "why a spare is wanted" : "why it is wanted no longer", text, 2000));
    String[] which =
        (wanted ? form.typed("loop") + "|" + form.typed("slot") : form.typed("wish"))
            .split("\\|", -1);
    if (which.length != 2 || !which[0].matches("\\d{1,15}")) {
      form.complain("loop", "Choose the loop.");
    }
    if (!form.ok()) {
      shown.show(http, 422, form);
      return;
    }
    try {
      database.write(
          People.act(Actor.of(http), wanted ? "want spare" : "want spare no longer", reason),
          tx -> {
            spares.wish(tx, outage.id(), Long.parseLong(which[0]), which[1], wanted, reason);
            return wanted;
          });
      page.go(
          http,
          outage.href() + "/spares",
          wanted ? "Wanted. See who gets which spare." : "No longer wanted.");
    } catch (Refused refused) {
      form.complain(refused);
      shown.show(http, 422, form);
    }
  }
}
