package loopwright.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import loopwright.problem.Refused;

/**
 * Reads CSV as shops save it: UTF-8 with or without byte-order mark, separated by comma, semicolon
 * or tab (found in the heading line, or named in a line {@code sep=;} before it), quoted cells with
 * line breaks inside (RFC 4180 grammar), blank lines and trailing empty columns passed over.
 * Anything that can't be read that way is refused with the place and the remedy; nothing is guessed
 * or dropped.
 */
public final class CsvReader {
  private static final int MEGABYTE = 1_000_000;

  private final int mostMegabytes;

  /**
   * @param mostMegabytes size above which a file is refused unread
   */
  public CsvReader(int mostMegabytes) {
    this.mostMegabytes = mostMegabytes;
  }

  /**
   * @throws Refused with a {@link SheetProblem} when the file can't be read as a table
   */
  public Table read(Path file) {
    return read(file, CsvReader::refuse);
  }

  /**
   * Reads on past a row or heading that can't be read, so that everything wrong is found at once.
   *
   * @param complaints takes all that is wrong; a table is fit for use only if nothing came of it
   * @return empty when the file can't be read as a table at all
   */
  public Optional<Table> read(Path file, Complaints complaints) {
    return collecting(complaints, each -> read(file, each));
  }

  /** As {@link #read(Path, Complaints)}, from bytes. */
  public Optional<Table> read(String name, byte[] bytes, Complaints complaints) {
    return collecting(complaints, each -> read(name, bytes, each));
  }

  private static Optional<Table> collecting(
      Complaints complaints, Function<Consumer<Refused>, Table> reading) {
    try {
      return Optional.of(reading.apply(complaints::add));
    } catch (Refused refused) {
      complaints.add(refused);
      return Optional.empty();
    }
  }

  private static void refuse(Refused refused) {
    throw refused;
  }

  private Table read(Path file, Consumer<Refused> each) {
    String name = String.valueOf(file.getFileName());
    try {
      if (!Files.isRegularFile(file)) {
        throw new Refused(SheetProblem.NO_FILE, file);
      }
      refuseTooLarge(name, Files.size(file));
      return read(name, Files.readAllBytes(file), each);
    } catch (IOException unreadable) {
      Refused refused = new Refused(SheetProblem.NO_FILE, file);
      refused.initCause(unreadable);
      throw refused;
    }
  }

  /**
   * @param name shown in messages
   * @throws Refused with a {@link SheetProblem} when the bytes can't be read as a table
   */
  public Table read(String name, byte[] bytes) {
    return read(name, bytes, CsvReader::refuse);
  }

  private Table read(String name, byte[] bytes, Consumer<Refused> each) {
    refuseTooLarge(name, bytes.length);
    List<Table> heads = new ArrayList<>();
    List<Table.Row> rows = new ArrayList<>();
    try {
      CsvStream.read(
          name,
          () -> new ByteArrayInputStream(bytes),
          each,
          head -> {
            heads.add(head);
            return rows::add;
          });
    } catch (IOException cannotHappen) {
      throw new UncheckedIOException(cannotHappen);
    }
    Table head = heads.get(0);
    return new Table(
        name, head.separator(), head.headingLine(), head.headings(), List.copyOf(rows));
  }

  private void refuseTooLarge(String name, long size) {
    if (size > (long) mostMegabytes * MEGABYTE) {
      throw new Refused(
          SheetProblem.TOO_LARGE, name, (size + MEGABYTE - 1) / MEGABYTE, mostMegabytes);
    }
  }
}
