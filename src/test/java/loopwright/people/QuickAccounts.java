package loopwright.people;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.util.Locale;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.web.Role;

/**
 * The accounts of a demo, hashed with next to no work: hundreds of tests sign in, and what a
 * password costs is proved elsewhere.
 */
public final class QuickAccounts {
  private static final String HASH =
      Password.hash(People.DEMO_PASSWORD)
          .addRandomSalt(16)
          .with(Argon2Function.getInstance(64, 1, 1, 32, Argon2.ID))
          .getResult();

  private QuickAccounts() {}

  public static void create(Database database) {
    database.write(
        Act.ofProgram("create demo accounts", "to let people look around"),
        tx -> {
          for (Role role : Role.values()) {
            account(tx, role);
          }
          return true;
        });
  }

  private static void account(Tx tx, Role role) {
    String word = role.word();
    String name = "Demo " + word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    new PeopleStore().add(tx, new Login(word), new Account(name, role, true), HASH, false);
  }
}
