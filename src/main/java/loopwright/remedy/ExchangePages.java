package loopwright.remedy;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import loopwright.db.Database;
import loopwright.plant.Plant;
import loopwright.plant.Train;
import loopwright.plant.TrainRow;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What would put loops out of balance right: a page, and the same as data under {@code /api}. */
public final class ExchangePages implements Pages {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Remedies remedies;

  public ExchangePages(Database database, Page page, Plant plant, Remedies remedies) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.remedies = remedies;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/exchanges", Permission.READ, this::show);
    routes.get("/api/exchanges", Permission.READ, this::answer);
  }

  record Chip(String label, String href, boolean on) {}

  private void show(Context http) {
    OptionalLong train = train(http);
    UnitsShown units = UnitsShown.of(http);
    Map<String, Object> model =
        database.read(
            sql ->
                Map.of(
                    "chips", chips(sql, train),
                    "shown", ProposalShown.of(remedies.propose(sql, train), units)));
    page.show(http, "remedy/exchanges", model);
  }

  private void answer(Context http) {
    OptionalLong train = train(http);
    http.json(database.read(sql -> ExchangesDocument.of(remedies.propose(sql, train))));
  }

  /** The train named in the address; one that isn't there leads to the page that says so. */
  private OptionalLong train(Context http) {
    @Nullable String typed = http.queryParam("train");
    if (typed == null || typed.isEmpty()) {
      return OptionalLong.empty();
    }
    if (!typed.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    return OptionalLong.of(Long.parseLong(typed));
  }

  /** The whole plant, every train with something to do, and the one that was asked for. */
  private List<Chip> chips(DSLContext sql, OptionalLong train) {
    var off = remedies.trains(sql);
    List<Chip> chips = new ArrayList<>();
    chips.add(new Chip("whole plant", "/exchanges", train.isEmpty()));
    plant.sites(sql).stream()
        .flatMap(site -> plant.trains(sql, site.id()).stream())
        .map(TrainRow::train)
        .filter(each -> off.contains(each.id().number()) || is(train, each))
        .forEach(
            each ->
                chips.add(
                    new Chip(
                        each.code(), "/exchanges?train=" + each.id().number(), is(train, each))));
    if (train.isPresent() && chips.stream().noneMatch(Chip::on)) {
      throw new NotFoundResponse();
    }
    return chips;
  }

  private static boolean is(OptionalLong train, Train each) {
    return train.isPresent() && train.getAsLong() == each.id().number();
  }
}
