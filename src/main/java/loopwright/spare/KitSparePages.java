package loopwright.spare;

import io.javalin.http.Context;
import loopwright.db.Database;
import loopwright.kit.Kits;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;

/** Puts a whole kit aside for a loop of an outage. */
public final class KitSparePages implements Pages {
  private final Database database;
  private final Page page;
  private final Spares spares;
  private final Kits kits;
  private final SparePages shown;

  /**
   * @param shown where what is put aside is listed
   */
  public KitSparePages(Database database, Page page, Spares spares, Kits kits, SparePages shown) {
    this.database = database;
    this.page = page;
    this.spares = spares;
    this.kits = kits;
    this.shown = shown;
  }

  @Override
  public void mount(Routes routes) {
    routes.post("/outages/{number}/spares/kit", Permission.PLAN, this::reserve);
  }

  private void reserve(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> OutagePages.named(sql, spares.outages(), http));
    String loop = form.typed("loop");
    String number = form.typed("kit").strip();
    if (!loop.matches("\\d{1,15}")) {
      form.complain("loop", "Choose the loop.");
      shown.show(http, 422, form);
      return;
    }
    try {
      database.write(
          People.act(Actor.of(http), "put kit aside", outage.number() + ", " + number),
          tx -> {
            spares.reserve(
                tx, outage.id(), Long.parseLong(loop), number, kits.standing(tx.sql(), number));
            return number;
          });
      page.go(http, outage.href() + "/spares", number + " is put aside, the whole of it.");
    } catch (Refused refused) {
      form.complain("kit", refused.getMessage());
      shown.show(http, 422, form);
    }
  }
}
