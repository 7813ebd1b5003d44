package loopwright.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A second process that runs a main class of the tests and can be killed. */
public final class ChildJvm implements AutoCloseable {
  private final Process process;
  private final BufferedReader out;

  public ChildJvm(Class<?> main, String... args) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx256m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    command.add("-Dorg.slf4j.simpleLogger.defaultLogLevel=warn");
    command.add("-Dorg.jooq.no-logo=true");
    command.add("-Dorg.jooq.no-tips=true");
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add(main.getName());
    command.addAll(List.of(args));
    try {
      process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    } catch (IOException cantStart) {
      throw new UncheckedIOException(cantStart);
    }
    out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  /** The next line it prints; fails when it ends first. */
  public String line() {
    try {
      String line = out.readLine();
      if (line == null) {
        throw new AssertionError("The second process ended with " + process.waitFor());
      }
      return line;
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  /** Kills it without a chance to clean up, and gives what it had printed until then. */
  public List<String> kill() {
    process.toHandle().destroyForcibly(); // unlike the process's own, it leaves the pipe readable
    try {
      List<String> rest = new ArrayList<>(out.lines().toList());
      process.waitFor(60, TimeUnit.SECONDS);
      return rest;
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  @Override
  public void close() {
    kill();
  }
}
