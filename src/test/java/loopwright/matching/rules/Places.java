package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.List;
import loopwright.matching.AlloyGroup;
import loopwright.matching.Alloys;
import loopwright.matching.Approval;
import loopwright.matching.AreaClass;
import loopwright.matching.ChannelView;
import loopwright.matching.Connector;
import loopwright.matching.Entity;
import loopwright.matching.Measures;
import loopwright.matching.PartSheet;
import loopwright.matching.PlaceView;
import loopwright.matching.Range;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.jspecify.annotations.Nullable;

/** Points, channels, data sheets and alloys for tests. All names are invented. */
final class Places {
  /**
   * Slopes after vibration handbooks, from memory: 4140 200, 300 series 250, aluminium 370 mV/mil.
   */
  static final Alloys ALLOYS =
      Alloys.of(
          List.of(
              new AlloyGroup(
                  "low-alloy steel",
                  true,
                  1.0,
                  "vibration handbooks, from memory",
                  List.of("4140", "42CrMo4")),
              new AlloyGroup(
                  "austenitic stainless steel",
                  true,
                  1.25,
                  "vibration handbooks, from memory",
                  List.of("304", "316")),
              new AlloyGroup(
                  "aluminium", false, 1.85, "vibration handbooks, from memory", List.of("6061")),
              new AlloyGroup("somebody's own", null, null, "", List.of("X-17"))));

  private Places() {}

  static PlaceView radial(ChannelView... channels) {
    return place(Measures.RADIAL_VIBRATION, 1250.0, channels);
  }

  static PlaceView axial(ChannelView... channels) {
    return place(Measures.AXIAL_POSITION, 1250.0, channels);
  }

  static PlaceView place(Measures measures, @Nullable Double gap, ChannelView... channels) {
    return new PlaceView(
        measures, "", "", PlaceView.FieldCable.NOT_SAID, null, null, null, gap, List.of(channels));
  }

  static PlaceView ofAlloy(String shaft) {
    return new PlaceView(
        Measures.RADIAL_VIBRATION,
        shaft,
        "",
        PlaceView.FieldCable.NOT_SAID,
        null,
        null,
        null,
        null,
        List.of());
  }

  static PlaceView inArea(String area, PlaceView.FieldCable cable) {
    return new PlaceView(
        Measures.RADIAL_VIBRATION, "", area, cable, null, null, null, null, List.of());
  }

  static PlaceView celsius(@Nullable String tip, @Nullable String route, @Nullable String box) {
    return new PlaceView(
        Measures.RADIAL_VIBRATION,
        "",
        "",
        PlaceView.FieldCable.NOT_SAID,
        number(tip),
        number(route),
        number(box),
        null,
        List.of());
  }

  static @Nullable BigDecimal number(@Nullable String text) {
    return text == null || text.isBlank() ? null : new BigDecimal(text.strip());
  }

  /** An empty text is not known. */
  static Range range(@Nullable String low, @Nullable String high) {
    return new Range(number(low), number(high));
  }

  static PlaceView.FieldCable cable(
      @Nullable String metres, @Nullable String picofarads, @Nullable String microhenries) {
    return new PlaceView.FieldCable(number(metres), number(picofarads), number(microhenries));
  }

  static Arbitrary<PlaceView> places() {
    return Combinators.combine(
            Arbitraries.of(Measures.class),
            Arbitraries.of("", "4140", "304", "6061", "X-17", "unheard of"),
            Arbitraries.of("", "Zone 1 IIC T4", "Zone 2 IIB T3", "Div 2", "safe area", "blue"),
            Arbitraries.of(
                PlaceView.FieldCable.NOT_SAID, cable("150", "200", "0.7"), cable("150", null, "1")),
            celsius().injectNull(0.4),
            celsius().injectNull(0.4),
            Arbitraries.doubles().between(100, 3000).injectNull(0.3),
            channels().list().ofMaxSize(2))
        .as(
            (measures, alloy, area, cable, tip, box, gap, channels) ->
                new PlaceView(measures, alloy, area, cable, tip, tip, box, gap, channels));
  }

  private static Arbitrary<BigDecimal> celsius() {
    return Arbitraries.bigDecimals()
        .between(BigDecimal.valueOf(-60), BigDecimal.valueOf(200))
        .ofScale(1);
  }

  private static Arbitrary<ChannelView> channels() {
    return Combinators.combine(
            Arbitraries.of(
                    ScaleFactor.millivoltsPerMil("200"),
                    ScaleFactor.millivoltsPerMicrometre("7.87"),
                    ScaleFactor.millivoltsPerMicrometre("9.1"))
                .injectNull(0.3),
            Arbitraries.of("", "shaft is of 304"),
            ranges(),
            ranges(),
            Arbitraries.of(Unit.MICROMETRE, Unit.MIL),
            Arbitraries.of(Range.NOT_SAID, Range.of("-16.75", "-2.75"), Range.of("-26", "0")),
            Arbitraries.of("-10", "-8.5").map(BigDecimal::new).injectNull(0.3),
            Arbitraries.of(true, false).injectNull(0.3))
        .as(
            (scale, reason, full, danger, unit, ok, zero, toward) ->
                new ChannelView("R1/2/3", scale, reason, full, danger, unit, ok, zero, toward));
  }

  private static Arbitrary<Range> ranges() {
    return Arbitraries.of(
        Range.NOT_SAID,
        Range.of("-700", "700"),
        range(null, "130"),
        range("-40", null),
        Range.of("0", "3000"));
  }

  static Arbitrary<PartSheet> sheets() {
    Arbitrary<Connector> connectors =
        Combinators.combine(
                Arbitraries.of("miniature coaxial", "weatherproof"),
                Arbitraries.of(Connector.Gender.class))
            .as(Connector::new);
    Arbitrary<Approval> approvals =
        Combinators.combine(
                Arbitraries.of("", "EX 12"),
                Arbitraries.of(Approval.Level.class),
                Arbitraries.of(AreaClass.GasGroup.class),
                Arbitraries.of(AreaClass.TemperatureClass.class),
                Arbitraries.of(true, false),
                Arbitraries.of(true, false))
            .as(Approval::new);
    return Combinators.combine(
            connectors.injectNull(0.3),
            connectors.injectNull(0.3),
            Arbitraries.of(Range.NOT_SAID, Range.of("-35", "120"), range(null, "65")),
            approvals.injectNull(0.3),
            Arbitraries.of(
                Entity.NOT_GIVEN,
                Entity.of("28", "93", "650", "83", "3050"),
                Entity.of("28", "140", "910", "5.7", "850")))
        .as(PartSheet::new);
  }
}
