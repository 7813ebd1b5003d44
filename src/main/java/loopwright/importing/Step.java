package loopwright.importing;

import loopwright.db.Tx;

/** One thing that the run does. May run again after a run that failed. */
@FunctionalInterface
interface Step {
  void run(Tx tx, Ids ids);
}
