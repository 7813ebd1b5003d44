package loopwright.field;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import loopwright.pack.FieldReturns.Cell;
import loopwright.pack.PackWorld;
import loopwright.testing.Visitor;

/** A shop with an issued pack, and devices that talk to it without any cookie. */
final class FieldWorld implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();

  final PackWorld packs = new PackWorld();

  FieldWorld() {
    packs.issue("first");
  }

  URI address() {
    return packs.shop.app.address();
  }

  String page() {
    return packs.outage() + "/take-along";
  }

  /** What the page says, to somebody who may record. */
  org.jsoup.nodes.Document look() {
    return packs.technician().get(page()).page();
  }

  /** A device that took the pack along. */
  Phone phone(String label) {
    look();
    Visitor.Answer answer =
        packs.technician().post("/api" + packs.outage() + "/devices", "label", label, "days", "14");
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    Phone phone = new Phone(parsed(answer.body()).get("token").asText());
    phone.refresh();
    return phone;
  }

  /** Ends the newest device. */
  Visitor.Answer end(String reason) {
    String form = look().select("form[action$=/end]").first().attr("action");
    return packs.technician().post(form, "reason", reason);
  }

  static JsonNode parsed(String body) {
    try {
      return JSON.readTree(body);
    } catch (IOException broken) {
      throw new AssertionError(body, broken);
    }
  }

  record Answer(int status, JsonNode body) {
    String told() {
      List<String> all = new ArrayList<>();
      body.path("told").forEach(one -> all.add(one.asText()));
      return String.join("\n", all);
    }

    String state() {
      return body.path("state").asText();
    }
  }

  /** What a device does over the wire. */
  final class Phone {
    final String token;
    String identity = "";
    String asOf = "";
    JsonNode state = JSON.nullNode();

    Phone(String token) {
      this.token = token;
    }

    Answer refresh() {
      Answer answer = ask(request("/api/field/pack").GET());
      if (answer.status() == 200) {
        state = answer.body();
        identity = state.get("identity").asText();
        asOf = state.get("asOf").asText();
      }
      return answer;
    }

    private HttpRequest.Builder request(String path) {
      return HttpRequest.newBuilder(address().resolve(path))
          .header("Authorization", "Bearer " + token);
    }

    SentEntry entry(String tag, List<Cell> cells) {
      return new SentEntry(
          UUID.randomUUID().toString(), tag, identity, asOf, "2026-03-01T09:00:00Z", 0, cells);
    }

    Answer send(SentEntry entry) {
      return ask(
          request("/api/field/entries")
              .header("Content-Type", "application/json")
              .POST(BodyPublishers.ofString(entry.written())));
    }

    Answer photo(String uuid, String tag, String name, byte[] bytes) {
      String query =
          "?loop=" + URLEncoder.encode(tag, UTF_8) + "&name=" + URLEncoder.encode(name, UTF_8);
      return ask(
          request("/api/field/photos/" + uuid + query)
              .header("Content-Type", "image/jpeg")
              .POST(BodyPublishers.ofByteArray(bytes)));
    }
  }

  static Answer ask(HttpRequest.Builder request) {
    try {
      HttpResponse<String> answer =
          HttpClient.newHttpClient()
              .send(request.build(), HttpResponse.BodyHandlers.ofString(UTF_8));
      return new Answer(answer.statusCode(), parsed(answer.body()));
    } catch (IOException | InterruptedException broken) {
      throw new AssertionError(broken);
    }
  }

  /** A good as found, nothing touched. */
  static List<Cell> done() {
    List<Cell> cells = found("-2.10");
    cells.add(new Cell("outcome", "", "as left", "done"));
    cells.add(new Cell("nothing touched", "", "as left", "yes"));
    return cells;
  }

  /** As found so far, the loop not done. */
  static List<Cell> notDone(String first) {
    List<Cell> cells = found(first);
    cells.add(new Cell("outcome", "", "as left", "not done"));
    cells.add(new Cell("reason", "", "as left", "as left follows"));
    return cells;
  }

  private static List<Cell> found(String first) {
    List<Cell> cells = new ArrayList<>();
    cells.add(new Cell("done by", "", "as found", "T. Echnician"));
    cells.add(new Cell("measured at", "", "as found", "2026-02-28 14:30"));
    for (int gap = 250; gap <= 2250; gap += 250) {
      double volts = -2.1 - (gap - 250) * 7.874 / 1000;
      String typed = gap == 250 ? first : String.format(java.util.Locale.ROOT, "%.2f", volts);
      cells.add(new Cell("reading", gap + " µm", "as found", typed));
    }
    return cells;
  }

  static List<Cell> with(List<Cell> cells, Cell... more) {
    List<Cell> all = new ArrayList<>(cells);
    all.addAll(List.of(more));
    return all;
  }

  /** Decides about the only entry that waits. */
  Visitor.Answer decide(String what, String reason) {
    String form = look().select("form[action*=/take-along/entries/]").first().attr("action");
    return packs.technician().post(form, "do", what, "reason", reason);
  }

  int rows(org.jooq.Table<?> table) {
    return packs.shop.app.database().read(sql -> sql.fetchCount(table));
  }

  @Override
  public void close() {
    packs.close();
  }
}
