package loopwright.people;

import java.time.Instant;

/** Who changed an account last, when and why. */
public record LastChange(String by, Instant at, String reason) {}
