package loopwright.scan;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Database;
import loopwright.label.LabelBase;
import loopwright.plant.Plant;
import loopwright.print.QrReader;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.web.AskedAddress;
import loopwright.web.Camera;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/**
 * The scan check. What was scanned stands in the address, so that it works without a script, can be
 * reloaded, and stores nothing.
 */
public final class ScanPages implements Pages {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final ScannedText texts;
  private final Telling telling;

  public ScanPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      LabelBase base,
      ScanTools tools) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.texts = new ScannedText(plant, register, base);
    this.telling = tools.telling(register, plant);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/scan", Permission.READ, this::scan);
    routes.post("/scan/picture", Permission.READ, this::picture);
    routes.post("/scan/frame", Permission.READ, this::frame);
  }

  /** One of several parts that a text can mean. */
  record Choice(String href, String label, String about) {}

  /** What is wrong with what came last. */
  private record Complaint(List<String> sentences, List<Choice> choices) {
    static final Complaint NONE = new Complaint(List.of(), List.of());

    static Complaint of(String sentence, Choice... choices) {
      return new Complaint(List.of(sentence), List.of(choices));
    }
  }

  /** The state with the text taken in, or why it wasn't. */
  private record Step(Scan scan, Complaint complaint, String message) {}

  private void scan(Context http) {
    Form form = Form.fromQuery(http);
    Scan scan = Scan.of(form);
    String added = form.typed("add").strip();
    if (added.isEmpty()) {
      show(http, scan, Complaint.NONE);
    } else {
      take(http, scan, added);
    }
  }

  private void take(Context http, Scan scan, String added) {
    Step step = database.read(sql -> step(sql, scan, added, AskedAddress.of(http)));
    if (step.complaint.sentences.isEmpty()) {
      page.go(http, step.scan.href(), step.message);
    } else {
      show(http, step.scan, step.complaint);
    }
  }

  private Step step(DSLContext sql, Scan scan, String added, String asked) {
    try {
      ScannedText.Meant meant = texts.read(sql, added, asked);
      if (meant instanceof ScannedText.Meant.Loop loop) {
        String tag = loop.point().tag();
        return new Step(scan.at(tag), Complaint.NONE, "For the loop " + tag + ".");
      }
      if (meant instanceof ScannedText.Meant.OneOf several) {
        return new Step(scan, several(scan, added, several.parts()), "");
      }
      return part(sql, scan, ((ScannedText.Meant.Part) meant).part());
    } catch (Refused refused) {
      return new Step(scan, Complaint.of(sentence(refused)), "");
    }
  }

  private Step part(DSLContext sql, Scan scan, Component part) {
    long number = part.id().number();
    if (scan.parts().contains(number)) {
      return new Step(
          scan,
          Complaint.of(
              "%s was scanned before; it is here already and was not added twice."
                  .formatted(Text.capital(part.inWords()))),
          "");
    }
    Bench bench = bench(sql, scan, new ArrayList<>());
    try {
      bench.with(part);
      return new Step(
          scan.with(number).withoutCable(scan.noCable() && bench.with(part).path().isEmpty()),
          Complaint.NONE,
          Text.capital(part.inWords()) + " added.");
    } catch (Refused refused) {
      Choice[] instead =
          bench
              .inPlaceOf(part)
              .map(out -> new Choice[] {instead(scan, out, part)})
              .orElse(new Choice[0]);
      return new Step(scan, Complaint.of(sentence(refused), instead), "");
    }
  }

  private static Choice instead(Scan scan, Component out, Component in) {
    return new Choice(
        scan.without(out.id().number()).with(in.id().number()).href(),
        "Take " + in.label(),
        "in place of " + out.label());
  }

  private static Complaint several(Scan scan, String typed, List<Component> parts) {
    return new Complaint(
        List.of(parts.size() + " parts are called " + typed + ". Which one is it?"),
        parts.stream()
            .map(
                part ->
                    new Choice(
                        scan.parts().contains(part.id().number())
                            ? scan.href()
                            : scan.with(part.id().number()).href(),
                        part.label(),
                        Telling.about(part)))
            .toList());
  }

  private static String sentence(Refused refused) {
    return refused.getMessage() + " (" + refused.problem().code() + ")";
  }

  /** Parts in the address that can't be are left out, and said to be. */
  private Bench bench(DSLContext sql, Scan scan, List<String> leftOut) {
    Map<Long, Component> found = register.components(sql, scan.parts());
    Bench bench = Bench.EMPTY;
    for (long number : scan.parts()) {
      Component part = found.get(number);
      try {
        if (part == null) {
          throw new Refused(ScanProblem.NO_PART, number);
        }
        bench = bench.with(part);
      } catch (Refused refused) {
        leftOut.add(sentence(refused));
      }
    }
    return bench;
  }

  private void show(Context http, Scan asked, Complaint complaint) {
    List<String> sentences = new ArrayList<>(complaint.sentences);
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Bench bench = bench(sql, asked, sentences);
          Scan scan =
              known(sql, asked, sentences)
                  .holding(bench.parts().stream().map(p -> p.id().number()).toList());
          Scan inOrder = keepOrder(asked, scan);
          model.put("told", telling.told(sql, inOrder, bench, UnitsShown.of(http)));
          model.put("scan", inOrder);
          return null;
        });
    model.put("sentences", sentences);
    model.put("choices", complaint.choices);
    Camera.allow(http);
    page.show(http, 200, "scan/scan", model);
  }

  private Scan known(DSLContext sql, Scan scan, List<String> sentences) {
    if (scan.loop().isEmpty() || plant.pointTagged(sql, scan.loop()).isPresent()) {
      return scan;
    }
    sentences.add(sentence(new Refused(ScanProblem.NO_LOOP, scan.loop())));
    return scan.at("");
  }

  private static Scan keepOrder(Scan asked, Scan known) {
    return known.holding(asked.parts().stream().filter(known.parts()::contains).toList());
  }

  /** A photograph: works without script, and where browsers give no camera to plain http. */
  private void picture(Context http) throws IOException {
    Scan scan = Scan.of(Form.from(http));
    UploadedFile file = http.uploadedFile("picture");
    Optional<String> seen = Optional.empty();
    if (file != null && file.size() > 0) {
      try (InputStream in = file.content()) {
        seen = QrReader.read(in);
      }
    }
    if (seen.isEmpty()) {
      show(http, scan, Complaint.of(Refused.say(ScanProblem.NO_CODE_SEEN)));
      return;
    }
    String href = scan.href();
    String joint = href.contains("?") ? "&" : "?";
    page.go(http, href + joint + "add=" + URLEncoder.encode(seen.get(), StandardCharsets.UTF_8));
  }

  /** One picture of the camera, for browsers that can't find a code in it themselves. */
  private void frame(Context http) throws IOException {
    Optional<String> seen = QrReader.read(new ByteArrayInputStream(http.bodyAsBytes()));
    http.status(seen.isPresent() ? 200 : 204)
        .contentType("text/plain; charset=utf-8")
        .result(seen.orElse(""));
  }
}
