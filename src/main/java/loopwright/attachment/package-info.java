/**
 * Files kept with records: photographs, scanned sheets, certificates. Contents are known by their
 * SHA-256, their type by what is in them, and they are handed out so that no browser runs them.
 */
@NullMarked
package loopwright.attachment;

import org.jspecify.annotations.NullMarked;
