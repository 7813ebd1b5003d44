/**
 * Static curves: voltage against gap, read from what people type, judged by a tolerance profile.
 * Pure: knows neither database nor web. Gaps in µm, voltages in V (negative), slopes in mV/µm
 * (positive).
 */
@NullMarked
package loopwright.curve;

import org.jspecify.annotations.NullMarked;
