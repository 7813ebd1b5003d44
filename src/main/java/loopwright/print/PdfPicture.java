package loopwright.print;

import java.awt.Color;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Draws our own drawings ({@link Svg}) into a PDF page as vectors, in ink on paper: lines, boxes,
 * circles, polylines, straight paths, texts, and boxes hatched by a pattern. What else SVG knows is
 * refused, so that nothing is left out unnoticed.
 */
public final class PdfPicture {
  private static final String INK = "#1c2733";
  private static final double HATCH = 8;

  private final PdfText text;
  private final PDPageContentStream page;
  private final double left;
  private final double top;
  private final double scale;

  private PdfPicture(
      PdfText text, PDPageContentStream page, double left, double top, double scale) {
    this.text = text;
    this.page = page;
    this.left = left;
    this.top = top;
    this.scale = scale;
  }

  /** What a group hands down. */
  private record Style(
      String stroke,
      String fill,
      double width,
      String dash,
      double size,
      boolean bold,
      boolean mono) {
    static final Style FIRST = new Style("none", INK, 1, "", 12, false, false);

    Style of(Element e) {
      return new Style(
          value(e, "stroke", stroke),
          value(e, "fill", fill),
          number(value(e, "stroke-width", Double.toString(width))),
          value(e, "stroke-dasharray", dash),
          number(value(e, "font-size", Double.toString(size))),
          e.hasAttribute("font-weight") ? number(e.getAttribute("font-weight")) > 500 : bold,
          e.hasAttribute("font-family") ? e.getAttribute("font-family").contains("Mono") : mono);
    }

    PdfFace face() {
      if (mono) {
        return PdfFace.MONO_BOLD;
      }
      return bold ? PdfFace.SANS_BOLD : PdfFace.SANS;
    }
  }

  /**
   * Draws it with its upper left corner at that place.
   *
   * @param left points
   * @param top points from the lower edge of the page
   * @param width points; the height follows
   * @return the height it took, points
   */
  public static double draw(
      PdfText text, PDPageContentStream page, String svg, double left, double top, double width)
      throws IOException {
    Element root = parsed(svg);
    double scale = width / number(root.getAttribute("width"));
    new PdfPicture(text, page, left, top, scale).children(root, Style.FIRST.of(root));
    return number(root.getAttribute("height")) * scale;
  }

  /** Height of a drawing at that width, points. */
  public static double height(String svg, double width) {
    Element root = parsed(svg);
    return number(root.getAttribute("height")) * width / number(root.getAttribute("width"));
  }

