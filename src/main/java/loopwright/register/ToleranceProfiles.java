package loopwright.register;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.curve.BuiltInProfiles;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import org.jooq.DSLContext;

/** Tolerance profiles as data: changed limits are a new version, and old versions stay. */
public final class ToleranceProfiles {
  private final ProfileStore store = new ProfileStore();

  /**
   * A profile's version, how it decides, and its number in the database, which a record of a
   * calibration keeps.
   */
  public record Stored(long version, ToleranceProfile profile, ProfileTerms terms) {}

  /** The newest version of each, by code. */
  public List<Stored> newest(DSLContext sql) {
    return store.newest(sql);
  }

  public Optional<Stored> newest(DSLContext sql, String code) {
    return store.versions(sql, code).stream().findFirst();
  }

  /** Every version, the newest first; empty if there is no such profile. */
  public List<Stored> versions(DSLContext sql, String code) {
    return store.versions(sql, code);
  }

  /**
   * The version that held at that moment: the newest that had been entered by then. What was
   * measured before the first was entered falls under the first.
   */
  public Optional<Stored> inForce(DSLContext sql, String code, Instant moment) {
    return store.inForce(sql, code, moment);
  }

  /** The version that a record keeps. */
  public Optional<Stored> version(DSLContext sql, long number) {
    return store.version(sql, number);
  }

  /**
   * Adds a profile, or a new version of it if there is one of that code; its number of version is
   * the next free one, whatever it says itself.
   *
   * @return the number that records keep
   */
  public long add(Tx tx, ToleranceProfile profile) {
    return add(tx, profile, ProfileTerms.SIMPLE);
  }

  /** The same with its decision rule. */
  public long add(Tx tx, ToleranceProfile profile, ProfileTerms terms) {
    return store.insert(tx, profile, terms);
  }

  /** Puts the profiles that come with the program into a database that has none. */
  public void seed(Database database) {
    if (!database.read(store::isEmpty)) {
      return;
    }
    Act act = Act.ofProgram("profiles", "Profiles that come with the program.");
    database.write(
        act,
        tx -> {
          BuiltInProfiles.all()
              .forEach(profile -> add(tx, profile, ProfileTerms.builtIn(profile.code())));
          return null;
        });
  }
}
