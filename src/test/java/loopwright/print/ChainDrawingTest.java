package loopwright.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.StringReader;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import loopwright.print.ChainPicture.Part;
import loopwright.units.Length;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class ChainDrawingTest {
  private static final Length TOLERANCE = Length.ofMetres("0.05");

  private static @Nullable Length metres(@Nullable String metres) {
    return metres == null ? null : Length.ofMetres(metres);
  }

  private static Part lead(@Nullable String metres) {
    return Part.fitted("probe lead", "PR-88120", metres(metres), "");
  }

  private static Part cable(@Nullable String metres) {
    return Part.fitted("extension cable", "XC-51733", metres(metres), "");
  }

  private static Part driver(@Nullable String metres) {
    return Part.fitted("driver", "DV-20417", metres(metres), "");
  }

  private static ChainPicture picture(Part probe, Part driver, Part... path) {
    return new ChainPicture("K301-VX2", probe, Arrays.asList(path), driver, TOLERANCE);
  }

  private static Document drawn(ChainPicture picture) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(ChainDrawing.svg(picture))));
  }

  private static List<Element> all(Document drawing, String tag) {
    NodeList found = drawing.getElementsByTagName(tag);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  private static List<Element> ofClass(Document drawing, String styleClass) {
    return all(drawing, "*").stream()
        .filter(element -> element.getAttribute("class").equals(styleClass))
        .toList();
  }

  private static double number(Element element, String attribute) {
    return Double.parseDouble(element.getAttribute(attribute));
  }

  private static List<String> texts(Document drawing) {
    return all(drawing, "text").stream().map(Element::getTextContent).toList();
  }

  /** Metres along the drawing between two coordinates, from the tuned-for mark as the measure. */
  private static double perMetre(Document drawing, double tunedFor) {
    return (number(ofClass(drawing, "chain-mark").get(0), "x1") - ChainLayout.ZERO) / tunedFor;
  }

  @Test
  void drawsLeadAndCableToScaleAndHatchesWhatIsTooMuch() throws Exception {
    Document drawing = drawn(picture(lead("1.0"), driver("5.0"), cable("4.5")));
    double perMetre = perMetre(drawing, 5.0);
    List<Element> pieces = ofClass(drawing, "chain-cable");
    assertThat(pieces).hasSize(2);
    Element over = ofClass(drawing, "chain-over").get(0);
    assertThat(number(over, "width") / perMetre).isBetween(0.499, 0.501);
    Element cable = (Element) pieces.get(1).getFirstChild();
    assertThat(number(cable, "width") / perMetre).isBetween(4.499, 4.501);
    assertThat(ofClass(drawing, "chain-hatch")).hasSize(1);
    assertThat(texts(drawing)).contains("+0.5 m", "+1.6 ft", "tuned for 5.0 m (16.4 ft)");
  }

  @Test
  void outlinesWhatIsMissing() throws Exception {
    Document drawing = drawn(picture(lead("0.5"), driver("5.0"), cable("4.0")));
    Element missing = ofClass(drawing, "chain-missing").get(0);
    assertThat(number(missing, "width") / perMetre(drawing, 5.0)).isBetween(0.499, 0.501);
    assertThat(ofClass(drawing, "chain-hatch")).isEmpty();
    assertThat(texts(drawing)).contains("\u22120.5 m", "\u22121.6 ft");
  }

  @ParameterizedTest(name = "lead {0}, cable {1}, system {2}")
  @CsvSource({"0.5, 8.5, 9.0", "1.0, 4.0, 5.0", "1.0, 4.05, 5.0"})
  void marksNothingOnAChainInBalance(String lead, String cable, String system) throws Exception {
    Document drawing = drawn(picture(lead(lead), driver(system), cable(cable)));
    assertThat(ofClass(drawing, "chain-over")).isEmpty();
    assertThat(ofClass(drawing, "chain-missing")).isEmpty();
    assertThat(ofClass(drawing, "chain-balance")).isEmpty();
    assertThat(texts(drawing)).anyMatch(text -> text.contains(", balance "));
  }

  @Test
  void saysThatNoCableIsFitted() throws Exception {
    Document drawing = drawn(picture(lead("5.0"), driver("5.0"), Part.none("extension cable")));
    assertThat(texts(drawing)).contains("no extension cable");
    assertThat(ofClass(drawing, "chain-cable")).hasSize(1);
  }

  @Test
  void breaksAPartOfUnknownLengthAndClaimsNoBalance() throws Exception {
    Document drawing = drawn(picture(lead("1.0"), driver("5.0"), cable(null)));
    Element unknown = ofClass(drawing, "chain-cable unknown").get(0);
    assertThat(unknown.getAttribute("stroke-dasharray")).isNotEmpty();
    assertThat(texts(drawing)).contains("extension cable length not known");
    assertThat(texts(drawing)).noneMatch(text -> text.contains("balance"));
    Element box = (Element) unknown.getFirstChild();
    double end = number(box, "x") + number(box, "width");
    assertThat(end)
        .as("not drawn as if it fitted")
        .isGreaterThan(number(ofClass(drawing, "chain-mark").get(0), "x1") + 20);
    assertThat(drawing.getDocumentElement().getAttribute("aria-label"))
        .endsWith("The length balance is not known.");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1.0 | 4.5  | 5.0 | Together 5.5 m, 0.5 m (1.6 ft) too long.
          0.5 | 4.0  | 5.0 | Together 4.5 m, 0.5 m (1.6 ft) too short.
          1.0 | 4.0  | 5.0 | Together 5.0 m, as the driver needs.
          1.0 | 4.02 | 5.0 | Together 5.02 m, 0.02 m (0.1 ft) too long, within the tolerance.
          """)
  void tellsItselfToThoseWhoDoNotSeeIt(String lead, String cable, String system, String sum)
      throws Exception {
    Element root = drawn(picture(lead(lead), driver(system), cable(cable))).getDocumentElement();
    assertThat(root.getAttribute("role")).isEqualTo("img");
    assertThat(root.getAttribute("aria-label"))
        .isEqualTo(
            "Loop K301-VX2, drawn to length: probe lead PR-88120 of %s m, extension cable XC-51733 of"
                    .formatted(lead)
                + " %s m, driver DV-20417 tuned for %s m. %s".formatted(cable, system, sum));
  }

  @Test
  void drawsNoRulerWhenNoLengthIsKnown() throws Exception {
    Document drawing =
        drawn(
            picture(
                Part.unknown("probe lead"),
                Part.unknown("driver"),
                Part.unknown("extension cable")));
    assertThat(ofClass(drawing, "chain-ruler")).isEmpty();
    assertThat(texts(drawing)).contains("probe lead not known", "not known");
  }

  @Test
  void theRulerAgreesWithItselfInMetresAndFeet() throws Exception {
    Document drawing = drawn(picture(lead("5.0"), driver("5.0")));
    double perMetre = perMetre(drawing, 5.0);
    Element ruler = ofClass(drawing, "chain-ruler").get(0);
    NodeList labels = ruler.getElementsByTagName("text");
    int metres = 0;
    int feet = 0;
    boolean inFeet = false;
    for (int i = 0; i < labels.getLength(); i++) {
      Element label = (Element) labels.item(i);
      if (label.getTextContent().equals("m")) {
        inFeet = true;
      } else if (!label.getTextContent().equals("ft")) {
        double unit = inFeet ? 0.3048 : 1;
        double at = Double.parseDouble(label.getTextContent()) * unit;
        assertThat((number(label, "x") - ChainLayout.ZERO) / perMetre)
            .isBetween(at - 0.001, at + 0.001);
        metres += inFeet ? 0 : 1;
        feet += inFeet ? 1 : 0;
      }
    }
    assertThat(metres).isGreaterThan(5);
    assertThat(feet).isGreaterThan(5);
  }

  @Test
  void shortensALongSerialInTheMiddleAndKeepsItWhole() throws Exception {
    String serial = "PR-2024-000-0087-<&\">-17";
    Document drawing =
        drawn(
            picture(Part.fitted("probe lead", serial, Length.ofMetres("0.5"), ""), driver("0.5")));
    assertThat(all(drawing, "title")).extracting(Element::getTextContent).contains(serial);
    assertThat(texts(drawing)).anyMatch(text -> text.startsWith("PR-2024-…7-<&\">-17"));
    assertThat(ChainLabel.shortened("abcdefgh", 5)).isEqualTo("ab…gh");
    assertThat(ChainLabel.shortened("abcde", 5)).isEqualTo("abcde");
  }

  @Test
  void refusesALengthWhereNothingIsFitted() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Part("x", "", ChainPicture.Content.NONE, Length.ofMetres("1"), ""));
    assertThatIllegalArgumentException().isThrownBy(() -> lead("0"));
  }

  @Provide
  Arbitrary<ChainPicture> pictures() {
    return Combinators.combine(
            parts("probe lead"),
            Arbitraries.of("extension cable", "adapter").flatMap(this::parts).list().ofMaxSize(6),
            parts("driver"))
        .as((probe, path, driver) -> new ChainPicture("T-1", probe, path, driver, TOLERANCE));
  }

  private Arbitrary<Part> parts(String caption) {
    Arbitrary<Length> lengths =
        Arbitraries.bigDecimals()
            .between(new BigDecimal("0.1"), new BigDecimal("60"))
            .ofScale(2)
            .map(Length::new);
    Arbitrary<Part> fitted =
        Combinators.combine(
                Arbitraries.strings().withCharRange('!', 'z').ofMaxLength(60),
                lengths.injectNull(0.2),
                Arbitraries.of("", "length assumed", "x".repeat(80)))
            .as((serial, length, note) -> Part.fitted(caption, serial, length, note));
    return Arbitraries.frequencyOf(
        net.jqwik.api.Tuple.of(8, fitted),
        net.jqwik.api.Tuple.of(1, Arbitraries.just(Part.none(caption))),
        net.jqwik.api.Tuple.of(1, Arbitraries.just(Part.unknown(caption))));
  }

  /** Widths are reckoned as the drawing reckons them; what a browser makes of it is looked at. */
  @Property(tries = 300)
  void everyTextAndShapeStaysInsideAndIsLargeEnough(@ForAll("pictures") ChainPicture picture)
      throws Exception {
    Document drawing = drawn(picture);
    double height = number(drawing.getDocumentElement(), "height");
    for (Element text : all(drawing, "text")) {
      assertThat(number(text, "font-size")).isGreaterThanOrEqualTo(14);
      assertThat(number(text, "y")).isBetween(14.0, height - 3);
      double width = ChainLabel.sansWidth(visible(text));
      double x = number(text, "x");
      String anchor = text.getAttribute("text-anchor");
      double left = anchor.equals("end") ? x - width : anchor.equals("middle") ? x - width / 2 : x;
      assertThat(left).as(visible(text)).isGreaterThanOrEqualTo(0);
      assertThat(left + width).as(visible(text)).isLessThanOrEqualTo(ChainDrawing.WIDTH);
    }
    for (Element rect : all(drawing, "rect")) {
      assertThat(number(rect, "x")).isGreaterThanOrEqualTo(0);
      assertThat(number(rect, "width")).isGreaterThanOrEqualTo(0);
      assertThat(number(rect, "x") + number(rect, "width")).isLessThanOrEqualTo(ChainDrawing.WIDTH);
    }
    assertThat(ChainDrawing.svg(picture)).isEqualTo(ChainDrawing.svg(picture));
  }

  /** Without its title, which shows only when pointed at. */
  private static String visible(Element text) {
    String whole = text.getTextContent();
    NodeList titles = text.getElementsByTagName("title");
    return titles.getLength() == 0
        ? whole
        : whole.substring(0, whole.length() - titles.item(0).getTextContent().length());
  }
}
