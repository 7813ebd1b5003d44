package loopwright.testing;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import loopwright.web.Accounts;
import loopwright.web.Actor;
import loopwright.web.Role;

/**
 * Accounts in memory: one person for each role, whose login is the role's word and whose password
 * is {@link #PASSWORD}.
 */
public final class KnownPeople implements Accounts {
  public static final String PASSWORD = "five small grey pebbles";

  public record Person(
      String id,
      String name,
      Role role,
      String password,
      boolean mustChangePassword,
      long passwordVersion)
      implements Actor {}

  private final Map<String, Person> people = new ConcurrentHashMap<>();

  public KnownPeople() {
    for (Role role : Role.values()) {
      String word = role.word();
      String name = "Test " + word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
      people.put(word, new Person(word, name, role, PASSWORD, false, 1));
    }
  }

  /** From now on that person must choose a password before anything else. */
  public void askForNewPassword(String id) {
    Person was = people.get(id);
    people.put(id, new Person(id, was.name, was.role, was.password, true, was.passwordVersion));
  }

  public void close(String id) {
    people.remove(id);
  }

  @Override
  public Optional<Actor> authenticate(String login, String password) {
    return Optional.<Actor>ofNullable(people.get(login))
        .filter(actor -> ((Person) actor).password.equals(password));
  }

  @Override
  public Optional<Actor> find(String id) {
    return Optional.ofNullable(people.get(id));
  }

  @Override
  public boolean changePassword(Actor actor, String old, String fresh) {
    Person was = people.get(actor.id());
    if (!was.password.equals(old)) {
      return false;
    }
    long version = was.passwordVersion + 1;
    people.put(was.id, new Person(was.id, was.name, was.role, fresh, false, version));
    return true;
  }
}
