package loopwright.registerfile;

import loopwright.matching.Judgement;

/**
 * One row's loop, judged.
 *
 * @param row line in the file, counted from 1
 */
public record JudgedLoop(String file, int row, Judgement judgement) {}
