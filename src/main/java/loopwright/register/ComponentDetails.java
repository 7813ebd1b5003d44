package loopwright.register;

import java.time.LocalDate;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jspecify.annotations.Nullable;

/**
 * What names and describes a part and has no history of its own.
 *
 * @param channels of a driver box; 1 for everything else
 * @param sensitivity of a seismic transducer or pickup with its unit, as typed; empty otherwise
 * @param dueOn day on which it has to be checked again, for parts with a due date of their own
 */
public record ComponentDetails(
    PartKind kind,
    PartIdentity identity,
    int channels,
    String sensitivity,
    @Nullable LocalDate dueOn,
    String note) {

  /** Refuses more than 16 channels and texts that are too long. */
  public ComponentDetails {
    sensitivity = Text.kept("the sensitivity", sensitivity, 40);
    note = Text.kept("the note", note, 1_000);
    if (channels < 1 || channels > 16) {
      throw new Refused(
          RegisterProblem.OUT_OF_RANGE, "The number of channels", channels, "1 to 16");
    }
  }

  public static ComponentDetails of(PartKind kind, PartIdentity identity) {
    return new ComponentDetails(kind, identity, 1, "", null, "");
  }

  /** For sentences: {@code extension cable XC-51733}. */
  public String inWords() {
    return kind.word() + " " + identity.label();
  }
}
