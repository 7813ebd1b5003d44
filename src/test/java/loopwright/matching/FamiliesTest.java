package loopwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.units.Length;
import org.junit.jupiter.api.Test;

class FamiliesTest {
  private final Families families =
      Families.of(
          List.of(
              FamilyView.of("R8")
                  .cableLengths(List.of(Length.ofMetres("4.5"), Length.ofMetres("4")))
                  .build(),
              FamilyView.of("Q11").build()),
          List.of(new InterchangeablePair("R8", "Q11", "A. Fitter")));

  @Test
  void comparesCodesWithoutRegardToCase() {
    assertThat(families.named(" r8 ")).get().extracting(FamilyView::code).isEqualTo("R8");
    assertThat(families.named("R88")).isEmpty();
  }

  @Test
  void namesTheNearestCode() {
    assertThat(families.nearest("q1")).contains("Q11");
    assertThat(Families.NOT_GIVEN.nearest("q1")).isEmpty();
  }

  @Test
  void pairsWorkBothWays() {
    assertThat(families.pair("q11", "R8")).isPresent();
    assertThat(families.pair("R8", "q11")).isPresent();
    assertThat(families.pair("R8", "R8")).isEmpty();
  }

  @Test
  void keepsLengthsInOrder() {
    assertThat(families.named("R8").orElseThrow().lengthsOf(PartKind.CABLE))
        .containsExactly(Length.ofMetres("4"), Length.ofMetres("4.5"));
  }
}
