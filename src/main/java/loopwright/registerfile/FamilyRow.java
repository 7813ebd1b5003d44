package loopwright.registerfile;

import java.math.BigDecimal;
import loopwright.matching.FamilyView;
import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/**
 * One family as a row of a file gives it.
 *
 * @param row line in the file, counted from 1
 * @param view what the rules see of it
 * @param twoCablesAllowed null when the file doesn't say
 * @param startVolts at the begin of the linear range
 * @param profile name of the tolerance profile
 */
public record FamilyRow(
    String file,
    int row,
    FamilyView view,
    String name,
    String maker,
    @Nullable Boolean twoCablesAllowed,
    @Nullable Reported rangeFrom,
    @Nullable Reported rangeTo,
    @Nullable BigDecimal startVolts,
    String connectors,
    String targetAlloy,
    String profile,
    String note) {}
