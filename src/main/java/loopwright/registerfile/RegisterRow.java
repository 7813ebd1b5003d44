package loopwright.registerfile;

import loopwright.matching.LoopView;

/**
 * One loop as a row of a register file gives it; what other rows say of its parts is not joined
 * yet.
 *
 * @param row line in the file, counted from 1
 */
record RegisterRow(String file, int row, LoopView loop) {

  /** For messages: {@code shop.csv, row 7}. */
  String where() {
    return file + ", row " + row;
  }
}
