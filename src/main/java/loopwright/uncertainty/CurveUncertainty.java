package loopwright.uncertainty;

import java.util.List;
import loopwright.curve.CurveResult;

/**
 * What the results of a static curve are worth, run by run, and what may be stated about them.
 *
 * @param result as analysed; its own verdict is one of simple acceptance and stays
 * @param rule that decides here
 * @param runs in the order of the result's
 */
public record CurveUncertainty(CurveResult result, DecisionRule rule, List<RunUncertainty> runs) {

  public CurveUncertainty {
    runs = List.copyOf(runs);
  }

  /**
   * @param sources of error in the readings, independent of one another
   */
  public static CurveUncertainty of(
      CurveResult result, List<ErrorSource> sources, DecisionRule rule) {
    return new CurveUncertainty(
        result,
        rule,
        result.runs().stream().map(run -> RunUncertainty.of(result, run, sources, rule)).toList());
  }

  /** Of the run that counts. */
  public RunUncertainty worse() {
    return runs.get(result.runs().indexOf(result.worse()));
  }

  /** What has to be said beside the numbers, in sentences. */
  public List<String> remarks() {
    return Remarks.about(this);
  }
}
