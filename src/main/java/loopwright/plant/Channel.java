package loopwright.plant;

import loopwright.problem.Refused;
import loopwright.problem.Text;

/** One monitor channel. */
public record Channel(ChannelId id, SiteId site, Position position, int version) {

  /**
   * Where it is plugged.
   *
   * @param rack as the site calls it
   * @param slot counted from 1
   * @param channel of that slot, counted from 1
   */
  public record Position(String rack, int slot, int channel) {
    /** Refuses a missing rack and numbers outside 0 to 999. */
    public Position {
      rack = Text.needed("the rack", rack, 30);
      refuseAbsurd("The slot", slot);
      refuseAbsurd("The channel", channel);
    }

    private static void refuseAbsurd(String what, int number) {
      if (number < 0 || number > 999) {
        throw new Refused(PlantProblem.OUT_OF_RANGE, what, number, "a number from 0 to 999");
      }
    }

    @Override
    public String toString() {
      return rack + " slot " + slot + " channel " + channel;
    }
  }
}
