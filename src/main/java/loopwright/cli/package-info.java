/**
 * The command line: the same engine as the pages, one class a command. Results go to standard
 * output, complaints to standard error; exit codes are those of {@link Exit}.
 */
@NullMarked
package loopwright.cli;

import org.jspecify.annotations.NullMarked;
