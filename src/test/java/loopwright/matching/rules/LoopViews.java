package loopwright.matching.rules;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import loopwright.matching.Alloys;
import loopwright.matching.Calibration;
import loopwright.matching.Elsewhere;
import loopwright.matching.Evidence;
import loopwright.matching.Fact;
import loopwright.matching.Families;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartName;
import loopwright.matching.PartSheet;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.matching.PlaceView;
import loopwright.matching.Slot;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.DomainContextBase;
import org.jspecify.annotations.Nullable;

/** Every kind of legal view, sensible or not. */
public final class LoopViews extends DomainContextBase {

  @Provide
  Arbitrary<LoopView> loops() {
    return Combinators.combine(
            slots(PartKind.PROBE, PartKind.PROBE, PartKind.PROBE, PartKind.ACCELEROMETER),
            slots(PartKind.CABLE, PartKind.CABLE, PartKind.ADAPTER, PartKind.FEEDTHROUGH)
                .list()
                .ofMaxSize(3),
            slots(PartKind.DRIVER, PartKind.DRIVER, PartKind.TRANSMITTER, PartKind.CABLE),
            Arbitraries.of(Families.NOT_GIVEN, Loops.FAMILIES, Loops.FAMILIES),
            Arbitraries.of(Fact.class).set(),
            calibrations().injectNull(0.3),
            Combinators.combine(
                    slots(PartKind.BARRIER, PartKind.ISOLATOR, PartKind.CABLE),
                    Places.places(),
                    Arbitraries.of(Alloys.NOT_GIVEN, Places.ALLOYS),
                    Arbitraries.frequencyOf(
                        net.jqwik.api.Tuple.of(8, Arbitraries.just(List.<String>of())),
                        net.jqwik.api.Tuple.of(1, Arbitraries.just(List.of("Claimed twice.")))))
                .as(Around::new))
        .as(
            (probe, path, driver, families, facts, calibration, around) ->
                new LoopView(
                    "T-1",
                    probe,
                    path,
                    driver,
                    families,
                    facts,
                    calibration,
                    around.barrier(),
                    around.place(),
                    around.alloys(),
                    around.disputed()));
  }

  private record Around(Slot barrier, PlaceView place, Alloys alloys, List<String> disputed) {}

  private static Arbitrary<Slot> slots(PartKind... kinds) {
    return Arbitraries.frequencyOf(
        net.jqwik.api.Tuple.of(8, Arbitraries.of(kinds).flatMap(LoopViews::parts).map(Slot::of)),
        net.jqwik.api.Tuple.of(1, Arbitraries.just(Slot.NONE_FITTED)),
        net.jqwik.api.Tuple.of(1, Arbitraries.just(Slot.NOT_RECORDED)),
        net.jqwik.api.Tuple.of(1, Arbitraries.of("", "displaced by survey").map(Slot::unknown)));
  }

  private static Arbitrary<PartView> parts(PartKind kind) {
    Arbitrary<PartView.Builder> first =
        Combinators.combine(
                names(),
                Arbitraries.of("R8", "R8", "R9", "N5", "nowhere").injectNull(0.4),
                lengths().injectNull(0.2),
                metres().injectNull(0.6))
            .as(
                (name, family, length, measured) ->
                    PartView.of(kind)
                        .name(name)
                        .family(family)
                        .length(length)
                        .measuredLength(measured));
    return Combinators.combine(
            first,
            Arbitraries.of("5", "8", "8.0").map(BigDecimal::new).injectNull(0.5),
            Combinators.combine(scaleFactors().injectNull(0.5), Places.sheets())
                .as(ScaleAndSheet::new),
            Arbitraries.of(PartState.class),
            Arbitraries.of("pack 12").injectNull(0.8),
            Arbitraries.of("T-1", "T-2").map(tag -> new Elsewhere(tag, "")).list().ofMaxSize(4))
        .as(
            (part, tip, said, state, promised, elsewhere) ->
                part.tipMillimetres(tip)
                    .scaleFactor(said.scale())
                    .sheet(said.sheet())
                    .state(state)
                    .promisedTo(promised)
                    .elsewhere(elsewhere)
                    .build());
  }

  private record ScaleAndSheet(@Nullable ScaleFactor scale, PartSheet sheet) {}

  private static Arbitrary<PartName> names() {
    return Arbitraries.of(
        PartName.NOT_IDENTIFIED,
        PartName.serial("00417"),
        PartName.serial("PR-1"),
        new PartName("Maker", "M", null, "12"));
  }

  private static Arbitrary<Length> metres() {
    return Arbitraries.oneOf(
        Arbitraries.of("0.5", "1.0", "3.5", "4.0", "4.05", "4.5", "5.0", "9").map(Length::ofMetres),
        Arbitraries.bigDecimals()
            .between(new BigDecimal("0.1"), new BigDecimal("60"))
            .ofScale(5)
            .map(Length::new));
  }

  private static Arbitrary<KnownLength> lengths() {
    return Combinators.combine(metres(), Arbitraries.of(Evidence.class)).as(KnownLength::new);
  }

  private static Arbitrary<ScaleFactor> scaleFactors() {
    return Arbitraries.of(
        ScaleFactor.millivoltsPerMil("200"),
        ScaleFactor.millivoltsPerMicrometre("7.87"),
        ScaleFactor.millivoltsPerMicrometre("8"));
  }

  private static Arbitrary<Calibration> calibrations() {
    return Combinators.combine(
            Arbitraries.of(Calibration.Outcome.class),
            Arbitraries.of(List.of(), List.of("extension cable XC-1")),
            Arbitraries.of("", "4140", "304", "unheard of"),
            Arbitraries.doubles().between(1, 10).injectNull(0.3))
        .as(
            (outcome, changed, alloy, asf) ->
                new Calibration(
                    LocalDate.parse("2025-11-02"),
                    outcome,
                    changed.stream().map(String::valueOf).toList(),
                    alloy,
                    asf));
  }

  /** Whether a part is fitted whose length nobody knows. */
  static boolean lacksALength(LoopView loop) {
    return loop.parts().stream().anyMatch(part -> part.length() == null);
  }

  static <T> List<T> reversed(List<T> list) {
    Object[] all = list.toArray();
    java.util.Collections.reverse(Arrays.asList(all));
    @SuppressWarnings("unchecked")
    List<T> reversed = (List<T>) Arrays.asList(all);
    return reversed;
  }
}
