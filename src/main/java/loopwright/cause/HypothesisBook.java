package loopwright.cause;

import java.util.List;

/** The hypotheses that are weighed, one small class each. */
final class HypothesisBook {
  private static final List<Hypothesis> ALL =
      List.of(
          new Healthy(),
          new GapMoved(),
          new WrongLength(Cause.OVER_LENGTH),
          new WrongLength(Cause.UNDER_LENGTH),
          new OddLength(),
          new OtherDriver(),
          new BeyondModel(),
          new Connector(),
          new Loading(),
          new OtherScale(),
          new OtherAlloy(),
          new SideView(),
          new CrossTalk(),
          new SupplyLow(),
          new OpenOrShort(),
          new OtherChannel(),
          new MonitorScale(),
          new DriverFault(),
          new MeterError());

  private HypothesisBook() {}

  static List<Hypothesis> all() {
    return ALL;
  }
}
