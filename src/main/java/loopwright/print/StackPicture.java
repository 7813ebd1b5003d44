package loopwright.print;

import java.util.List;
import loopwright.print.CurvePicture.Look;
import loopwright.print.CurvePicture.Standing;

/**
 * Plots stacked on one axis: a response over frequency, a figure over the years. Values are in the
 * units that the words name; every number is finite.
 *
 * @param id distinguishes this drawing from others on the page: letters, digits, hyphens
 * @param label the drawing in a sentence, for those who don't see it
 * @param axis what runs along the shared axis, with its unit
 * @param ticks of the shared axis
 * @param cuts upright lines through all panes
 */
public record StackPicture(
    String id, String label, String axis, List<Tick> ticks, List<Cut> cuts, List<Pane> panes) {

  public StackPicture {
    ticks = List.copyOf(ticks);
    cuts = List.copyOf(cuts);
    panes = List.copyOf(panes);
    if (!id.matches("[A-Za-z][A-Za-z0-9-]*")) {
      throw new IllegalArgumentException("An id is letters, digits and hyphens: " + id);
    }
    if (panes.isEmpty()) {
      throw new IllegalArgumentException("A drawing has a pane.");
    }
  }

  /** A place on the shared axis and what is written under it. */
  public record Tick(double x, String text) {}

  /** Something that happened at that place. */
  public record Cut(double x, String text) {}

  /**
   * One plot.
   *
   * @param title what it shows, with its unit
   * @param words said behind the title
   * @param bands between limits
   */
  public record Pane(String title, String words, List<List<Reach>> bands, List<Trail> trails) {
    public Pane {
      bands = bands.stream().map(List::copyOf).toList();
      trails = List.copyOf(trails);
    }
  }

  /** The band at one place. */
  public record Reach(double x, double low, double high) {}

  /** How a trail's line is drawn. */
  public enum Stroke {
    FULL,
    BROKEN,
    /** A straight line of a fit. */
    LINE,
    /** Marks only. */
    NONE
  }

  /**
   * Values along the axis.
   *
   * @param name in the key; empty for none
   */
  public record Trail(String name, Stroke stroke, List<Spot> spots) {
    public Trail {
      spots = List.copyOf(spots);
    }
  }

  /**
   * One value.
   *
   * @param mark drawn there; none if it is a place of a line only
   */
  public record Spot(double x, double y, Mark mark) {
    public static Spot of(double x, double y) {
      return new Spot(x, y, Mark.NONE);
    }
  }

  /** What stands at a spot. */
  public enum Mark {
    NONE,
    /** A circle. */
    PLAIN,
    /** A diamond. */
    OTHER,
    /** A crossed circle: outside its limits, or an outlier. */
    OUTSIDE,
    /** Small and filled. */
    NOT_JUDGED;

    Look look() {
      return this == OTHER ? Look.SECOND : Look.FIRST;
    }

    Standing standing() {
      return switch (this) {
        case OUTSIDE -> Standing.OUTSIDE;
        case NOT_JUDGED -> Standing.NOT_JUDGED;
        default -> Standing.WITHIN;
      };
    }
  }
}
