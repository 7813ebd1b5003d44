package loopwright.print;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import loopwright.print.ChainPicture.Content;
import loopwright.print.ChainPicture.Part;
import loopwright.units.Length;

/**
 * A loop drawn to length on a ruler: tip and lead, cables, driver, the length that the driver is
 * tuned for as a broken line, what is too much hatched and what is missing as an empty outline.
 * Looks come from the style classes {@code chain-…} of the page; without them it is drawn in ink on
 * paper. The lead begins at 0; tip and driver are not to scale.
 */
public final class ChainDrawing {
  static final int WIDTH = ChainLayout.WIDTH;
  private static final String INK = "#1c2733";
  private static final String SOFT = "#56626e";
  private static final String SHEET = "#fffefa";
  private static final String BLUE = "#1f5a8a";
  private static final String WASH = "#e3edf5";
  private static final String BRICK = "#a3271c";
  private static final String BRICK_WASH = "#fae6e2";
  private static final double LINE = 18;
  private static final double TOP = 6;
  private static final double EDGE = 6;
  private static final double LEADER = 22;
  private static final double BOX = 56;
  private static final double THICK = 12;
  private static final double THIN = 8;
  private static final String TEXT = "14";

  private final ChainPicture picture;
  private final ChainLayout layout;
  private final List<ChainLabel> labels = new ArrayList<>();
  private final List<Labels.Place> places;
  private final int rows;
  private final double rowHeight;
  private final double axis;
  private final double markRow;
  private final double rulerTop;
  private final Svg.Element root;

  private ChainDrawing(ChainPicture picture) {
    this.picture = picture;
    this.layout = new ChainLayout(picture);
    label();
    Labels room = new Labels(EDGE, WIDTH - EDGE);
    List<Labels.Block> blocks = labels.stream().map(ChainLabel::block).toList();
    this.places = room.places(blocks);
    this.rows = room.rows(blocks);
    this.rowHeight = LINE * labels.stream().mapToInt(ChainLabel::height).max().orElse(1) + 6;
    this.axis = TOP + rows * rowHeight + LEADER + BOX / 2;
    this.markRow = axis + BOX / 2 + (picture.isOff() ? 66 : 24);
    this.rulerTop = markRow + 12;
    double height = picture.isAnythingMeasured() ? rulerTop + Ruler.HEIGHT : markRow + 8;
    this.root =
        Svg.drawing(WIDTH, (int) Math.ceil(height), picture.sentence())
            .set("class", "chain")
            .set("font-family", "'IBM Plex Sans', 'Liberation Sans', sans-serif");
  }

  /** The drawing. */
  public static String svg(ChainPicture picture) {
    return new ChainDrawing(picture).drawn();
  }

  private String drawn() {
    leaders();
    probe();
    layout.spans().forEach(this::part);
    balance();
    joints();
    mark();
    box();
    for (int i = 0; i < labels.size(); i++) {
      labels.get(i).draw(root, places.get(i).middle(), textTop(places.get(i)), rows > 1);
    }
    if (picture.isAnythingMeasured()) {
      Svg.Element ruler = root.group("chain-ruler");
      new Ruler(ruler, ChainLayout.ZERO, layout.perMetre(), ChainLayout.RIGHT, rulerTop).draw();
    }
    return root.toString();
  }

  /** What is written above the chain: each part along it, and what is known not to be there. */
  private void label() {
    List<Part> parts = new ArrayList<>();
    parts.add(picture.probe());
    parts.addAll(picture.path());
    Iterator<ChainLayout.Span> spans = layout.spans().iterator();
    double here = ChainLayout.ZERO;
    for (Part part : parts) {
      if (part.content() == Content.NONE) {
        labels.add(new ChainLabel(part, here));
      } else {
        ChainLayout.Span span = spans.next();
        labels.add(new ChainLabel(part, span.middle()));
        here = span.to();
      }
    }
  }

  private double textTop(Labels.Place place) {
    return TOP + (rows - 1 - place.row()) * rowHeight;
  }

