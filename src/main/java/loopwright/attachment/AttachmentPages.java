package loopwright.attachment;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.db.Database;
import loopwright.loop.LoopPanel;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Files of a record: listed, added, handed out. A file is handed out to be saved, under the type
 * that was found in it, in a sandbox: a browser shows pictures inside our pages and runs nothing.
 */
public final class AttachmentPages implements Pages, LoopPanel {
  private static final String SANDBOX = "default-src 'none'; sandbox";

  private final Database database;
  private final Page page;
  private final Attachments attachments;
  private final Map<OwnerKind, Owner.Finder> owners;
  private final Function<DSLContext, ZoneId> zone;

  /**
   * @param owners how each kind of record is found
   * @param zone whose clock shows when a file came
   */
  public AttachmentPages(
      Database database,
      Page page,
      Attachments attachments,
      Map<OwnerKind, Owner.Finder> owners,
      Function<DSLContext, ZoneId> zone) {
    this.zone = zone;
    this.database = database;
    this.page = page;
    this.attachments = attachments;
    this.owners = Map.copyOf(owners);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/files/{id}", Permission.READ, this::handOut);
    routes.get("/files/of/{kind}/{reference}", Permission.READ, this::list);
    routes.post("/files/of/{kind}/{reference}", Permission.RECORD, this::add);
  }

  record Line(
      String href,
      String name,
      String kind,
      String size,
      @Nullable String picture,
      String note,
      String entered,
      String sha256) {}

  record Panel(List<Line> lines, String href) {}

  static String href(OwnerKind kind, String reference) {
    return "/files/of/" + kind.word() + "/" + PathSegment.of(reference);
  }

  private Owner owner(DSLContext sql, Context http) {
    return OwnerKind.named(http.pathParam("kind"))
        .flatMap(kind -> Optional.ofNullable(owners.get(kind)))
        .flatMap(finder -> finder.find(sql, http.pathParam("reference")))
        .orElseThrow(NotFoundResponse::new);
  }

  private void list(Context http) {
    show(http, 200, Form.of(Map.of("kind", AttachmentKind.PHOTO.word())));
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Owner owner = owner(sql, http);
          model.put("owner", owner);
          model.put(
              "lines", lines(attachments.of(sql, owner.kind(), owner.number()), zone.apply(sql)));
          return owner;
        });
    model.put("form", form);
    model.put("kinds", AttachmentKind.choices());
    model.put("href", href(http));
    page.show(http, status, "attachment/list", model);
  }

  private static String href(Context http) {
    return "/files/of/"
        + PathSegment.of(http.pathParam("kind"))
        + "/"
        + PathSegment.of(http.pathParam("reference"));
  }

  private static List<Line> lines(List<Attachment> all, ZoneId zone) {
    return all.stream().map(file -> line(file, zone)).toList();
  }

  private static Line line(Attachment attachment, ZoneId zone) {
    return new Line(
        attachment.href(),
        attachment.fileName(),
        attachment.kind(),
        String.format(Locale.ROOT, "%.1f kB", attachment.bytes() / 1000.0),
        attachment.type().isPicture() ? attachment.href() : null,
        attachment.note(),
        attachment.enteredBy() + ", " + SiteMoment.shown(attachment.enteredAt(), zone),
        attachment.sha256());
  }

  private void add(Context http) {
    Form form = Form.from(http);
    AttachmentKind kind =
        form.read(
            "kind",
            text ->
                AttachmentKind.named(text)
                    .orElseThrow(() -> new IllegalArgumentException("Choose one from the list.")));
    String note = form.read("note", text -> Text.kept("the note", text, 400));
    Optional<NewAttachment> fresh = form.ok() ? looked(http, form, kind, note) : Optional.empty();
    if (fresh.isPresent() && kept(http, form, fresh.get())) {
      page.go(http, href(http), "It is kept.");
    } else {
      show(http, 422, form);
    }
  }

  private static Optional<NewAttachment> looked(
      Context http, Form form, AttachmentKind kind, String note) {
    UploadedFile file = http.uploadedFile("file");
    if (file == null || file.filename().isBlank()) {
      form.complain("file", "Choose a file: PDF, PNG, JPEG or WebP.");
      return Optional.empty();
    }
    try (InputStream in = file.content()) {
      byte[] content = in.readNBytes(NewAttachment.MOST_BYTES + 1);
      return Optional.of(NewAttachment.of(kind, file.filename(), content, note));
    } catch (Refused refused) {
      form.complain("file", refused.getMessage());
    } catch (IOException broken) {
      form.complain("file", "The file did not come through whole. Send it again.");
    }
    return Optional.empty();
  }

  private boolean kept(Context http, Form form, NewAttachment fresh) {
    Actor actor = Actor.of(http);
    String why = fresh.note().isEmpty() ? "kept with its record" : fresh.note();
    try {
      database.write(
          People.act(actor, "attach file", why),
          tx -> attachments.keep(tx, owner(tx.sql(), http), fresh));
      return true;
    } catch (Refused refused) {
      form.complain("file", refused.getMessage());
      return false;
    }
  }

  private void handOut(Context http) {
    String id = http.pathParam("id");
    if (!id.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    database.read(
        sql -> {
          Attachment found =
              attachments.one(sql, Long.parseLong(id)).orElseThrow(NotFoundResponse::new);
          byte[] content = attachments.content(sql, found);
          http.header("Content-Security-Policy", SANDBOX);
          http.header("Content-Disposition", disposition(found.fileName()));
          http.contentType(found.type().word());
          http.result(content);
          return found;
        });
  }

  /** RFC 6266: a plain name for everybody, the true one in RFC 8187's spelling. */
  static String disposition(String name) {
    String plain = name.replaceAll("[^A-Za-z0-9._ -]", "_");
    String whole = URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    return "attachment; filename=\"" + plain + "\"; filename*=UTF-8''" + whole.replace("*", "%2A");
  }

  @Override
  public String template() {
    return "attachment/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    List<Attachment> all = attachments.of(sql, OwnerKind.LOOP, loop.point());
    List<Attachment> then =
        all.stream().filter(one -> !one.enteredAt().isAfter(loop.viewpoint().at())).toList();
    return new Panel(lines(then, loop.zone()), href(OwnerKind.LOOP, loop.tag()));
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }
}