  private static Element parsed(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return factory
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(svg)))
          .getDocumentElement();
    } catch (ParserConfigurationException | SAXException | IOException broken) {
      throw new IllegalArgumentException("A drawing is well-formed.", broken);
    }
  }

  private void children(Element parent, Style style) throws IOException {
    for (Element child : elements(parent)) {
      draw(child, style.of(child));
    }
  }

  private static List<Element> elements(Element parent) {
    List<Element> elements = new ArrayList<>();
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element element) {
        elements.add(element);
      }
    }
    return elements;
  }

  private void draw(Element e, Style style) throws IOException {
    switch (e.getTagName()) {
      case "defs", "title" -> {}
      case "g" -> children(e, style);
      case "line" -> line(e, style);
      case "rect" -> rect(e, style);
      case "circle" -> circle(e, style);
      case "polyline" -> polyline(e, style);
      case "path" -> path(e, style);
      case "text" -> label(e, style);
      default -> throw new IllegalArgumentException("not drawn in PDF: " + e.getTagName());
    }
  }

  private float x(double x) {
    return (float) (left + x * scale);
  }

  private float y(double y) {
    return (float) (top - y * scale);
  }

  private void line(Element e, Style style) throws IOException {
    page.moveTo(x(of(e, "x1")), y(of(e, "y1")));
    page.lineTo(x(of(e, "x2")), y(of(e, "y2")));
    paint(style, false);
  }

  private void rect(Element e, Style style) throws IOException {
    double height = of(e, "height");
    float x = x(of(e, "x"));
    float y = y(of(e, "y") + height);
    float wide = (float) (of(e, "width") * scale);
    float high = (float) (height * scale);
    if (style.fill().startsWith("url(")) {
      hatched(x, y, wide, high);
    } else {
      page.addRect(x, y, wide, high);
      paint(style, true);
    }
  }

  /** A wash with lines at 45°, as the pattern of {@link CurvePlot} has them. */
  private void hatched(float x, float y, float wide, float high) throws IOException {
    page.saveGraphicsState();
    page.addRect(x, y, wide, high);
    page.clip();
    page.setNonStrokingColor(Color.decode("#e0f1ec"));
    page.addRect(x, y, wide, high);
    page.fill();
    page.setStrokingColor(Color.decode("#9fc5ba"));
    page.setLineWidth((float) (0.8 * scale));
    float step = (float) (HATCH * Math.sqrt(2) * scale);
    for (float at = x - high; at < x + wide; at += step) {
      page.moveTo(at, y);
      page.lineTo(at + high, y + high);
    }
    page.stroke();
    page.restoreGraphicsState();
  }

  /** By four Bézier curves; 0.5523 puts them within 0.03 % of a circle. */
  private void circle(Element e, Style style) throws IOException {
    double r = of(e, "r");
    double k = 0.5523 * r;
    double cx = of(e, "cx");
    double cy = of(e, "cy");
    page.moveTo(x(cx + r), y(cy));
    page.curveTo(x(cx + r), y(cy + k), x(cx + k), y(cy + r), x(cx), y(cy + r));
    page.curveTo(x(cx - k), y(cy + r), x(cx - r), y(cy + k), x(cx - r), y(cy));
    page.curveTo(x(cx - r), y(cy - k), x(cx - k), y(cy - r), x(cx), y(cy - r));
    page.curveTo(x(cx + k), y(cy - r), x(cx + r), y(cy - k), x(cx + r), y(cy));
    page.closePath();
    paint(style, true);
  }

  private void polyline(Element e, Style style) throws IOException {
    String[] points = e.getAttribute("points").trim().split("[\\s,]+");
    for (int i = 0; i < points.length; i += 2) {
      to(i == 0, number(points[i]), number(points[i + 1]));
    }
    paint(style, !style.fill().equals("none"));
  }

  private void to(boolean first, double x, double y) throws IOException {
    if (first) {
      page.moveTo(x(x), y(y));
    } else {
      page.lineTo(x(x), y(y));
    }
  }

  /** Straight pieces only: M and L, H and V with their relative forms, Z. */
  private void path(Element e, Style style) throws IOException {
    String[] words = e.getAttribute("d").replaceAll("([A-Za-z])", " $1 ").trim().split("[\\s,]+");
    double x = 0;
    double y = 0;
    for (int i = 0; i < words.length; ) {
      String command = words[i++];
      switch (command) {
        case "M", "L" -> {
          x = number(words[i++]);
          y = number(words[i++]);
        }
        case "H" -> x = number(words[i++]);
        case "h" -> x += number(words[i++]);
        case "V" -> y = number(words[i++]);
        case "v" -> y += number(words[i++]);
        case "Z", "z" -> page.closePath();
        default -> throw new IllegalArgumentException("not drawn in PDF: " + command);
      }
      if (!command.equalsIgnoreCase("Z")) {
        to(command.equals("M"), x, y);
      }
    }
    paint(style, true);
  }

  private void paint(Style style, boolean area) throws IOException {
    boolean filled = area && !style.fill().equals("none");
    boolean stroked = !style.stroke().equals("none");
    if (filled) {
      page.setNonStrokingColor(Color.decode(style.fill()));
    }
    if (stroked) {
      page.setStrokingColor(Color.decode(style.stroke()));
      page.setLineWidth((float) (style.width() * scale));
      page.setLineDashPattern(dashes(style.dash()), 0);
    }
    if (filled && stroked) {
      page.fillAndStroke();
    } else if (filled) {
      page.fill();
    } else if (stroked) {
      page.stroke();
    }
  }

  private float[] dashes(String pattern) {
    String typed = pattern.trim();
    if (typed.isEmpty()) {
      return new float[0];
    }
    String[] parts = typed.split("[\\s,]+");
    float[] dashes = new float[parts.length];
    for (int i = 0; i < parts.length; i++) {
      dashes[i] = (float) (number(parts[i]) * scale);
    }
    return dashes;
  }

  private record Piece(String words, PdfFace face, double size) {}

  private void label(Element e, Style style) throws IOException {
    List<Piece> pieces = new ArrayList<>();
    double width = 0;
    for (Node node = e.getFirstChild(); node != null; node = node.getNextSibling()) {
      // a title is for those who point at something; paper has nobody who does
      if (node.getNodeName().equals("title")) {
        continue;
      }
      Style own = node instanceof Element part ? style.of(part) : style;
      Piece piece = new Piece(node.getTextContent(), own.face(), own.size() * scale);
      pieces.add(piece);
      width += width(piece);
    }
    double shift =
        switch (e.getAttribute("text-anchor")) {
          case "middle" -> width / 2;
          case "end" -> width;
          default -> 0;
        };
    double at = x(of(e, "x")) - shift;
    page.setNonStrokingColor(Color.decode(style.fill().equals("none") ? INK : style.fill()));
    for (Piece piece : pieces) {
      text.write(page, piece.face(), at, y(of(e, "y")), piece.size(), piece.words());
      at += width(piece);
    }
  }

  private double width(Piece piece) {
    return text.width(piece.face(), piece.words(), piece.size());
  }

  private static double of(Element e, String attribute) {
    return number(e.getAttribute(attribute));
  }

  private static String value(Element e, String attribute, String otherwise) {
    return e.hasAttribute(attribute) ? e.getAttribute(attribute) : otherwise;
  }

  private static double number(String text) {
    return text.isEmpty() ? 0 : Double.parseDouble(text.toLowerCase(Locale.ROOT));
  }
}
