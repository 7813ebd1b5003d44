package loopwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.people.People;
import loopwright.testing.DemoSite;
import loopwright.testing.StatementPlans;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Walks the invented plant from its first page: every link has a page, every form an address that
 * takes it. Of pages that differ only by the record they show, two are walked.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class EveryWayLeadsSomewhereTest {
  private static final int OF_ONE_KIND = 2;
  private static final int MOST_PAGES = 400;

  private static DemoSite site;
  private static StatementPlans plans;

  @BeforeAll
  static void open() {
    site = new DemoSite();
    plans = new StatementPlans(site.place());
  }

  @AfterAll
  static void close() {
    plans.close();
    site.close();
  }

  @ParameterizedTest
  @Order(1)
  @ValueSource(strings = {"technician", "planner", "engineer", "administrator"})
  void fromTheFirstPage(String role) {
    Walk walk = new Walk(role);
    walk.from("/");
    assertThat(walk.nowhere).isEmpty();
    assertThat(walk.kinds.size()).as("kinds of pages seen").isGreaterThan(60);
    assertThat(walk.formsSeen.size()).as("kinds of forms seen").isGreaterThan(10);
  }

  /** Of the statements that the walks asked; either reads a whole table on every page. */
  @Test
  @Order(Integer.MAX_VALUE)
  void listsOfKeysAndFirstRowsAreFoundByIndex() {
    assertThat(plans.statements()).hasSizeGreaterThan(100);
    assertThat(plans.listsPassedOver()).isEmpty();
    assertThat(plans.sortedWhole()).isEmpty();
  }

  private static final class Walk {
    private final Visitor visitor;
    private final Visitor stranger = new Visitor(site.address());
    private final Deque<String> ahead = new ArrayDeque<>();
    private final Set<String> known = new HashSet<>();
    final Map<String, Integer> kinds = new HashMap<>();
    final Set<String> formsSeen = new HashSet<>();
    final List<String> nowhere = new ArrayList<>();

    Walk(String role) {
      visitor = new Visitor(site.address());
      assertThat(visitor.signIn(role, People.DEMO_PASSWORD).status()).isEqualTo(303);
    }

    void from(String first) {
      ahead.add(first);
      for (int pages = 0; !ahead.isEmpty() && pages < MOST_PAGES; pages++) {
        look(ahead.remove());
      }
    }

    private void look(String path) {
      if (kinds.merge(kind(path), 1, Integer::sum) > OF_ONE_KIND) {
        return;
      }
      Visitor.Answer answer = visitor.get(path);
      if (answer.status() != 200) {
        nowhere.add(answer.status() + " " + path);
      } else if (answer.header("Content-Type").startsWith("text/html")) {
        Document page = answer.page();
        page.setBaseUri(site.address().resolve(path).toString());
        page.select("a[href]").forEach(link -> ahead(link.absUrl("href")));
        page.select("form").forEach(form -> sent(path, form));
      }
    }

    private void ahead(String address) {
      URI uri = URI.create(address.replaceAll("#.*", ""));
      if (site.address().getAuthority().equals(uri.getAuthority())) {
        String path = uri.getRawPath() + (uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery());
        if (known.add(path) && kinds.getOrDefault(kind(path), 0) < OF_ONE_KIND) {
          ahead.add(path);
        }
      }
    }

    /** A form may also be sent by a button to an address of its own. */
    private void sent(String page, Element form) {
      // without an address it is sent to the page that it stands on
      String own = form.attr("action").isEmpty() ? form.baseUri() : form.absUrl("action");
      List<String> addresses = new ArrayList<>(List.of(own));
      form.select("[formaction]").forEach(button -> addresses.add(button.absUrl("formaction")));
      for (String address : addresses) {
        URI uri = URI.create(address);
        String path = uri.getRawPath() + (uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery());
        if (!formsSeen.add(form.attr("method") + " " + kind(path))) {
          continue;
        }
        // a stranger is asked to sign in where a form is taken, and told that it isn't elsewhere
        int status =
            form.attr("method").equals("post")
                ? stranger.postBare(path, new String[0]).status()
                : visitor.get(path).status();
        if (status == 404 || status == 405) {
          nowhere.add(status + " form of " + page + " sent to " + path);
        }
      }
    }

    /** The address without the record it names. */
    private static String kind(String path) {
      String bare = path.replaceAll("\\?.*", "").replaceAll("[^/]*\\d[^/]*", "N");
      String query = path.contains("?") ? path.replaceAll(".*\\?", "") : "";
      return bare + "?" + query.replaceAll("=[^&]*", "");
    }
  }
}
