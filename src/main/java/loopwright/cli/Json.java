package loopwright.cli;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.PrintWriter;

/** Prints a record as the one JSON document of a command. Numbers are not rounded. */
final class Json {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
          .build();

  private Json() {}

  /** A field that is null is printed as {@code null}, so that every document has every field. */
  static void print(PrintWriter out, Object document) {
    try {
      out.println(MAPPER.writeValueAsString(document));
    } catch (JsonProcessingException cannotHappen) {
      throw new IllegalStateException(cannotHappen);
    }
  }
}
