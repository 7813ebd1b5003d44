package loopwright.label;

import loopwright.problem.Refused;

/** What labels are printed on. Lengths are millimetres. */
sealed interface Paper {
  double MM = 72 / 25.4;

  /** Smallest label that holds a code which a telephone can read; common practice, no source. */
  double LEAST_WIDTH = 25;

  double LEAST_HEIGHT = 12;

  double pageWidth();

  double pageHeight();

  double labelWidth();

  double labelHeight();

  int perPage();

  /** How many places of the first page stay empty. */
  default int skipped() {
    return 0;
  }

  /** Whether thin lines show where to cut. */
  default boolean outlined() {
    return false;
  }

  /** Left edge of a place, from the page's left. */
  double left(int place);

  /** Upper edge of a place, from the page's upper edge. */
  double top(int place);

  /** A printer that feeds labels one by one. */
  record Single(double labelWidth, double labelHeight) implements Paper {
    public Single {
      refuseOutside("The width", labelWidth, LEAST_WIDTH, 300);
      refuseOutside("The height", labelHeight, LEAST_HEIGHT, 300);
    }

    @Override
    public double pageWidth() {
      return labelWidth;
    }

    @Override
    public double pageHeight() {
      return labelHeight;
    }

    @Override
    public int perPage() {
      return 1;
    }

    @Override
    public double left(int place) {
      return 0;
    }

    @Override
    public double top(int place) {
      return 0;
    }
  }

  /**
   * An A4 sheet (210 × 297 mm) of equal labels, filled row by row.
   *
   * @param start place of the first label, from 1: a sheet begun before is used up
   * @param sideMargin left and right of the labels
   * @param topMargin above and below them
   * @param across between columns
   * @param down between rows
   */
  record Sheet(
      int columns,
      int rows,
      int start,
      double sideMargin,
      double topMargin,
      double across,
      double down,
      boolean outlined)
      implements Paper {
    static final double A4_WIDTH = 210;
    static final double A4_HEIGHT = 297;

    public Sheet {
      refuseOutside("The number of columns", columns, 1, 8);
      refuseOutside("The number of rows", rows, 1, 24);
      refuseOutside("The place to start at", start, 1, columns * rows);
      refuseOutside("The margin", sideMargin, 0, 60);
      refuseOutside("The margin", topMargin, 0, 60);
      refuseOutside("The space between labels", across, 0, 30);
      refuseOutside("The space between labels", down, 0, 30);
      double width = width(columns, sideMargin, across);
      double height = height(rows, topMargin, down);
      if (width < LEAST_WIDTH || height < LEAST_HEIGHT) {
        throw new Refused(
            LabelProblem.TOO_SMALL,
            millimetres(Math.max(0, width)),
            millimetres(Math.max(0, height)),
            "they have to be at least 25 × 12 mm for a code that a telephone can read");
      }
    }

    private static double width(int columns, double margin, double across) {
      return (A4_WIDTH - 2 * margin - (columns - 1) * across) / columns;
    }

    private static double height(int rows, double margin, double down) {
      return (A4_HEIGHT - 2 * margin - (rows - 1) * down) / rows;
    }

    @Override
    public double pageWidth() {
      return A4_WIDTH;
    }

    @Override
    public double pageHeight() {
      return A4_HEIGHT;
    }

    @Override
    public double labelWidth() {
      return width(columns, sideMargin, across);
    }

    @Override
    public double labelHeight() {
      return height(rows, topMargin, down);
    }

    @Override
    public int perPage() {
      return columns * rows;
    }

    @Override
    public int skipped() {
      return start - 1;
    }

    @Override
    public double left(int place) {
      return sideMargin + place % columns * (labelWidth() + across);
    }

    @Override
    public double top(int place) {
      return topMargin + place / columns * (labelHeight() + down);
    }
  }

  private static void refuseOutside(String what, double given, double least, double most) {
    if (!(given >= least && given <= most)) {
      throw new Refused(
          LabelProblem.BAD_NUMBER,
          what,
          millimetres(given),
          millimetres(least) + " to " + millimetres(most));
    }
  }

  /** Without needless decimals: {@code 70}, {@code 37.1}. */
  static String millimetres(double length) {
    double tenths = Math.round(length * 10) / 10.0;
    return tenths == Math.rint(tenths) ? String.valueOf((long) tenths) : String.valueOf(tenths);
  }
}
