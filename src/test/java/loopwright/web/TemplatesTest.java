package loopwright.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Attribute;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.context.ExpressionContext;
import org.thymeleaf.standard.expression.StandardExpressions;

/**
 * Rules that every template keeps, whoever wrote it. What breaks them would fail silently: a plain
 * Thymeleaf drops {@code th:field} without a word, the content policy drops inline styles.
 */
class TemplatesTest {
  private static final Path FOLDER = Path.of("templates");
  private static final Pattern FRAGMENT = Pattern.compile("~\\{([a-z/-]+) :: ([a-z-]+)");
  private static final TemplateEngine ENGINE = new TemplateEngine();

  /** Attributes whose whole value is one expression; the others have a syntax of their own. */
  private static final Set<String> EXPRESSIONS =
      Set.of(
          "th:text",
          "th:utext",
          "th:if",
          "th:unless",
          "th:value",
          "th:href",
          "th:id",
          "th:name",
          "th:action",
          "th:for",
          "th:checked",
          "th:selected",
          "th:classappend",
          "th:replace",
          "th:insert",
          "th:class",
          "th:title",
          "th:src",
          "th:switch",
          "th:data-value");

  private static final Pattern MARKUP =
      Pattern.compile("\\$\\{([A-Za-z.()]*\\.)?(svg|[a-zA-Z]+Svg|drawing|plot)(\\(\\))?}");

  private static final Pattern CONDITION_LOST =
      Pattern.compile("<[a-z:]+[^>]*th:(?:if|unless)=\"[^\"]*\"[^>]*th:replace=[^>]*>");

  static List<Path> templates() throws IOException {
    try (Stream<Path> files = Files.walk(FOLDER)) {
      return files.filter(file -> file.toString().endsWith(".html")).toList();
    }
  }

  @Test
  void theRulesSawTheTemplates() throws IOException {
    assertThat(templates()).hasSizeGreaterThan(8);
  }

  @ParameterizedTest
  @MethodSource("templates")
  void keepsTheRules(Path template) {
    assertThat(breaches(read(template))).as(template.toString()).isEmpty();
  }

