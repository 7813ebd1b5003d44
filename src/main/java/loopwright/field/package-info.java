/**
 * Work packs taken along on a phone or tablet: pages that work without network, the devices that
 * hold a pack, and what they send when they are back.
 */
@NullMarked
package loopwright.field;

import org.jspecify.annotations.NullMarked;
