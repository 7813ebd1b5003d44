package loopwright.sheet;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;

/** What a workbook may hold; how its cells read is tested where packs come back. */
class XlsxReaderTest {
  @Test
  void aWorkbookOfMoreRowsThanAreReadIsRefusedNotCut() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(bytes, "Filler", "1.0")) {
      Worksheet sheet = book.newWorksheet("Long");
      for (int row = 0; row <= 50_000; row++) {
        sheet.value(row, 0, row);
      }
    }
    assertThatThrownBy(() -> new XlsxReader(20).read("long.xlsx", bytes.toByteArray()))
        .hasMessageContaining("more than 50000 rows");
  }
}
