package loopwright.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.attachment.Attachments;
import loopwright.attachment.Owner;
import loopwright.attachment.OwnerKind;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.outage.Outage;
import loopwright.pack.FieldReturns;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.web.PathSegment;
import org.jooq.DSLContext;

/**
 * Takes what devices send. Whatever is readable is kept; it becomes a record at once unless
 * something speaks against it, which then waits for a person.
 */
final class FieldEntries {
  private static final String RECORDED = "recorded";
  private static final String WAITS = "waits";
  private static final String ASIDE = "set aside";
  private static final String ACT = "field entry";

  private final FieldStore store;
  private final FieldReturns packs;
  private final Attachments attachments;

  FieldEntries(FieldStore store, FieldReturns packs, Attachments attachments) {
    this.store = store;
    this.packs = packs;
    this.attachments = attachments;
  }

  /**
   * Takes one entry; the same again gives the same answer and writes nothing.
   *
   * @throws Refused if it can't be read, belongs to no loop of the pack, holds nothing, or came
   *     before with other content
   */
  Entry receive(Database database, TakeAlong.Bearer from, SentEntry sent) {
    Optional<Entry> before = database.read(sql -> before(sql, sent));
    if (before.isPresent()) {
      return before.get();
    }
    try {
      return write(database, from, tx -> receive(tx, from.device(), sent));
    } catch (Refused refused) {
      if (refused.problem() instanceof FieldProblem || refused.problem() instanceof DbProblem) {
        throw refused; // nothing speaks against the entry itself, or it isn't one
      }
      String why = FieldReturns.said(refused);
      return write(database, from, tx -> keepWaiting(tx, from.device(), sent, why));
    }
  }

  private static <R> R write(
      Database database, TakeAlong.Bearer from, java.util.function.Function<Tx, R> work) {
    String reason = "Sent by the device '" + from.device().label() + "'";
    return database.write(People.act(from.person(), ACT, reason), work);
  }

  private Optional<Entry> before(DSLContext sql, SentEntry sent) {
    Optional<Entry> kept = store.withUuid(sql, sent.uuid());
    kept.filter(entry -> !entry.hash().equals(Token.sha256(sent.written())))
        .ifPresent(
            other -> {
              throw new Refused(FieldProblem.OTHER_CONTENT);
            });
    return kept;
  }

  /** Entries of one pack queue up here, so that the second of two equal ones finds the first. */
  private Outage hold(Tx tx, Device device) {
    packs.outages().hold(tx, device.outage());
    return packs.outages().one(tx.sql(), device.outage());
  }

  private Entry receive(Tx tx, Device device, SentEntry sent) {
    Outage outage = hold(tx, device);
    Optional<Entry> before = before(tx.sql(), sent);
    if (before.isPresent()) {
      return before.get();
    }
    long point = point(tx.sql(), outage, sent);
    FieldReturns.Filled filled = sent.filled(device.label());
    FieldReturns.Look look = packs.look(tx.sql(), outage, filled, sent.since());
    if (look.nothing() && look.against().isEmpty()) {
      throw new Refused(FieldProblem.NOTHING, sent.tag());
    }
    List<String> against = new ArrayList<>(look.against());
    boolean answered = look.questions().size() == sent.confirmed();
    if (!answered) {
      against.addAll(look.questions());
    }
    if (!against.isEmpty()) {
      return kept(tx, store.addEntry(tx, device, sent, point, WAITS, String.join("\n", against)));
    }
    String told =
        look.before()
            ? "The very same came back before; nothing changed."
            : packs.keep(tx, outage, filled, answered);
    return kept(tx, store.addEntry(tx, device, sent, point, RECORDED, told));
  }

  private Entry keepWaiting(Tx tx, Device device, SentEntry sent, String why) {
    Outage outage = hold(tx, device);
    return before(tx.sql(), sent)
        .orElseGet(
            () ->
                kept(
                    tx,
                    store.addEntry(tx, device, sent, point(tx.sql(), outage, sent), WAITS, why)));
  }

  private long point(DSLContext sql, Outage outage, SentEntry sent) {
    return packs
        .pointOf(sql, outage, sent.tag())
        .orElseThrow(() -> new Refused(FieldProblem.NEVER_IN_PACK, sent.tag(), outage.number()));
  }

  private Entry kept(Tx tx, long id) {
    return store.entry(tx.sql(), id).orElseThrow();
  }

  /**
   * Records an entry that waited: somebody looked at both sides.
   *
   * @throws Refused if it does not wait, or still can't be recorded
   */
  void record(Tx tx, long outageId, long id, long person, String reason) {
    Entry entry = waiting(tx, outageId, id);
    Outage outage = packs.outages().one(tx.sql(), entry.outage());
    String told = packs.keep(tx, outage, entry.content().filled(entry.from()), true);
    store.decide(tx, id, RECORDED, person, reason, told);
  }

  /**
   * Leaves an entry as it is, for good.
   *
   * @throws Refused if it does not wait
   */
  void setAside(Tx tx, long outageId, long id, long person, String reason) {
    waiting(tx, outageId, id);
    store.decide(tx, id, ASIDE, person, reason, "");
  }

  private Entry waiting(Tx tx, long outage, long id) {
    packs.outages().hold(tx, outage);
    Entry entry =
        store
            .entry(tx.sql(), id)
            .filter(one -> one.outage() == outage)
            .orElseThrow(() -> new Refused(FieldProblem.NO_ENTRY));
    if (!entry.waits()) {
      throw new Refused(FieldProblem.DECIDED_ALREADY);
    }
    return entry;
  }

  /**
   * Keeps a photograph with its loop.
   *
   * @return the number of the attachment, the same for the same sent again
   * @throws Refused if it is no picture, or of no loop of the pack
   */
  long photo(Database database, TakeAlong.Bearer from, NewPhoto photo) {
    Optional<Long> before = database.read(sql -> store.photo(sql, photo.uuid()));
    return before.orElseGet(() -> write(database, from, tx -> keepPhoto(tx, from.device(), photo)));
  }

  /** A photograph as it was sent. */
  record NewPhoto(String uuid, String tag, String name, byte[] content) {}

  private long keepPhoto(Tx tx, Device device, NewPhoto photo) {
    Outage outage = hold(tx, device);
    Optional<Long> before = store.photo(tx.sql(), photo.uuid());
    if (before.isPresent()) {
      return before.get();
    }
    long point =
        packs
            .pointOf(tx.sql(), outage, photo.tag())
            .orElseThrow(
                () -> new Refused(FieldProblem.NEVER_IN_PACK, photo.tag(), outage.number()));
    Owner loop =
        new Owner(OwnerKind.LOOP, point, photo.tag(), "/loops/" + PathSegment.of(photo.tag()));
    String note = "Work pack " + outage.number() + ", sent by the device '" + device.label() + "'";
    long attachment = attachments.keepPhoto(tx, loop, photo.name(), photo.content(), note);
    store.addPhoto(tx, device, photo.uuid(), point, attachment);
    return attachment;
  }
}
