package loopwright.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A drawing as a tree of elements. Coordinates are written with at most two decimals; a coordinate
 * that is not finite is refused rather than drawn nowhere. The text is well-formed XML and can
 * stand inside an HTML page.
 */
public final class Svg {
  private static final String NAMESPACE = "http://www.w3.org/2000/svg";

  private Svg() {}

  /**
   * The root element: a picture with a text for those who don't see it. Whole width and height, for
   * the PDF writer misreads a width with decimals.
   *
   * @param width in user units, whole
   * @param height in user units, whole
   * @param label what the drawing says, in a sentence
   */
  public static Element drawing(int width, int height, String label) {
    return new Element("svg")
        .set("xmlns", NAMESPACE)
        .set("width", width)
        .set("height", height)
        .set("viewBox", "0 0 " + width + " " + height)
        .set("role", "img")
        .set("aria-label", label);
  }

  /** One element with its attributes, text and children. */
  public static final class Element {
    private final String name;
    private final Map<String, String> attributes = new LinkedHashMap<>();
    private final List<Object> content = new ArrayList<>();

    private Element(String name) {
      this.name = name;
    }

    /** A new child, to be filled in. */
    public Element add(String child) {
      Element element = new Element(child);
      content.add(element);
      return element;
    }

    /** A group of that class. */
    public Element group(String styleClass) {
      return add("g").set("class", styleClass);
    }

    public Element set(String attribute, String value) {
      attributes.put(attribute, value);
      return this;
    }

    /**
     * @throws IllegalArgumentException if the coordinate is not finite
     */
    public Element set(String attribute, double coordinate) {
      return set(attribute, number(coordinate));
    }

    public Element text(String text) {
      content.add(text);
      return this;
    }

    /** A straight line. */
    public Element line(double x1, double y1, double x2, double y2) {
      return add("line").set("x1", x1).set("y1", y1).set("x2", x2).set("y2", y2);
    }

    /** A rectangle. */
    public Element rect(double x, double y, double width, double height) {
      return add("rect").set("x", x).set("y", y).set("width", width).set("height", height);
    }

    /** A text at a place. */
    public Element label(double x, double y, String anchor, String text) {
      return add("text").set("x", x).set("y", y).set("text-anchor", anchor).text(text);
    }

    /** The XML. */
    @Override
    public String toString() {
      StringBuilder out = new StringBuilder();
      write(out);
      return out.toString();
    }

    private void write(StringBuilder out) {
      out.append('<').append(name);
      attributes.forEach(
          (attribute, value) ->
              out.append(' ').append(attribute).append("=\"").append(escaped(value)).append('"'));
      if (content.isEmpty()) {
        out.append("/>");
        return;
      }
      out.append('>');
      for (Object part : content) {
        if (part instanceof Element child) {
          child.write(out);
        } else {
          out.append(escaped(part.toString()));
        }
      }
      out.append("</").append(name).append('>');
    }
  }

  /** At most two decimals, no exponent. */
  static String number(double coordinate) {
    if (!Double.isFinite(coordinate)) {
      throw new IllegalArgumentException("A coordinate is a finite number, not " + coordinate);
    }
    BigDecimal rounded =
        BigDecimal.valueOf(coordinate).setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
  }

  /** Control characters have no place in XML, not even escaped. */
  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]", "\uFFFD");
  }
}
