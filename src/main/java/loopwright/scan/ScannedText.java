package loopwright.scan;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.label.LabelBase;
import loopwright.label.LabelCode;
import loopwright.label.LabelProblem;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import org.jooq.DSLContext;

/** Finds out what a scanned or typed text means: a label's address, its code, a serial, a tag. */
final class ScannedText {
  private static final int LONGEST = 400;
  private static final Pattern ADDRESS = Pattern.compile("(?i)https?://.*");
  private static final Pattern LABEL = Pattern.compile("/c/([0-9A-Za-z-]+)/?");
  private static final Pattern PART = Pattern.compile("/parts/([1-9]\\d{0,17})(?:[/?#].*)?");
  private static final Pattern LOOP = Pattern.compile("/loops/([^/?#]+)(?:[/?#].*)?");

  private final Plant plant;
  private final Register register;
  private final LabelBase base;

  ScannedText(Plant plant, Register register, LabelBase base) {
    this.plant = plant;
    this.register = register;
    this.base = base;
  }

  /** What a text can mean. */
  sealed interface Meant {
    record Part(Component part) implements Meant {}

    record Loop(Point point) implements Meant {}

    /** Several parts have that serial. */
    record OneOf(List<Component> parts) implements Meant {}
  }

  /**
   * @param asked the address under which the page was asked for
   * @throws Refused if it means nothing here
   */
  Meant read(DSLContext sql, String scanned, String asked) {
    String text = scanned.strip();
    if (text.length() > LONGEST) {
      throw new Refused(ScanProblem.TOO_LONG, text.length(), LONGEST);
    }
    return ADDRESS.matcher(text).matches()
        ? address(sql, text, base.path(text, asked))
        : name(sql, text);
  }

  private Meant address(DSLContext sql, String text, String path) {
    Matcher label = LABEL.matcher(path);
    if (label.matches()) {
      return named(sql, LabelCode.read(label.group(1)));
    }
    Matcher part = PART.matcher(path);
    if (part.matches()) {
      long number = Long.parseLong(part.group(1));
      return new Meant.Part(
          component(sql, number).orElseThrow(() -> new Refused(ScanProblem.NO_PART, number)));
    }
    Matcher loop = LOOP.matcher(path);
    if (loop.matches()) {
      String tag = URLDecoder.decode(loop.group(1).replace("+", "%2B"), StandardCharsets.UTF_8);
      return new Meant.Loop(
          plant.pointTagged(sql, tag).orElseThrow(() -> new Refused(ScanProblem.NO_LOOP, tag)));
    }
    throw new Refused(ScanProblem.NO_LABEL, text);
  }

  private Meant named(DSLContext sql, LabelCode code) {
    return switch (code.named()) {
      case COMPONENT ->
          component(sql, code.number())
              .<Meant>map(Meant.Part::new)
              .orElseThrow(() -> new Refused(LabelProblem.NO_SUCH_RECORD, code, "part"));
      case POINT ->
          plant
              .point(sql, new PointId(code.number()))
              .<Meant>map(Meant.Loop::new)
              .orElseThrow(() -> new Refused(LabelProblem.NO_SUCH_RECORD, code, "loop"));
    };
  }

  private Optional<Component> component(DSLContext sql, long number) {
    return register.component(sql, new ComponentId(number));
  }

  /** A serial that looks like a code of ours, and is one too, is asked back. */
  private Meant name(DSLContext sql, String text) {
    Map<Long, Component> parts = new LinkedHashMap<>();
    register.labelled(sql, text).forEach(part -> parts.put(part.id().number(), part));
    Optional<Point> point = plant.pointTagged(sql, text);
    if (LabelCode.looksLikeOne(text)) {
      try {
        Meant coded = named(sql, LabelCode.read(text));
        if (parts.isEmpty() && point.isEmpty()) {
          return coded;
        }
        if (coded instanceof Meant.Part part) {
          parts.put(part.part().id().number(), part.part());
        }
      } catch (Refused misread) {
        if (parts.isEmpty() && point.isEmpty()) {
          throw misread;
        }
      }
    }
    if (parts.size() == 1) {
      return new Meant.Part(parts.values().iterator().next());
    }
    if (parts.size() > 1) {
      return new Meant.OneOf(new ArrayList<>(parts.values()));
    }
    return point
        .<Meant>map(Meant.Loop::new)
        .orElseThrow(() -> new Refused(ScanProblem.UNKNOWN, text));
  }
}
