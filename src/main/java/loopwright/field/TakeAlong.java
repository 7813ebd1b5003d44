package loopwright.field;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.outage.Outage;
import loopwright.outage.Outages;
import loopwright.pack.FieldReturns;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Accounts;
import loopwright.web.Actor;
import loopwright.web.Permission;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Which devices hold which pack, and what each may do. */
final class TakeAlong {
  static final int LONGEST_DAYS = 90;
  static final int USUAL_DAYS = 14;
  private static final int MOST_DEVICES = 100;

  /** Own choice: often enough for "last heard of", seldom enough for the database. */
  private static final Duration SEEN_EVERY = Duration.ofMinutes(1);

  private final FieldStore store;
  private final FieldReturns packs;
  private final Accounts accounts;
  private final InstantSource clock;

  TakeAlong(FieldStore store, FieldReturns packs, Accounts accounts, InstantSource clock) {
    this.store = store;
    this.packs = packs;
    this.accounts = accounts;
    this.clock = clock;
  }

  /**
   * Ends what a device may do because the pack is taken along on it anew; nothing if it may do
   * nothing for that outage as it is.
   *
   * @param token that it holds; may be empty
   */
  void replace(Tx tx, long outage, long person, String token) {
    store
        .withToken(tx.sql(), Token.sha256(token))
        .filter(device -> device.outage() == outage && device.endedBy() == null)
        .ifPresent(
            device -> store.end(tx, device.id(), person, "taken along anew on the same device"));
  }

  /** A fresh device with the token that is shown to it once. */
  record Taken(long device, Token token, Instant expiresAt) {}

  /**
   * Lets a device hold a pack.
   *
   * @param days how long it may send
   * @throws Refused if the outage is closed or has no pack, or on too many devices
   */
  Taken take(Tx tx, long id, Actor by, String label, int days) {
    Outage outage = packs.outages().one(tx.sql(), id);
    Outages.refuseClosed(outage);
    if (packs.newest(tx.sql(), outage).isEmpty()) {
      throw new Refused(FieldProblem.NOT_ISSUED, outage.number());
    }
    long held =
        store.devices(tx.sql(), id).stream()
            .filter(device -> device.endedBy() == null && !device.isExpired(clock.instant()))
            .count();
    if (held >= MOST_DEVICES) {
      throw new Refused(FieldProblem.TOO_MANY_DEVICES, outage.number(), held);
    }
    Token token = Token.fresh();
    Instant expires = tx.at().plus(Duration.ofDays(days));
    long device = store.addDevice(tx, id, Long.parseLong(by.id()), label, token.hash(), expires);
    return new Taken(device, token, expires);
  }

  /**
   * Ends what a device of that outage may do.
   *
   * @throws Refused if there is none, or it was ended before
   */
  void end(Tx tx, long outage, long id, long person, String reason) {
    Device device =
        store
            .device(tx.sql(), id)
            .filter(one -> one.outage() == outage)
            .orElseThrow(() -> new Refused(FieldProblem.NO_DEVICE));
    if (device.endedBy() != null) {
      throw new Refused(FieldProblem.ENDED_ALREADY);
    }
    store.end(tx, id, person, Text.needed("why", reason, 400));
  }

  List<Device> of(DSLContext sql, Outage outage) {
    return store.devices(sql, outage.id());
  }

  /** A device that may send, with the person in whose name it does. */
  record Bearer(Device device, Actor person) {}

  /**
   * Who comes with that token.
   *
   * @param header of the request, {@code Bearer …}
   * @throws Refused if it may not, with what to do
   */
  Bearer bearer(Database database, @Nullable String header) {
    String token = token(header).orElseThrow(() -> new Refused(FieldProblem.NO_TOKEN));
    Device device =
        database
            .read(sql -> store.withToken(sql, Token.sha256(token)))
            .orElseThrow(() -> new Refused(FieldProblem.UNKNOWN_TOKEN));
    refuseEnded(database, device);
    Actor person =
        accounts
            .find(Long.toString(device.person()))
            .filter(found -> found.may(Permission.RECORD))
            .orElseThrow(() -> new Refused(FieldProblem.NOT_ALLOWED, device.personName()));
    seen(database, device);
    return new Bearer(device, person);
  }

  private static Optional<String> token(@Nullable String header) {
    return header != null && header.startsWith("Bearer ")
        ? Optional.of(header.substring("Bearer ".length()).strip()).filter(t -> !t.isEmpty())
        : Optional.empty();
  }

  private void refuseEnded(Database database, Device device) {
    if (device.endedBy() != null) {
      throw new Refused(FieldProblem.ENDED, device.endedBy(), String.valueOf(device.endReason()));
    }
    if (device.isExpired(clock.instant())) {
      Outage outage = database.read(sql -> packs.outages().one(sql, device.outage()));
      throw new Refused(FieldProblem.EXPIRED, SiteMoment.shown(device.expiresAt(), outage.zone()));
    }
  }

  private void seen(Database database, Device device) {
    Instant now = clock.instant();
    Instant before = device.seenAt();
    if (before != null && before.plus(SEEN_EVERY).isAfter(now)) {
      return;
    }
    try {
      database.derive(
          sql -> {
            store.seen(sql, device.id(), now);
            return true;
          });
    } catch (Refused busy) {
      // somebody writes for long: what the device wants must not fail for the sake of a hint
      return;
    }
  }
}
