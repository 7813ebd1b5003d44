package loopwright.pack;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import loopwright.outage.Outage;
import loopwright.outage.ScopeLine;
import loopwright.problem.Problem;
import loopwright.sheet.Complaints;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Sorts the rows of a file by loop and holds each loop against the pack it belongs to. */
final class ReturnReader {
  private final DSLContext sql;
  private final Outage outage;
  private final Packs packs;
  private final UUID register;
  private final FilledFile file;
  private final Complaints complaints;

  /**
   * @param complaints takes what is wrong with rows that belong to no loop of this pack
   */
  ReturnReader(
      DSLContext sql,
      Outage outage,
      Packs packs,
      UUID register,
      FilledFile file,
      Complaints complaints) {
    this.sql = sql;
    this.outage = outage;
    this.packs = packs;
    this.register = register;
    this.file = file;
    this.complaints = complaints;
  }

  /**
   * A loop of the file with its rows.
   *
   * @param complaints of this loop
   * @param before what came back of it before
   */
  record Given(
      Revision.Loop loop,
      List<FilledFile.Row> rows,
      Complaints complaints,
      List<Returned> before) {}

  private record Key(String pack, String tag) {}

  List<Given> loops() {
    List<Revision> revisions = packs.revisions(sql, outage);
    if (revisions.isEmpty()) {
      complaints.add(PackProblem.NOT_ISSUED, outage.number());
      return List.of();
    }
    Map<Key, List<FilledFile.Row>> groups = new LinkedHashMap<>();
    for (FilledFile.Row row : file.rows()) {
      Key key =
          new Key(
              row.text(Column.PACK).strip(),
              row.text(Column.LOOP).strip().toUpperCase(Locale.ROOT));
      groups.computeIfAbsent(key, any -> new ArrayList<>()).add(row);
    }
    Map<Integer, Map<String, Revision.Loop>> known = new HashMap<>();
    Map<Long, ScopeLine> settled = new HashMap<>();
    packs.outages().everSettled(sql, outage.id()).forEach(line -> settled.put(line.point(), line));
    List<Returned> returned = packs.returns(sql, outage);
    List<Given> given = new ArrayList<>();
    groups.forEach(
        (key, rows) ->
            revision(key, rows.get(0), revisions)
                .flatMap(
                    revision ->
                        loop(
                            rows.get(0),
                            revision,
                            known.computeIfAbsent(revision.number(), n -> byTag(revision))))
                .ifPresent(
                    loop -> {
                      Given one =
                          new Given(loop, rows, new Complaints(), before(returned, loop.point()));
                      refuseRemoved(one, settled.get(loop.point()));
                      refuseSuperseded(one, key, revisions, known);
                      given.add(one);
                    }));
    return given;
  }

  private Map<String, Revision.Loop> byTag(Revision revision) {
    Map<String, Revision.Loop> loops = new HashMap<>();
    packs
        .loops(sql, revision)
        .forEach(loop -> loops.put(loop.sheet().tag().toUpperCase(Locale.ROOT), loop));
    return loops;
  }

  private static List<Returned> before(List<Returned> returned, long point) {
    return returned.stream().filter(one -> one.point() == point).toList();
  }

  private Optional<Revision> revision(Key key, FilledFile.Row row, List<Revision> revisions) {
    Optional<Identity> identity = Identity.read(key.pack());
    if (identity.isEmpty()) {
      complain(complaints, row, Column.PACK, PackProblem.NO_IDENTITY, key.pack());
      return Optional.empty();
    }
    Identity said = identity.get();
    if (!said.register().equals(register.toString().substring(0, 8))) {
      complain(complaints, row, Column.PACK, PackProblem.OTHER_REGISTER, key.pack());
      return Optional.empty();
    }
    if (said.outage() != outage.id()) {
      complain(
          complaints,
          row,
          Column.PACK,
          PackProblem.OTHER_OUTAGE,
          "O-" + said.outage(),
          outage.number());
      return Optional.empty();
    }
    Optional<Revision> found =
        revisions.stream().filter(one -> Identity.of(register, one).equals(said)).findFirst();
    if (found.isEmpty()) {
      complain(complaints, row, Column.PACK, PackProblem.NO_IDENTITY, key.pack());
    }
    return found;
  }

  private Optional<Revision.Loop> loop(
      FilledFile.Row row, Revision revision, Map<String, Revision.Loop> loops) {
    String tag = row.text(Column.LOOP).strip();
    Optional<Revision.Loop> found = Optional.ofNullable(loops.get(tag.toUpperCase(Locale.ROOT)));
    if (found.isEmpty()) {
      complain(complaints, row, Column.LOOP, PackProblem.NEVER_IN_PACK, tag, revision.number());
    }
    return found;
  }

  private void refuseRemoved(Given given, @Nullable ScopeLine line) {
    if (line == null || !line.taken()) {
      String why =
          line == null ? "it was never taken in" : line.who() + " took it out: " + line.reason();
      complain(
          given.complaints(),
          given.rows().get(0),
          Column.LOOP,
          PackProblem.NOT_IN_PACK,
          given.loop().sheet().tag(),
          why);
    }
  }

  /** An older revision is taken as long as the newest one says the same of the loop. */
  private void refuseSuperseded(
      Given given,
      Key key,
      List<Revision> revisions,
      Map<Integer, Map<String, Revision.Loop>> known) {
    Revision newest = revisions.get(0);
    int filled = Identity.read(key.pack()).orElseThrow().revision();
    if (filled == newest.number()) {
      return;
    }
    Revision.Loop now =
        known
            .computeIfAbsent(newest.number(), n -> byTag(newest))
            .get(given.loop().sheet().tag().toUpperCase(Locale.ROOT));
    if (now != null && !now.hash().equals(given.loop().hash())) {
      complain(
          given.complaints(),
          given.rows().get(0),
          Column.PACK,
          PackProblem.SUPERSEDED,
          given.loop().sheet().tag(),
          filled,
          newest.number(),
          String.join(", ", given.loop().sheet().differences(now.sheet())));
    }
  }

  private void complain(
      Complaints into, FilledFile.Row row, Column column, Problem problem, Object... parts) {
    Object[] all = new Object[parts.length + 3];
    all[0] = file.name();
    all[1] = row.line();
    all[2] = FilledFile.place(column.ordinal());
    System.arraycopy(parts, 0, all, 3, parts.length);
    into.add(problem, all);
  }
}
