package loopwright.spare;

import java.util.Comparator;
import java.util.List;
import loopwright.db.Tx;
import loopwright.outage.Outage;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/** Deals spares over all open outages and takes a dealing over. */
public final class Allocations {
  private final SpareStore store = new SpareStore();
  private final Wants wants;
  private final Wants.Sources sources;
  private final Spares spares;
  private final Proof proof;

  Allocations(Wants.Sources sources, Spares spares) {
    this.sources = sources;
    this.wants = new Wants(sources);
    this.spares = spares;
    this.proof = new Proof(sources.judging(), sources.clock());
  }

  /** The best dealing of what lies in stock now. */
  Dealing propose(DSLContext sql) {
    Wants.Gathered gathered = wants.gather(sql);
    return new Dealer(sql, proof, gathered.wants())
        .deal(new LeftOut(sql, sources.families(), gathered.outOfReach()));
  }

  /** Outages that take part. */
  List<Outage> open(DSLContext sql) {
    return wants.open(sql);
  }

  /**
   * Puts aside what the dealing says, and releases what it moves, all at once.
   *
   * @param seen fingerprint of the dealing that was looked at
   * @throws Refused {@link SpareProblem#DEALT_ANEW} if it would be another one now
   */
  Dealing takeOver(Tx tx, String seen) {
    wants.open(tx.sql()).stream()
        .sorted(Comparator.comparing(Outage::id))
        .forEach(outage -> sources.outages().hold(tx, outage.id()));
    Dealing dealing = propose(tx.sql());
    if (!dealing.fingerprint().equals(seen)) {
      throw new Refused(SpareProblem.DEALT_ANEW);
    }
    if (dealing.changesNothing()) {
      throw new Refused(SpareProblem.NOTHING_TO_DEAL);
    }
    dealing
        .released()
        .forEach(held -> spares.release(tx, held, "Dealt anew over all open outages."));
    dealing.taken().forEach(one -> hold(tx, one));
    return dealing;
  }

  /** Proved once more, so that the proof on record speaks of the part as it is released. */
  private void hold(Tx tx, Dealing.Served served) {
    Want want = served.want();
    Want.Option option = served.option();
    Proof.Said said = proof.with(tx.sql(), want.loop(), option.slot(), option.part());
    if (!said.matches()) {
      throw new Refused(SpareProblem.DOES_NOT_MATCH, option.label(), want.tag(), said.against());
    }
    store.hold(
        tx,
        want.outage().id(),
        want.point(),
        option.slot().word(),
        option.part(),
        said.verdict(),
        said.text());
  }
}
