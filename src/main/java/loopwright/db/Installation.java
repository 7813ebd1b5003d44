package loopwright.db;

import static loopwright.db.gen.Tables.INSTALLATION;

import java.time.Instant;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import loopwright.db.gen.tables.records.InstallationRecord;
import loopwright.problem.Refused;

/**
 * Which database this is. The row is made once and not journaled: it names the journal's home.
 *
 * @param uuid carried by everything that leaves this database and may come back
 */
public record Installation(UUID uuid, Purpose purpose, Instant createdAt) {
  private static final short ONLY = 1;

  /** What a database is for. */
  public enum Purpose {
    /** The real register. */
    SITE("site"),
    /** The invented plant; only such a one may be remade. */
    DEMO("demo");

    private final String word;

    Purpose(String word) {
      this.word = word;
    }

    /** As stored and as said. */
    public String word() {
      return word;
    }

    static Purpose ofWord(String word) {
      return Arrays.stream(values())
          .filter(purpose -> purpose.word.equals(word))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("No purpose is called " + word + "."));
    }
  }

  /** Empty in a database that nobody has claimed yet. */
  public static Optional<Installation> of(Database database) {
    return database.read(sql -> sql.selectFrom(INSTALLATION).fetchOptional()).map(Installation::of);
  }

  /**
   * Gives a new database its identity and purpose; of one that has them, asks whether it serves
   * that purpose.
   *
   * @throws Refused {@link DbProblem#OTHER_PURPOSE} if it serves another
   */
  public static Installation claim(Database database, Purpose purpose, InstantSource clock) {
    database.derive(
        sql ->
            sql.insertInto(INSTALLATION)
                .set(INSTALLATION.ID, ONLY)
                .set(INSTALLATION.UUID, UUID.randomUUID().toString())
                .set(INSTALLATION.PURPOSE, purpose.word())
                .set(INSTALLATION.CREATED_AT, Tx.moment(clock.instant()))
                .onDuplicateKeyIgnore()
                .execute());
    Installation found = of(database).orElseThrow();
    if (found.purpose != purpose) {
      throw new Refused(
          DbProblem.OTHER_PURPOSE, database.place().shown(), found.purpose.word(), purpose.word());
    }
    return found;
  }

  private static Installation of(InstallationRecord row) {
    return new Installation(
        UUID.fromString(row.getUuid()),
        Purpose.ofWord(row.getPurpose()),
        row.getCreatedAt().toInstant());
  }
}
