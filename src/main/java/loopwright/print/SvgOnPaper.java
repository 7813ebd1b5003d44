package loopwright.print;

import java.awt.Color;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/**
 * Puts one of our own drawings on a PDF page as lines and text, not as a picture, so that paper
 * shows what the page shows. Takes the elements that {@link Svg} is used with: groups, lines,
 * rectangles, texts with tspans, and paths of straight strokes; looks come from the attributes.
 */
public final class SvgOnPaper {
  private final PdfText text;
  private final PDPageContentStream page;
  private final double left;
  private final double top;
  private final double scale;

  private SvgOnPaper(
      PdfText text, PDPageContentStream page, double left, double top, double scale) {
    this.text = text;
    this.page = page;
    this.left = left;
    this.top = top;
    this.scale = scale;
  }

  /**
   * Draws it.
   *
   * @param svg as {@link ChainDrawing} makes them
   * @param left edge, points
   * @param top edge, points from the lower edge of the page
   * @param width that the whole drawing takes, points
   * @return the height that it took, points
   */
  public static double draw(
      PdfText text, PDPageContentStream page, String svg, double left, double top, double width)
      throws IOException {
    Element root = parsed(svg);
    double scale = width / number(root, "width");
    new SvgOnPaper(text, page, left, top, scale).children(root, Look.NONE);
    return number(root, "height") * scale;
  }

  private static Element parsed(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return factory
          .newDocumentBuilder()
          .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
          .getDocumentElement();
    } catch (ParserConfigurationException | SAXException | IOException ourOwn) {
      throw new IllegalArgumentException("This is no drawing of ours.", ourOwn);
    }
  }

  /** What a group hands down to its children; empty texts where nothing is said. */
  private record Look(
      String stroke,
      String fill,
      String width,
      String dash,
      String size,
      String weight,
      String family) {
    static final Look NONE = new Look("", "", "1", "", "14", "", "");

    Look under(Element element) {
      return new Look(
          said(element, "stroke", stroke),
          said(element, "fill", fill),
          said(element, "stroke-width", width),
          said(element, "stroke-dasharray", dash),
          said(element, "font-size", size),
          said(element, "font-weight", weight),
          said(element, "font-family", family));
    }

    private static String said(Element element, String name, String otherwise) {
      return element.hasAttribute(name) ? element.getAttribute(name) : otherwise;
    }

    PdfFace face() {
      if (family.contains("Mono")) {
        return PdfFace.MONO_BOLD;
      }
      return weight.equals("600") ? PdfFace.SANS_BOLD : PdfFace.SANS;
    }

    double fontSize() {
      return Double.parseDouble(size);
    }
  }

  private void children(Element parent, Look look) throws IOException {
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element child) {
        element(child, look.under(child));
      }
    }
  }

  private void element(Element element, Look look) throws IOException {
    switch (element.getTagName()) {
      case "g" -> children(element, look);
      case "line" -> {
        move(number(element, "x1"), number(element, "y1"));
        lineTo(number(element, "x2"), number(element, "y2"));
        paint(look, false);
      }
      case "rect" -> {
        double height = number(element, "height");
        page.addRect(
            x(number(element, "x")),
            y(number(element, "y") + height),
            (float) (number(element, "width") * scale),
            (float) (height * scale));
        paint(look, true);
      }
      case "path" -> {
        path(element.getAttribute("d"));
        paint(look, true);
      }
      case "text" -> write(element, look);
      default -> {
        // titles are for those who point at something; paper has nobody who does
      }
    }
  }

  private void path(String d) throws IOException {
    String[] words = d.replaceAll("([A-Za-z])", " $1 ").strip().split("[\\s,]+");
    double x = 0;
    double y = 0;
    for (int i = 0; i < words.length; ) {
      String command = words[i++];
      switch (command) {
        case "M", "L" -> {
          x = Double.parseDouble(words[i++]);
          y = Double.parseDouble(words[i++]);
        }
        case "H" -> x = Double.parseDouble(words[i++]);
        case "h" -> x += Double.parseDouble(words[i++]);
        case "V" -> y = Double.parseDouble(words[i++]);
        case "v" -> y += Double.parseDouble(words[i++]);
        case "Z", "z" -> page.closePath();
        default -> throw new IllegalArgumentException("path " + d);
      }
      if (command.equals("M")) {
        move(x, y);
      } else if (!command.equalsIgnoreCase("Z")) {
        lineTo(x, y);
      }
    }
  }

  private void paint(Look look, boolean area) throws IOException {
    boolean fills = area && !look.fill().isEmpty() && !look.fill().equals("none");
    boolean strokes = !look.stroke().isEmpty() && !look.stroke().equals("none");
    if (fills) {
      page.setNonStrokingColor(Color.decode(look.fill()));
    }
    if (strokes) {
      page.setStrokingColor(Color.decode(look.stroke()));
      page.setLineWidth((float) (Double.parseDouble(look.width()) * scale));
      page.setLineDashPattern(dash(look.dash()), 0);
    }
    if (fills && strokes) {
      page.fillAndStroke();
    } else if (fills) {
      page.fill();
    } else if (strokes) {
      page.stroke();
    } else {
      page.clip();
    }
  }

  private float[] dash(String pattern) {
    if (pattern.isEmpty()) {
      return new float[0];
    }
    String[] words = pattern.split("[\\s,]+");
    float[] lengths = new float[words.length];
    for (int i = 0; i < words.length; i++) {
      lengths[i] = (float) (Double.parseDouble(words[i]) * scale);
    }
    return lengths;
  }

  private record Run(PdfFace face, double size, String text) {}

  private void write(Element element, Look look) throws IOException {
    List<Run> runs = new ArrayList<>();
    for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element child && child.getTagName().equals("tspan")) {
        Look own = look.under(child);
        runs.add(new Run(own.face(), own.fontSize(), child.getTextContent()));
      } else if (!(node instanceof Element)) {
        runs.add(new Run(look.face(), look.fontSize(), node.getTextContent()));
      }
    }
    double length =
        runs.stream().mapToDouble(run -> text.width(run.face, run.text, run.size * scale)).sum();
    double at = x(number(element, "x"));
    String anchor = element.getAttribute("text-anchor");
    at -= anchor.equals("middle") ? length / 2 : anchor.equals("end") ? length : 0;
    page.setNonStrokingColor(look.fill().isEmpty() ? Color.BLACK : Color.decode(look.fill()));
    for (Run run : runs) {
      if (!run.text.isEmpty()) {
        text.write(page, run.face, at, y(number(element, "y")), run.size * scale, run.text);
        at += text.width(run.face, run.text, run.size * scale);
      }
    }
    page.setNonStrokingColor(Color.BLACK);
  }

  private void move(double x, double y) throws IOException {
    page.moveTo(x(x), y(y));
  }

  private void lineTo(double x, double y) throws IOException {
    page.lineTo(x(x), y(y));
  }

  private float x(double x) {
    return (float) (left + x * scale);
  }

  private float y(double y) {
    return (float) (top - y * scale);
  }

  private static double number(Element element, String name) {
    return Double.parseDouble(element.getAttribute(name));
  }
}
