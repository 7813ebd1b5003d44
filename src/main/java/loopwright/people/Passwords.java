package loopwright.people;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loopwright.problem.Refused;

/** How passwords are kept: Argon2id (RFC 9106) with a salt of their own. */
final class Passwords {
  static final int SHORTEST = 12;
  static final int LONGEST = 200;

  private static final int SALT_BYTES = 16;

  /** So that many sign-ins at once can't fill the memory. */
  private static final Semaphore AT_ONCE = new Semaphore(4, true);

  /** Without figures and letters that are mistaken for one another. */
  private static final String READABLE = "abcdefghjkmnpqrstuvwxyz23456789";

  private static final SecureRandom RANDOM = new SecureRandom();

  /** 19 MiB, two passes, one lane: a published minimum for Argon2id (OWASP, from memory). */
  private static final Passwords USUAL =
      new Passwords(Argon2Function.getInstance(19 * 1024, 2, 1, 32, Argon2.ID));

  private final Argon2Function work;

  /** Hash of a password that nobody has: an unknown login costs as much work as a known one. */
  private final String nobodys;

  Passwords(Argon2Function work) {
    this.work = work;
    this.nobodys = hash(oneTime());
  }

  /** As much work as accounts of people deserve. */
  static Passwords usual() {
    return USUAL;
  }

  String hash(String password) {
    return oneOfFew(
        () -> Password.hash(normal(password)).addRandomSalt(SALT_BYTES).with(work).getResult());
  }

  boolean matches(String password, String hash) {
    return oneOfFew(
        () ->
            Password.check(normal(password), hash).with(Argon2Function.getInstanceFromHash(hash)));
  }

  /** Does the work of a check that fails. */
  void matchNobody(String password) {
    matches(password, nobodys);
  }

  /** Refuses one that is too short or too long. */
  static String acceptable(String password) {
    int length = password.codePointCount(0, password.length());
    if (length < SHORTEST || length > LONGEST) {
      throw new Refused(PeopleProblem.PASSWORD_LENGTH, SHORTEST, LONGEST, length);
    }
    return password;
  }

  /** Random, easy to read out: four groups of four, 79 bits. */
  static String oneTime() {
    return IntStream.range(0, 4).mapToObj(group -> four()).collect(Collectors.joining("-"));
  }

  private static String four() {
    return RANDOM
        .ints(4, 0, READABLE.length())
        .mapToObj(i -> String.valueOf(READABLE.charAt(i)))
        .collect(Collectors.joining());
  }

  /** One spelling for letters that keyboards compose in different ways. */
  private static String normal(String password) {
    String cut = password.length() > LONGEST * 2 ? password.substring(0, LONGEST * 2) : password;
    return Normalizer.normalize(cut, Normalizer.Form.NFC);
  }

  private static <R> R oneOfFew(Supplier<R> work) {
    AT_ONCE.acquireUninterruptibly();
    try {
      return work.get();
    } finally {
      AT_ONCE.release();
    }
  }
}
