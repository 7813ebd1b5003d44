package loopwright.print;

import java.util.ArrayList;
import java.util.List;
import loopwright.units.Length;

/**
 * Where along the ruler each part of a chain begins and ends. Parts of known length are to scale;
 * one of unknown length takes what room looks right and is drawn broken.
 */
final class ChainLayout {
  /** User units from the tip's end of the lead to the right end of the driver. */
  static final int WIDTH = 680;

  static final double ZERO = 84;
  static final double BOX_WIDTH = 116;
  static final double RIGHT = WIDTH - 10;

  /** How far a part of unknown length reaches past what is known, as a share of that. */
  private static final double OVERSHOOT = 0.16;

  private final ChainPicture picture;
  private final double unknownMetres;
  private final double perMetre;
  private final List<Span> spans = new ArrayList<>();

  /**
   * From where to where a part is drawn.
   *
   * @param lead whether it is the probe's own
   */
  record Span(ChainPicture.Part part, boolean lead, double from, double to) {
    double middle() {
      return (from + to) / 2;
    }

    boolean isToScale() {
      return part.length() != null;
    }
  }

  ChainLayout(ChainPicture picture) {
    this.picture = picture;
    Length tunedFor = picture.driver().length();
    double system = tunedFor == null ? 0 : tunedFor.metres().doubleValue();
    double known = picture.known().metres().doubleValue();
    long unknown = picture.run().stream().filter(part -> part.length() == null).count();
    double seen = Math.max(system, known) > 0 ? Math.max(system, known) : 1;
    this.unknownMetres =
        unknown == 0 ? 0 : Math.max(seen * (1 + OVERSHOOT) - known, seen * OVERSHOOT) / unknown;
    double reach = Math.max(system, known + unknown * unknownMetres);
    this.perMetre = (RIGHT - BOX_WIDTH - ZERO) / (reach > 0 ? reach : 1);
    place();
  }

  private void place() {
    double from = ZERO;
    for (ChainPicture.Part part : picture.run()) {
      Length length = part.length();
      double metres = length == null ? unknownMetres : length.metres().doubleValue();
      boolean lead = spans.isEmpty() && picture.probe().content() != ChainPicture.Content.NONE;
      spans.add(new Span(part, lead, from, from + metres * perMetre));
      from += metres * perMetre;
    }
  }

  List<Span> spans() {
    return spans;
  }

  double perMetre() {
    return perMetre;
  }

  double at(Length length) {
    return ZERO + length.metres().doubleValue() * perMetre;
  }

  /** Where the last part ends. */
  double end() {
    return spans.isEmpty() ? ZERO : spans.get(spans.size() - 1).to();
  }

  /** Where the driver stands: at the end, or where it is tuned for when that is farther. */
  double box() {
    Length tunedFor = picture.driver().length();
    return tunedFor == null ? end() : Math.max(end(), at(tunedFor));
  }
}
