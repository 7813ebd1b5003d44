package loopwright.circuit;

import java.util.Collection;
import java.util.List;
import loopwright.register.ComponentId;
import loopwright.register.PartPanel;
import loopwright.web.PathSegment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** On the page of a barrier or isolator: behind which drivers it stands. */
public final class BarrierOfPart implements PartPanel {
  private final Circuits circuits;

  public BarrierOfPart(Circuits circuits) {
    this.circuits = circuits;
  }

  record Place(String tag, String href) {}

  @Override
  public String template() {
    return "circuit/barrier";
  }

  @Override
  public Object model(DSLContext sql, ComponentId part, UnitsShown units) {
    Collection<String> tags = circuits.tagsWith(sql, part.number());
    List<Place> places =
        tags.stream().map(tag -> new Place(tag, "/loops/" + PathSegment.of(tag))).toList();
    return places;
  }
}
