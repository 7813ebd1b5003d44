package loopwright.matching;

import java.util.Comparator;
import java.util.List;

/** Rules in the order in which their findings are told. */
public record RuleBook(List<Rule> rules) {

  /** Refuses two rules of one name: findings are told apart by it. */
  public RuleBook {
    rules = List.copyOf(rules);
    if (rules.stream().map(Rule::name).distinct().count() < rules.size()) {
      throw new IllegalArgumentException("Two rules have the same name.");
    }
  }

  public Judgement judge(LoopView loop) {
    boolean outside = loop.isOutsideTheRules();
    List<Finding> findings =
        rules.stream()
            .map(rule -> outside ? outside(rule) : rule.judge(loop))
            .sorted(Comparator.comparing(Finding::verdict))
            .toList();
    return new Judgement(loop.tag(), findings, LengthSum.of(loop).balance());
  }

  private static Finding outside(Rule rule) {
    return rule.finding(
        Verdict.NOT_JUDGED, "This transducer is kept in the register; loop rules don't apply.");
  }
}
