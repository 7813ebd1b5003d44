/**
 * Uncertainty of calibration results after JCGM 100 (budget) and JCGM 101 (Monte Carlo), and what
 * may be stated with it after JCGM 106 and ILAC-G8 (pure).
 */
@NullMarked
package loopwright.uncertainty;

import org.jspecify.annotations.NullMarked;
