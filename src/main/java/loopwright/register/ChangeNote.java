package loopwright.register;

import java.time.Instant;

/** Who made a change, when and why. */
public record ChangeNote(long change, Instant at, String by, String what, String reason) {}
