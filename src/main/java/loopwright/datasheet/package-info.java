/**
 * What makers' data sheets say of parts that only some rules ask for: connectors, temperatures,
 * approvals for hazardous areas, entity parameters, supply.
 */
@NullMarked
package loopwright.datasheet;

import org.jspecify.annotations.NullMarked;
