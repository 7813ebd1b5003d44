package loopwright.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.print.Labels.Block;
import loopwright.print.Labels.Place;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class LabelsTest {
  private final Labels labels = new Labels(0, 600);

  @Test
  void standOverTheirThingsWhereThereIsRoom() {
    assertThat(labels.places(List.of(new Block(100, 80), new Block(400, 80))))
        .containsExactly(new Place(100, 0), new Place(400, 0));
  }

  @Test
  void stayInsideAndOffTheirNeighbours() {
    assertThat(labels.places(List.of(new Block(10, 100), new Block(20, 100))))
        .containsExactly(new Place(50, 0), new Place(164, 0));
    assertThat(labels.places(List.of(new Block(580, 100), new Block(590, 100))))
        .containsExactly(new Place(436, 0), new Place(550, 0));
  }

  @Test
  void takeTurnsInTwoRowsWhereOneIsTooNarrow() {
    List<Block> wide = List.of(new Block(0, 250), new Block(10, 250), new Block(20, 250));
    assertThat(labels.places(wide)).extracting(Place::row).containsExactly(0, 1, 0);
  }

  @Provide
  Arbitrary<List<Block>> blocks() {
    return Combinators.combine(
            Arbitraries.doubles().between(0, 600), Arbitraries.doubles().between(1, 280))
        .as(Block::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(9)
        .map(list -> list.stream().sorted((a, b) -> Double.compare(a.over(), b.over())).toList());
  }

  @Property
  void neverTouchInARow(@ForAll("blocks") List<Block> blocks) {
    List<Place> places = labels.places(blocks);
    for (int i = 0; i < places.size(); i++) {
      double half = blocks.get(i).width() / 2;
      for (int j = i + 1; j < places.size(); j++) {
        if (places.get(i).row() == places.get(j).row()) {
          double between = places.get(j).middle() - places.get(i).middle();
          assertThat(between).isGreaterThan(half + blocks.get(j).width() / 2);
        }
      }
    }
  }
}
