package loopwright.loop;

/**
 * Where a part goes that was taken out of a loop.
 *
 * @param part number of the component
 * @param store where it lies then; may be empty
 * @param bin in the store; may be empty
 * @param quarantine why it may not be used; empty when it may
 */
public record PutAway(long part, String store, String bin, String quarantine) {}
