package loopwright.label;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import loopwright.loop.LoopPanel;
import org.jooq.DSLContext;

/** On a loop's page: the code of its label, and where to print it with those of its parts. */
public final class LabelsOfLoop implements LoopPanel {
  @Override
  public String template() {
    return "label/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    String tag = URLEncoder.encode(loop.tag(), StandardCharsets.UTF_8);
    return new LabelOfPart.Panel(
        LabelCode.ofPoint(loop.point()).text(), "/labels?loop=" + tag, "/scan?loop=" + tag);
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }
}