  /**
   * What a page holds is rendered inside the layout, so the layout's parameters hide whatever the
   * page's model calls the same: they have names that no page uses.
   */
  @ParameterizedTest
  @MethodSource("templates")
  void theLayoutHidesNothingOfThePages(Path template) {
    Path layout = FOLDER.resolve("part/layout.html");
    Matcher parameters = Pattern.compile("page\\(([^)]*)\\)").matcher(read(layout));
    assertThat(parameters.find()).isTrue();
    if (!template.equals(layout)) {
      for (String parameter : parameters.group(1).split(",\\s*")) {
        assertThat(read(template))
            .as("%s asks for the layout's own %s", template, parameter)
            .doesNotContainPattern("\\$\\{[^}]*\\b" + parameter + "\\b");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("templates")
  void includesOnlyFragmentsThatAreThere(Path template) {
    Matcher found = FRAGMENT.matcher(read(template));
    while (found.find()) {
      Path file = FOLDER.resolve(found.group(1) + ".html");
      assertThat(file).as(template.toString()).exists();
      assertThat(read(file))
          .as("%s includes %s", template, found.group())
          .containsPattern("th:fragment=\"" + found.group(2) + "[(\"]");
    }
  }

  @ParameterizedTest
  @MethodSource("templates")
  void hasOnlyExpressionsThatCanBeRead(Path template) {
    for (Element element : Jsoup.parse(read(template)).getAllElements()) {
      for (Attribute attribute : element.attributes()) {
        if (EXPRESSIONS.contains(attribute.getKey())) {
          assertThatCode(() -> parse(attribute.getValue()))
              .as("%s: %s=%s", template, attribute.getKey(), attribute.getValue())
              .doesNotThrowAnyException();
        }
      }
    }
  }

  @Test
  void anUnreadableExpressionIsSeen() {
    assertThatThrownBy(() -> parse("${form.typed('serial'} ?")).isInstanceOf(Exception.class);
  }

  private static void parse(String expression) {
    StandardExpressions.getExpressionParser(ENGINE.getConfiguration())
        .parseExpression(new ExpressionContext(ENGINE.getConfiguration()), expression);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          binding that does nothing  | <input th:field='*{name}'>                       | th:field
          style in the page          | <p style='color: red'>                           | style
          style sheet in the page    | <style>p {}</style>                              | style
          script in the page         | <script>go()</script>                            | script
          script on an event         | <p onclick='go()'>                               | onclick
          script for htmx            | <p hx-on:click='go()'>                           | hx-on
          unescaped text             | <p th:utext='${loop.remark}'>                    | th:utext
          post without a token       | <form method='post' action='/x'></form>          | token
          something from elsewhere   | <img src='https://example.org/x.png'>            | elsewhere
          no document type           | <!-- none -->                                    | DOCTYPE
          """)
  void aBrokenRuleIsSeen(String name, String markup, String word) {
    String head = word.equals("DOCTYPE") ? "" : "<!DOCTYPE html>";
    assertThat(breaches(head + "<html><body>" + markup + "</body></html>"))
        .singleElement()
        .asString()
        .contains(word);
  }

  @Test
  void aDrawingMayStandUnescaped() {
    assertThat(breaches("<!DOCTYPE html><figure th:utext='${loop.chainSvg()}'></figure>"))
        .isEmpty();
  }

  private static List<String> breaches(String html) {
    Document page = Jsoup.parse(html);
    Stream<String> doctype =
        html.startsWith("<!DOCTYPE html>")
            ? Stream.of()
            : Stream.of("begins without <!DOCTYPE html>");
    return Stream.concat(doctype, page.getAllElements().stream().flatMap(TemplatesTest::wrong))
        .toList();
  }

  private static Stream<String> wrong(Element element) {
    Stream<String> attributes =
        element.attributes().asList().stream()
            .filter(attribute -> isWrong(attribute.getKey(), attribute.getValue()))
            .map(attribute -> attribute.getKey() + "=" + attribute.getValue());
    return Stream.concat(attributes, wrongAsAWhole(element));
  }

  private static boolean isWrong(String name, String value) {
    boolean neverAllowed =
        name.equals("th:field")
            || name.equals("style")
            || name.equals("th:style")
            || name.startsWith("on")
            || name.startsWith("th:on")
            || name.startsWith("hx-on");
    return neverAllowed || (name.equals("th:utext") && !MARKUP.matcher(value).matches());
  }

  private static Stream<String> wrongAsAWhole(Element element) {
    return Stream.of(
            rule(element.normalName().equals("style"), "a style sheet in the page: style"),
            rule(
                element.normalName().equals("script") && !element.hasAttr("th:src"),
                "a script in the page"),
            rule(
                isPost(element) && !hasToken(element),
                "a form that posts without part/form :: token"),
            rule(
                element.attr("src").contains("//") || element.attr("href").contains("//"),
                "something from elsewhere"))
        .flatMap(found -> found);
  }

  private static Stream<String> rule(boolean broken, String sentence) {
    return broken ? Stream.of(sentence) : Stream.of();
  }

  private static boolean isPost(Element element) {
    return element.normalName().equals("form") && element.attr("method").equalsIgnoreCase("post");
  }

  private static boolean hasToken(Element form) {
    return form.html().contains("part/form :: token");
  }

  private static String read(Path file) {
    try {
      return Files.readString(file, UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** A replaced element takes its condition with it unread: the condition must stand around it. */
  @ParameterizedTest
  @MethodSource("templates")
  void putsNoConditionOnWhatIsReplaced(Path template) throws IOException {
    String text = Files.readString(template);
    assertThat(CONDITION_LOST.matcher(text).results().map(MatchResult::group)).isEmpty();
  }
}
