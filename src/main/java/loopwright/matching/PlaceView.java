package loopwright.matching;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the point that a loop serves. Texts are empty and numbers null where nothing is
 * known.
 *
 * @param areaClass as the site writes it, see {@link AreaClass#read}
 * @param fieldCable from the driver to the barrier or monitor
 * @param tipCelsius at the tip, °C
 * @param routeCelsius along lead and cables, °C
 * @param boxCelsius where the driver is, °C
 * @param setGapMicrometres approved gap at rest, µm
 * @param channels that the loop measures for
 */
public record PlaceView(
    Measures measures,
    String shaftAlloy,
    String areaClass,
    FieldCable fieldCable,
    @Nullable BigDecimal tipCelsius,
    @Nullable BigDecimal routeCelsius,
    @Nullable BigDecimal boxCelsius,
    @Nullable Double setGapMicrometres,
    List<ChannelView> channels) {
  public static final PlaceView NOT_SAID =
      new PlaceView(
          Measures.NOT_SAID, "", "", FieldCable.NOT_SAID, null, null, null, null, List.of());

  public PlaceView {
    channels = List.copyOf(channels);
  }

  public PlaceView withFieldCable(FieldCable cable) {
    return new PlaceView(
        measures,
        shaftAlloy,
        areaClass,
        cable,
        tipCelsius,
        routeCelsius,
        boxCelsius,
        setGapMicrometres,
        channels);
  }

  /**
   * The cable in the field.
   *
   * @param metres its length, m
   * @param picofaradsPerMetre pF/m
   * @param microhenriesPerMetre µH/m
   */
  public record FieldCable(
      @Nullable BigDecimal metres,
      @Nullable BigDecimal picofaradsPerMetre,
      @Nullable BigDecimal microhenriesPerMetre) {
    public static final FieldCable NOT_SAID = new FieldCable(null, null, null);
  }
}
