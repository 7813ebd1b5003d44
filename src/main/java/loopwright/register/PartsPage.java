package loopwright.register;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One page of a list.
 *
 * @param earlier where the page before it is; null if this is the first
 * @param later where the page after it is; null if this is the last
 */
public record PartsPage(List<PartRow> rows, @Nullable Cursor earlier, @Nullable Cursor later) {}
