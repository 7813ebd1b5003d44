/**
 * The database: where it lies, the one door for writing, migrations, backup. Knows no feature.
 * Generated table classes are in {@code loopwright.db.gen} under {@code target/}.
 */
@NullMarked
package loopwright.db;

import org.jspecify.annotations.NullMarked;
