package loopwright.loop;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import loopwright.db.Database;
import loopwright.matching.JudgementDocument;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** A loop as data under {@code /api}: what is fitted now and how it is judged. */
public final class LoopData implements Pages {
  private final Database database;
  private final Plant plant;
  private final Register register;
  private final Judging judging;
  private final InstantSource clock;

  public LoopData(
      Database database, Plant plant, Register register, Judging judging, InstantSource clock) {
    this.database = database;
    this.plant = plant;
    this.register = register;
    this.judging = judging;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/api/loops/{tag}", Permission.READ, this::answer);
  }

  /** A loop: the fields of a loop of {@code check --json}, and its parts in chain order. */
  record LoopDocument(@JsonUnwrapped JudgementDocument judgement, List<Fitted> parts) {}

  /**
   * What sits in a slot.
   *
   * @param content {@code part}, {@code none} or {@code unknown}
   * @param part the register's number, with {@code kind} and {@code label}; null where none is
   */
  record Fitted(
      String slot,
      String content,
      @Nullable Long part,
      @Nullable String kind,
      @Nullable String label) {}

  private void answer(Context http) {
    http.json(database.read(sql -> document(sql, http.pathParam("tag"))));
  }

  private LoopDocument document(DSLContext sql, String tag) {
    Point point = plant.pointTagged(sql, tag).orElseThrow(NotFoundResponse::new);
    Judging.Subject subject = new Judging.Subject(point.id().number(), point.tag());
    Judging.Judged judged = judging.judge(sql, List.of(subject), clock.instant()).get(0);
    List<Long> numbers =
        judged.chain().stream().flatMap(p -> p.content().component().stream().boxed()).toList();
    Map<Long, Component> parts = register.components(sql, numbers);
    return new LoopDocument(
        JudgementDocument.of(judged.judgement()),
        judged.chain().stream().map(placed -> fitted(placed, parts)).toList());
  }

  private static Fitted fitted(Placed placed, Map<Long, Component> parts) {
    Component part =
        placed.content() instanceof Content.Part known ? parts.get(known.number()) : null;
    return new Fitted(
        placed.slot().word(),
        placed.content().word(),
        part == null ? null : (Long) part.id().number(),
        part == null ? null : part.kind().word(),
        part == null ? null : part.label());
  }
}
