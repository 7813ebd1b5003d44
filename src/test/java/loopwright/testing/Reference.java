package loopwright.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A file of {@code src/test/resources/reference}: a provenance header of # lines, headings, rows.
 */
public record Reference(List<String> header, List<String> headings, List<List<String>> rows) {

  /** Fails loudly when the file is missing or carries no source line. */
  public static Reference read(String name) {
    try (InputStream in = Reference.class.getResourceAsStream("/reference/" + name)) {
      List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      List<String> header = lines.stream().filter(line -> line.startsWith("#")).toList();
      if (header.stream().noneMatch(line -> line.startsWith("# source:"))) {
        throw new IllegalStateException(name + " does not say where it comes from.");
      }
      List<List<String>> table =
          lines.stream()
              .filter(line -> !line.startsWith("#") && !line.isBlank())
              .map(line -> List.of(line.split(",")))
              .toList();
      return new Reference(header, table.get(0), table.subList(1, table.size()));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** The column under that heading as numbers. */
  public double[] column(String heading) {
    int at = headings.indexOf(heading);
    return rows.stream().mapToDouble(row -> Double.parseDouble(row.get(at))).toArray();
  }
}
