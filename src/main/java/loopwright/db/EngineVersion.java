package loopwright.db;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import loopwright.problem.Refused;
import org.h2.engine.Constants;

/**
 * Which engine wrote the file. The engine's own files should be read by the version that wrote them
 * and moved on by a script, so another version is refused instead of tried.
 */
final class EngineVersion {
  private static final String NAME = "engine.properties";

  private EngineVersion() {}

  static String current() {
    return Constants.VERSION;
  }

  static void refuseOther(Place.Folder place) {
    Path note = place.folder().resolve(NAME);
    try {
      Files.createDirectories(place.folder());
      if (!place.exists() || !Files.exists(note)) {
        write(note);
        return;
      }
      Properties written = new Properties();
      try (Reader in = Files.newBufferedReader(note)) {
        written.load(in);
      }
      String engine = written.getProperty("engine", "unknown");
      if (!engine.equals(current())) {
        throw new Refused(DbProblem.OTHER_ENGINE, place.shown(), engine, current());
      }
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static void write(Path note) throws IOException {
    Properties now = new Properties();
    now.setProperty("engine", current());
    try (Writer out = Files.newBufferedWriter(note)) {
      now.store(
          out, "Engine that wrote loopwright.mv.db; the program reads this before opening it");
    }
  }
}
