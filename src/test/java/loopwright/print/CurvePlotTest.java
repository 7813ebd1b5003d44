package loopwright.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import loopwright.print.CurvePicture.Band;
import loopwright.print.CurvePicture.Dot;
import loopwright.print.CurvePicture.Line;
import loopwright.print.CurvePicture.Look;
import loopwright.print.CurvePicture.Standing;
import loopwright.print.CurvePicture.Step;
import loopwright.print.CurvePicture.Trace;
import loopwright.print.CurvePicture.Words;
import loopwright.units.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class CurvePlotTest {
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

  private static Trace trace(Look look, int readings) {
    List<Dot> dots = new ArrayList<>();
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < readings; i++) {
      Standing standing =
          i == 0 ? Standing.NOT_JUDGED : i == 1 ? Standing.OUTSIDE : Standing.WITHIN;
      dots.add(new Dot(250 * i, -2.0 * i, i == 1 ? 40 : 3, standing));
      if (i > 0) {
        steps.add(new Step(250 * (i - 1), 250 * i, 7.9, standing));
      }
    }
    return new Trace(look == Look.FIRST ? "up run" : "down run", look, dots, steps);
  }

  private static CurvePicture picture(List<Trace> traces) {
    return new CurvePicture(
        "c-1",
        "A curve & its limits",
        traces,
        new Line(250, -2, 2250, -18),
        new Band(7.48, 7.874, 8.268),
        new Band(-25.4, 0, 25.4),
        new Words("nominal", "±5 %", "±25.4 µm", "zero: mechanical touch"));
  }

  private static Document parsed(String svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
  }

  private static int count(Document drawing, String tag, String styleClass) {
    NodeList all = drawing.getElementsByTagName(tag);
    int found = 0;
    for (int i = 0; i < all.getLength(); i++) {
      found += ((Element) all.item(i)).getAttribute("class").equals(styleClass) ? 1 : 0;
    }
    return found;
  }

  @Test
  void drawsEveryReadingAndEveryIncrement() throws Exception {
    String svg =
        CurvePlot.svg(
            picture(List.of(trace(Look.FIRST, 9), trace(Look.SECOND, 5))), Unit.MICROMETRE);
    Document drawing = parsed(svg);
    Element root = drawing.getDocumentElement();
    assertThat(root.getAttribute("width")).matches("\\d+");
    assertThat(root.getAttribute("height")).matches("\\d+");
    assertThat(root.getAttribute("viewBox"))
        .isEqualTo("0 0 " + root.getAttribute("width") + " " + root.getAttribute("height"));
    assertThat(root.getAttribute("role")).isEqualTo("img");
    assertThat(root.getAttribute("aria-label")).isEqualTo("A curve & its limits");
    assertThat(count(drawing, "polyline", "plot-curve")).isEqualTo(2);
    assertThat(count(drawing, "line", "plot-stem")).isEqualTo(14);
    assertThat(count(drawing, "line", "plot-step outside")).isEqualTo(2);
    assertThat(count(drawing, "line", "plot-step within")).isEqualTo(7 + 3);
    // outside: a deviation and an increment each, crossed; and one each in the key
    assertThat(count(drawing, "g", "plot-mark outside")).isEqualTo(2 * 2 + 2);
    // within: 8 + 4 outputs, 7 + 3 deviations, 7 + 3 increments; and one each in the key
    assertThat(count(drawing, "g", "plot-mark within")).isEqualTo(12 + 10 + 10 + 2);
    assertThat(svg).contains("25.4 µm = 1 mil", "zero: mechanical touch", ">2000<");
    assertThat(svg).doesNotContain("style=");
  }

  @Test
  void speaksMil() throws Exception {
    String svg = CurvePlot.svg(picture(List.of(trace(Look.FIRST, 9))), Unit.MIL);
    parsed(svg);
    assertThat(svg)
        .contains("ISF, mV/mil", "Deviation, mil", "1 mil = 25.4 µm", ">190.0<", ">1.00<");
  }

  @Test
  void refusesWhatCannotBeDrawn() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Dot(Double.NaN, -1, 0, Standing.WITHIN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Step(0, 1, Double.POSITIVE_INFINITY, Standing.WITHIN));
    assertThatIllegalArgumentException().isThrownBy(() -> new Band(1, 1, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> picture(List.of()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CurvePlot.svg(picture(List.of(trace(Look.FIRST, 3))), Unit.VOLT));
  }

  @Property(tries = 300)
  void nothingLiesOutsideTheDrawing(
      @ForAll("traces") Trace first, @ForAll("traces") Trace second, @ForAll boolean mil)
      throws Exception {
    Trace other = new Trace("down run", Look.SECOND, second.dots(), second.steps());
    String svg = CurvePlot.svg(picture(List.of(first, other)), mil ? Unit.MIL : Unit.MICROMETRE);
    assertThat(svg).doesNotContain("NaN").doesNotContain("Infinity");
    NodeList all = parsed(svg).getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      Element element = (Element) all.item(i);
      if (!element.getParentNode().getNodeName().equals("pattern")) {
        inside(element, List.of("x", "x1", "x2", "cx"), CurvePlot.WIDTH);
        inside(element, List.of("y", "y1", "y2", "cy"), CurvePlot.HEIGHT);
        paths(element);
      }
    }
  }

  private static void inside(Element element, List<String> attributes, int end) {
    for (String attribute : attributes) {
      if (element.hasAttribute(attribute)) {
        assertThat(Double.parseDouble(element.getAttribute(attribute)))
            .as(element.getTagName() + " " + attribute)
            .isBetween(0.0, (double) end);
      }
    }
  }

  private static void paths(Element element) {
    Matcher numbers = NUMBER.matcher(element.getAttribute("d") + element.getAttribute("points"));
    for (int i = 0; numbers.find(); i++) {
      assertThat(Double.parseDouble(numbers.group()))
          .isBetween(0.0, (double) (i % 2 == 0 ? CurvePlot.WIDTH : CurvePlot.HEIGHT));
    }
  }

  /** Wild, but what a curve can hold: gaps to 60 mm, and slopes of next to nothing apart. */
  @Provide
  Arbitrary<Trace> traces() {
    Arbitrary<Double> gaps = Arbitraries.doubles().between(0, 60_000);
    Arbitrary<Double> slopes = Arbitraries.doubles().between(-1e15, 1e15);
    Arbitrary<Standing> standings = Arbitraries.of(Standing.class);
    Arbitrary<Dot> dots =
        Combinators.combine(gaps, Arbitraries.doubles().between(-30, 0), slopes, standings)
            .as(Dot::new);
    Arbitrary<Step> steps = Combinators.combine(gaps, gaps, slopes, standings).as(Step::new);
    return Combinators.combine(dots.list().ofMinSize(1).ofMaxSize(12), steps.list().ofMaxSize(12))
        .as((some, between) -> new Trace("up run", Look.FIRST, some, between));
  }
}
