/**
 * Which exchanges of parts put loops back into length balance, what stock can do, and which lengths
 * are short. Pure: loops and parts in, a proposal out; the model is told in {@link
 * loopwright.exchange.Proposal}.
 */
@NullMarked
package loopwright.exchange;

import org.jspecify.annotations.NullMarked;
