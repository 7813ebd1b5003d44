package loopwright.loop;

import java.util.OptionalLong;

/** What sits in a slot: a part, nothing (somebody looked), or nobody can say. */
public sealed interface Content {

  /** As stored: {@code part}, {@code none}, {@code unknown}. */
  String word();

  /** The component, if it is one. */
  default OptionalLong component() {
    return OptionalLong.empty();
  }

  /** The channel of a driver box with several; 1 otherwise. */
  default int channel() {
    return 1;
  }

  /**
   * A component; of a driver with several channels, one of them.
   *
   * @param number the component's
   * @param channel counted from 1
   */
  record Part(long number, int channel) implements Content {
    public Part(long number) {
      this(number, 1);
    }

    @Override
    public String word() {
      return "part";
    }

    @Override
    public OptionalLong component() {
      return OptionalLong.of(number);
    }
  }

  /** Looked at, and nothing is fitted there. */
  record None() implements Content {
    @Override
    public String word() {
      return "none";
    }
  }

  /** Something may be fitted there; nobody can say what. */
  record Unknown() implements Content {
    @Override
    public String word() {
      return "unknown";
    }
  }
}
