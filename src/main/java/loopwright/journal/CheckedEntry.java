package loopwright.journal;

import java.io.IOException;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import loopwright.db.Fact;
import loopwright.db.Journaled;
import loopwright.db.RowText;
import loopwright.problem.Refused;
import org.erdtman.jcs.JsonCanonicalizer;
import org.jspecify.annotations.Nullable;

/**
 * What can be said of an entry by itself, without the others; several are made at once.
 *
 * @param body null when it could not be read
 * @param wrong what is wrong with it, or null
 * @param unreadable why nothing can be said, or null
 */
record CheckedEntry(
    StoredEntry stored,
    @Nullable EntryBody body,
    @Nullable Disagreement wrong,
    @Nullable Refused unreadable) {

  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,18}");
  private static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");

  static CheckedEntry of(StoredEntry stored) {
    if (!Arrays.equals(stored.leafHash(), Hashes.leaf(stored.body()))) {
      return wrong(stored, "its content is not what its leaf hash was made of.");
    }
    try {
      if (!isCanonical(stored.body())) {
        return wrong(stored, "its content is not in canonical form (RFC 8785).");
      }
      EntryBody body = EntryBody.read(stored.seq(), stored.body());
      Optional<String> fault = columns(stored, body).or(() -> facts(body));
      return new CheckedEntry(
          stored,
          body,
          fault.map(text -> Disagreement.ofEntry(stored.seq(), text)).orElse(null),
          null);
    } catch (IOException noEntry) {
      return wrong(stored, "its content can't be read: " + noEntry.getMessage() + ".");
    } catch (Refused unknownFormat) {
      return new CheckedEntry(stored, null, null, unknownFormat);
    }
  }

  private static CheckedEntry wrong(StoredEntry stored, String sentence) {
    return new CheckedEntry(stored, null, Disagreement.ofEntry(stored.seq(), sentence), null);
  }

  private static boolean isCanonical(byte[] body) throws IOException {
    return Arrays.equals(body, new JsonCanonicalizer(body).getEncodedUTF8());
  }

  private static Optional<String> columns(StoredEntry stored, EntryBody body) {
    return first(
        differs("number", stored.seq(), body.seq()),
        differs("change", stored.change(), body.change()),
        differs("part", stored.part(), body.part()),
        differs("completion of its change", stored.last(), body.last()),
        differs("moment", stored.at(), body.at()),
        differsFromChange("moment", stored.made().at(), body.at()),
        differsFromChange("actor's number", stored.made().actorId(), body.act().actorId()),
        differsFromChange("actor", stored.made().actorName(), body.act().actorName()),
        differsFromChange("actor's role", stored.made().actorRole(), body.act().actorRole()),
        differsFromChange("kind of act", stored.made().what(), body.act().what()),
        differsFromChange("reason", stored.made().reason(), body.act().reason()));
  }

  @SafeVarargs
  private static Optional<String> first(Optional<String>... faults) {
    return Arrays.stream(faults).flatMap(Optional::stream).findFirst();
  }

  private static Optional<String> differs(String what, Object column, Object content) {
    return column.equals(content)
        ? Optional.empty()
        : Optional.of("its %s is %s, its content says %s.".formatted(what, column, content));
  }

  private static Optional<String> differsFromChange(
      String what, @Nullable Object change, @Nullable Object content) {
    return Objects.equals(change, content)
        ? Optional.empty()
        : Optional.of(
            "the %s of its change is \u201c%s\u201d, its content says \u201c%s\u201d."
                .formatted(what, change, content));
  }

  private static Optional<String> facts(EntryBody body) {
    String own = Long.toString(body.change());
    for (Fact fact : body.facts()) {
      Optional<String> fault = fact(own, fact);
      if (fault.isPresent()) {
        return fault;
      }
    }
    return Optional.empty();
  }

  private static Optional<String> fact(String change, Fact fact) {
    boolean whole = fact.operation().startsWith("insert");
    boolean wrote = whole || fact.operation().equals("update");
    if (!Journaled.is(fact.table()) || !NUMBER.matcher(fact.key()).matches()) {
      return fault("it names %s, which is no row of a journaled table.", fact);
    }
    if (!wrote && !fact.operation().equals("delete")) {
      return fault("nobody knows the operation " + fact.operation() + " on %s.", fact);
    }
    if (wrote && !HASH.matcher(fact.hash()).matches()) {
      return fault("it gives no hash for %s.", fact);
    }
    if (whole && !fact.hash().equals(RowText.hash(fact.rows()))) {
      return fault("the hash it gives for %s is not that of what it says.", fact);
    }
    return fact.rows().stream()
            .allMatch(row -> row.getOrDefault("change_id", change).equals(change))
        ? Optional.empty()
        : fault("%s names another change.", fact);
  }

  private static Optional<String> fault(String sentence, Fact fact) {
    return Optional.of(sentence.replace("%s", fact.table().replace('_', ' ') + " " + fact.key()));
  }
}
