package loopwright.field;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.time.InstantSource;
import java.util.Map;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.outage.Outage;
import loopwright.pack.FieldReturns;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jspecify.annotations.Nullable;

/**
 * What devices talk to. Each request carries the device's token in {@code Authorization}; the token
 * names the pack, so a device can ask for no other. Cookies are not looked at.
 */
final class FieldApi implements Pages {
  private static final int MOST_TAG = 60;

  /** Somebody writes for long, or wrote the same at once: the device keeps it and comes again. */
  private static final int TRY_LATER = 503;

  private static final int UNUSABLE = 422;

  private final Database database;
  private final TakeAlong devices;
  private final FieldEntries entries;
  private final FieldStore store;
  private final FieldReturns packs;
  private final InstantSource clock;

  FieldApi(
      Database database,
      TakeAlong devices,
      FieldEntries entries,
      FieldStore store,
      FieldReturns packs,
      InstantSource clock) {
    this.database = database;
    this.devices = devices;
    this.entries = entries;
    this.store = store;
    this.packs = packs;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/api/field/pack", Permission.DEVICE, told(this::state));
    routes.post("/api/field/entries", Permission.DEVICE, told(this::receive));
    routes.post("/api/field/photos/{uuid}", Permission.DEVICE, told(this::photo));
  }

  /** The status tells the device what to do: 401 be renewed, 422 show it, 503 come again. */
  private static Handler told(Handler work) {
    return http -> {
      try {
        work.handle(http);
      } catch (Refused refused) {
        Problem problem = refused.problem();
        http.status(status(problem))
            .json(Map.of("code", problem.code(), "message", String.valueOf(refused.getMessage())));
      }
    };
  }

  private static int status(Problem problem) {
    if (problem instanceof FieldProblem ours) {
      return ours.status();
    }
    return problem instanceof DbProblem ? TRY_LATER : UNUSABLE;
  }

  private TakeAlong.Bearer bearer(Context http) {
    return devices.bearer(database, http.header("Authorization"));
  }

  private void state(Context http) {
    Device device = bearer(http).device();
    PackState state =
        database.read(
            sql -> {
              Outage outage = packs.outages().one(sql, device.outage());
              FieldReturns.TakenAlong pack =
                  packs
                      .newest(sql, outage)
                      .orElseThrow(() -> new Refused(FieldProblem.NOT_ISSUED, outage.number()));
              return PackState.of(
                  outage, pack, device, store.entries(sql, outage.id()), clock.instant());
            });
    http.json(state.identity().equals(http.queryParam("have")) ? state.lean() : state);
  }

  private void receive(Context http) {
    TakeAlong.Bearer from = bearer(http);
    Entry entry = entries.receive(database, from, SentEntry.read(http.body()));
    http.json(
        database.read(
            sql -> PackState.entry(packs.outages().one(sql, from.device().outage()), entry)));
  }

  private void photo(Context http) {
    TakeAlong.Bearer from = bearer(http);
    String uuid = http.pathParam("uuid");
    if (!SentEntry.UUID.matcher(uuid).matches()) {
      throw new Refused(FieldProblem.UNREADABLE, "its number is none");
    }
    FieldEntries.NewPhoto photo =
        new FieldEntries.NewPhoto(
            uuid,
            parameter(http.queryParam("loop")),
            parameter(http.queryParam("name")),
            http.bodyAsBytes());
    http.json(Map.of("uuid", uuid, "file", entries.photo(database, from, photo)));
  }

  private static String parameter(@Nullable String text) {
    if (text == null || text.isBlank() || text.length() > MOST_TAG * 4) {
      throw new Refused(FieldProblem.UNREADABLE, "loop and name are missing");
    }
    return text;
  }
}
