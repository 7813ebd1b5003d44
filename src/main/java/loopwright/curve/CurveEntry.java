package loopwright.curve;

import java.util.List;
import loopwright.units.Unit;

/**
 * Readings as text, before anything was made of them: the cells of a form, a file or a pasted
 * block, with what the person said they are.
 *
 * @param gapUnit µm or mil
 * @param voltsUnit V or mV
 * @param sign how the outputs are written
 * @param rows in the order given
 */
public record CurveEntry(Unit gapUnit, Unit voltsUnit, SignConvention sign, List<Cells> rows) {

  public CurveEntry {
    rows = List.copyOf(rows);
  }

  /**
   * One reading's cells.
   *
   * @param row as counted in the input, from 1
   * @param run empty for up
   * @param voltsColumn where the voltage stood
   */
  public record Cells(int row, String gap, String volts, String run, Remark.Column voltsColumn) {

    public Cells(int row, String gap, String volts, String run) {
      this(row, gap, volts, run, Remark.Column.VOLTS);
    }
  }
}
