/**
 * Quantities of the trade. Inside the program a gap is in µm, a voltage in V (negative as the
 * driver gives it), a scale factor in mV/µm (positive), a cable length in m, a frequency in Hz, a
 * temperature in °C. What a person typed is kept beside the number and shows again exactly so.
 */
@NullMarked
package loopwright.units;

import org.jspecify.annotations.NullMarked;