  /** A thin line from each block of text to its part. */
  private void leaders() {
    for (int i = 0; i < labels.size(); i++) {
      ChainLabel label = labels.get(i);
      double bottom = textTop(places.get(i)) + LINE * label.height() + 3;
      root.line(places.get(i).middle(), bottom, label.over(), axis - THICK / 2 - 3)
          .set("class", "chain-faint")
          .set("stroke", "#867f6c");
    }
  }

  /** The shaft's edge, the tip in front of it, the threaded body. */
  private void probe() {
    boolean known = picture.probe().content() == Content.FITTED;
    double zero = ChainLayout.ZERO;
    Svg.Element shaft = root.group("chain-shaft").set("stroke", INK);
    shaft.line(14, axis - 28, 14, axis + 28).set("stroke-width", 1.6);
    for (double y = axis - 24; y <= axis + 28; y += 8) {
      shaft.line(14, y - 4, 6, y + 4).set("stroke-width", 0.8);
    }
    Svg.Element body = outline(root.group("chain-part"), known);
    body.rect(24, axis - 8, 10, 16);
    body.rect(34, axis - 10, 34, 20);
    body.rect(68, axis - 14, zero - 68, 28);
    for (double x = 40; x < 66; x += 5) {
      body.line(x, axis - 10, x - 3, axis + 10).set("stroke-width", 0.8);
    }
  }

  /** Ink round the colour of the sheet; broken where nobody knows what stands there. */
  private static Svg.Element outline(Svg.Element group, boolean known) {
    group.set("stroke", INK).set("fill", SHEET).set("stroke-width", 1.5);
    return known ? group : group.set("stroke-dasharray", "4 3");
  }

  private void part(ChainLayout.Span span) {
    double thick = span.lead() ? THIN : THICK;
    Svg.Element group =
        root.group(span.isToScale() ? "chain-cable" : "chain-cable unknown")
            .set("stroke", INK)
            .set("fill", span.isToScale() ? WASH : SHEET)
            .set("stroke-width", 1.2);
    if (!span.isToScale()) {
      group.set("stroke-dasharray", "5 4");
    }
    group.rect(span.from(), axis - thick / 2, span.to() - span.from(), thick);
    if (!span.isToScale()) {
      broken(span.middle());
    }
  }

  /** Two strokes across a part that is not to scale. */
  private void broken(double x) {
    root.rect(x - 5, axis - THICK, 10, 2 * THICK).set("class", "chain-ground").set("fill", SHEET);
    for (double side : new double[] {-5, 5}) {
      root.line(x + side - 4, axis + THICK, x + side + 4, axis - THICK)
          .set("class", "chain-ink")
          .set("stroke", INK)
          .set("stroke-width", 1.2);
    }
  }

  /** Connectors between parts, and the plug at the driver. */
  private void joints() {
    List<ChainLayout.Span> spans = layout.spans();
    Svg.Element group = outline(root.group("chain-part"), true);
    for (int i = 1; i < spans.size(); i++) {
      double x = spans.get(i).from();
      group.rect(x - plug(spans.get(i - 1)), axis - 9, plug(spans.get(i - 1)), 18);
      group.rect(x, axis - 11, plug(spans.get(i)), 22);
    }
    if (!spans.isEmpty()) {
      double plug = plug(spans.get(spans.size() - 1));
      group.rect(layout.end() - plug, axis - 9, plug, 18);
    }
  }

  /** A connector is not to scale, but never hides the part that it ends. */
  private static double plug(ChainLayout.Span span) {
    return Math.min(8, (span.to() - span.from()) / 3);
  }

