package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import loopwright.web.PathSegment;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tags as plants write them: every page of such a loop is reached by its address. */
class OddTagsTest {
  private static Shop shop;

  @BeforeAll
  static void start() {
    shop = new Shop();
  }

  @AfterAll
  static void stop() {
    shop.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"V/1", "K301 VX 1", "50%", "a#b?c=d&e", "Vörwärmer-Ö+1", "..", "V;1", "choices"})
  void everyTagHasItsPages(String tag) {
    shop.point(tag);
    String href = "/loops/" + PathSegment.of(tag);
    for (String path : List.of(href, href + "/survey", href + "/assembly", href + "/curve")) {
      Visitor.Answer answer = shop.technician.get(path);
      assertThat(answer.status()).as(path).isEqualTo(200);
      assertThat(answer.page().select("h1").text()).as(path).contains(tag);
    }
    Map<String, String> fields = Shop.fields(shop.technician.get(href + "/survey").page());
    fields.put("reason", "round");
    assertThat(shop.technician.post(href + "/survey", Shop.flat(fields)).location())
        .isEqualTo(href);
  }
}
