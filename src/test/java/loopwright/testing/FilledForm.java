package loopwright.testing;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** A form as a browser holds it: what stands in its fields, changed, then sent with its files. */
public final class FilledForm {
  private static final String LINE = "---------------------------7e1";

  private String action;
  private final Map<String, List<String>> fields = new LinkedHashMap<>();
  private String origin = "";
  private String fileField = "";
  private String fileName = "";
  private byte[] file = {};

  private FilledForm(Element form) {
    action = form.attr("action");
    for (Element field : form.select("input[name], select[name], textarea[name]")) {
      String name = field.attr("name");
      if (field.tagName().equals("select")) {
        Element chosen = field.selectFirst("option[selected]");
        chosen = chosen == null ? field.selectFirst("option") : chosen;
        add(name, chosen == null ? "" : chosen.attr("value"));
      } else if (field.tagName().equals("textarea")) {
        add(name, field.wholeText());
      } else if (!field.attr("type").equals("file") && isSent(field)) {
        add(name, field.attr("value"));
      }
    }
  }

  private static boolean isSent(Element field) {
    return !field.attr("type").equals("checkbox") || field.hasAttr("checked");
  }

  private FilledForm(String action) {
    this.action = action;
  }

  /** A form made up here, with nothing in it. */
  public static FilledForm to(String path, String token) {
    return new FilledForm(path).set("csrf", token);
  }

  /** The form of that page as it stands there. */
  public static FilledForm of(Document page, String selector) {
    return new FilledForm(page.selectFirst(selector));
  }

  private void add(String name, String value) {
    fields.computeIfAbsent(name, n -> new ArrayList<>()).add(value);
  }

  public List<String> values(String name) {
    return fields.getOrDefault(name, List.of());
  }

  public FilledForm set(String name, String... values) {
    fields.put(name, List.of(values));
    return this;
  }

  /** To be sent elsewhere, as the script on the page does. */
  public FilledForm sentTo(String path) {
    action = path;
    return this;
  }

  /** As if another site's page sent it. */
  public FilledForm from(String site) {
    origin = site;
    return this;
  }

  public FilledForm without(String name) {
    fields.remove(name);
    return this;
  }

  public FilledForm choose(String field, String name, byte[] content) {
    fileField = field;
    fileName = name;
    file = content;
    return this;
  }

  public FilledForm choose(String field, String name, String content) {
    return choose(field, name, content.getBytes(UTF_8));
  }

  /** Sends it as multipart, by the button of that name and value. */
  public Visitor.Answer send(Visitor visitor, String button, String value) {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    fields.forEach((name, values) -> values.forEach(text -> part(body, name, text)));
    part(body, button, value);
    if (!fileField.isEmpty()) {
      head(body, "name=\"" + fileField + "\"; filename=\"" + fileName + "\"");
      body.writeBytes(file);
      body.writeBytes("\r\n".getBytes(UTF_8));
    }
    body.writeBytes(("--" + LINE + "--\r\n").getBytes(UTF_8));
    return visitor.send(
        visitor
            .request(action, "Origin", origin.isEmpty() ? visitor.origin() : origin)
            .header("Content-Type", "multipart/form-data; boundary=" + LINE)
            .POST(BodyPublishers.ofByteArray(body.toByteArray())));
  }

  private static void part(ByteArrayOutputStream body, String name, String text) {
    head(body, "name=\"" + name + "\"");
    body.writeBytes((text + "\r\n").getBytes(UTF_8));
  }

  private static void head(ByteArrayOutputStream body, String about) {
    String head = "--" + LINE + "\r\nContent-Disposition: form-data; " + about + "\r\n\r\n";
    body.writeBytes(head.getBytes(UTF_8));
  }
}