  private void balance() {
    Length balance = picture.balance();
    Length tunedFor = picture.driver().length();
    if (balance == null || tunedFor == null || !picture.isOff()) {
      return;
    }
    double mark = layout.at(tunedFor);
    double from = Math.min(mark, layout.end());
    double to = Math.max(mark, layout.end());
    boolean over = balance.metres().signum() > 0;
    Svg.Element piece =
        root.rect(from, axis - THICK / 2, to - from, THICK)
            .set("class", over ? "chain-over" : "chain-missing")
            .set("stroke", BRICK)
            .set("stroke-width", 1.4)
            .set("fill", over ? BRICK_WASH : "none");
    if (over) {
      hatch(from, to);
    } else {
      piece.set("stroke-dasharray", "4 3");
    }
    bracket(from, to, balance);
  }

  private void hatch(double from, double to) {
    Svg.Element strokes = root.group("chain-hatch").set("stroke", BRICK).set("stroke-width", 1.8);
    double low = axis + THICK / 2;
    double high = axis - THICK / 2;
    for (double x = from - THICK; x < to; x += 7) {
      double start = Math.max(x, from);
      double stop = Math.min(x + THICK, to);
      if (stop > start) {
        strokes.line(start, low - (start - x), stop, Math.max(high, low - (stop - x)));
      }
    }
  }

  /** The balance as a dimension under what is too much or missing. */
  private void bracket(double from, double to, Length balance) {
    double y = axis + BOX / 2 + 6;
    Svg.Element dimension = root.group("chain-balance").set("fill", "none").set("stroke", BRICK);
    dimension
        .add("path")
        .set("stroke-width", 1.6)
        .set("d", "M%s v8 H%s v-8".formatted(Marks.xy(from, y), Svg.number(to)));
    boolean over = balance.metres().signum() > 0;
    String anchor = over ? "start" : "end";
    double x = over ? from + 7 : to - 7;
    balanceText(x, y + 24, anchor, balance.signedMetres()).set("font-weight", "600");
    balanceText(x, y + 41, anchor, balance.signedFeet());
  }

  private Svg.Element balanceText(double x, double y, String anchor, String text) {
    return root.label(x, y, anchor, text)
        .set("class", "n chain-balance")
        .set("fill", BRICK)
        .set("font-family", ChainLabel.MONO)
        .set("font-size", TEXT);
  }

  /** What the driver is tuned for. */
  private void mark() {
    Length tunedFor = picture.driver().length();
    if (tunedFor == null) {
      String text = picture.driver().content() == Content.FITTED ? "system length not known" : "";
      markText(layout.box(), text);
      return;
    }
    double x = layout.at(tunedFor);
    root.line(x, axis - BOX / 2 - 4, x, rulerTop)
        .set("class", "chain-mark")
        .set("stroke", BLUE)
        .set("stroke-width", 2)
        .set("stroke-dasharray", "6 4");
    markText(x, "tuned for " + tunedFor + " (" + tunedFor.inFeet() + ")" + small());
  }

  private String small() {
    Length balance = picture.balance();
    if (balance == null || picture.isOff()) {
      return "";
    }
    return ", balance " + balance.signedMetres();
  }

  /** At the side of the mark on which it fits. */
  private void markText(double x, String text) {
    boolean left = x - 8 - ChainLabel.sansWidth(text) >= EDGE;
    root.label(left ? x - 8 : x + 8, markRow, left ? "end" : "start", text)
        .set("class", "chain-tuned")
        .set("fill", BLUE)
        .set("font-size", TEXT);
  }

  private void box() {
    Part driver = picture.driver();
    boolean known = driver.content() == Content.FITTED;
    double x = layout.box();
    outline(root.group("chain-part"), known).rect(x, axis - BOX / 2, ChainLayout.BOX_WIDTH, BOX);
    List<String> lines = ChainLabel.boxLines(driver);
    double first = axis - LINE * (lines.size() - 1) / 2 + 5;
    for (int i = 0; i < lines.size(); i++) {
      Svg.Element line =
          root.label(x + ChainLayout.BOX_WIDTH / 2, first + i * LINE, "middle", lines.get(i))
              .set("font-size", TEXT)
              .set("fill", i == 0 ? INK : SOFT);
      if (i > 0 && !driver.serial().isEmpty()) {
        line.set("class", "n").set("font-family", ChainLabel.MONO);
      }
    }
  }
}
