package loopwright.plant;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.matching.Measures;
import loopwright.matching.PlaceView;
import loopwright.time.Viewpoint;
import loopwright.units.Reported;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What is known of points and of the channels they feed, as the rules see it. */
public final class PlacesAsJudged {
  private final PointStore points = new PointStore();
  private final ChannelSettingStore settings = new ChannelSettingStore();

  /**
   * Settings of channels as they held at that moment, as known then; what is around a point is
   * today's. A channel of which no setting is on record is left out.
   *
   * @return by point
   */
  public Map<Long, PlaceView> places(
      DSLContext sql, Collection<Long> numbers, Viewpoint viewpoint) {
    Map<Long, List<ChannelInForce>> channels = settings.measuredFrom(sql, numbers, viewpoint);
    Map<Long, PlaceView> places = new HashMap<>();
    for (Point point : points.points(sql, numbers)) {
      long number = point.id().number();
      places.put(number, view(point.details(), channels.getOrDefault(number, List.of())));
    }
    return places;
  }

  private static PlaceView view(PointDetails details, List<ChannelInForce> channels) {
    Surroundings around = details.surroundings();
    return new PlaceView(
        measures(details.kind()),
        around.shaftAlloy(),
        around.areaClass(),
        PlaceView.FieldCable.NOT_SAID,
        around.tipCelsius(),
        around.routeCelsius(),
        around.boxCelsius(),
        micrometres(details.approvedGap()),
        channels.stream().map(ChannelInForce::view).toList());
  }

  private static @Nullable Double micrometres(@Nullable Reported gap) {
    return gap == null ? null : gap.canonical();
  }

  private static Measures measures(PointKind kind) {
    return switch (kind) {
      case RADIAL -> Measures.RADIAL_VIBRATION;
      case AXIAL -> Measures.AXIAL_POSITION;
      case PHASE, SPEED -> Measures.MARK;
      case DIFFERENTIAL_EXPANSION, CASING_EXPANSION -> Measures.EXPANSION;
    };
  }
}
