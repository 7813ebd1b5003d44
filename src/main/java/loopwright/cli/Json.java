package loopwright.cli;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;

/** Prints a record as the one JSON document of a command. Numbers are not rounded. */
final class Json {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
          .disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
          .build();

  private Json() {}

  /**
   * A field that is null is printed as {@code null}, so that every document has every field. Goes
   * out as it is made: the document of a large register need not fit in memory.
   */
  static void print(PrintWriter out, Object document) {
    try {
      MAPPER.writeValue(out, document);
      out.println();
    } catch (IOException cannotHappen) {
      throw new UncheckedIOException(cannotHappen);
    }
  }
}
