package loopwright.importing;

/**
 * A file as it was given.
 *
 * @param name shown in messages
 */
public record ImportFile(String name, byte[] bytes) {}
