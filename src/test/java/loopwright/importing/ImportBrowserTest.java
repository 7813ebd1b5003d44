package loopwright.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.people.People;
import loopwright.testing.Browser;
import loopwright.testing.DemoSite;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** A planner brings in a list in the browser: plan, problems, reason, receipt; desk and phone. */
class ImportBrowserTest {
  @RegisterExtension static final Browser browser = new Browser();
  @TempDir static Path folder;

  private static DemoSite site;

  @BeforeAll
  static void open() {
    site = new DemoSite();
  }

  @AfterAll
  static void close() {
    if (site != null) {
      site.close();
    }
  }

  private static String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toAbsolutePath().toString();
  }

  private static void choose(String paths) {
    browser.driver().get(site.address().resolve("/import").toString());
    browser.find("#files").sendKeys(paths);
    browser.find("main .act.go").click();
    browser.until(there -> there.getCurrentUrl().matches(".*/import/[0-9a-f]+"));
  }

  /** In both widths, and nothing sticks out sideways. */
  private static void look(String name) {
    for (int width : new int[] {Browser.DESK, Browser.PHONE}) {
      browser.width(width);
      browser.screenshot("import-" + name + "-" + width);
      assertThat(browser.overflowsSideways()).as(name + " at " + width).isFalse();
    }
    browser.width(Browser.DESK);
  }

  @Test
  void aListIsPlannedMendedAndWritten() throws IOException {
    browser.signIn(site.address().toString(), "planner", People.DEMO_PASSWORD);
    browser.driver().get(site.address().resolve("/import").toString());
    look("choose");

    String heading = "kind,maker,model,serial,family,length_m,length_evidence,store,bin\n";
    String bad =
        heading
            + "probe,Ormeling,Linnet probe 1.0m,0099001,LINNET-5,1.0,read on part,Halvenmouth store,D-01\n"
            + "probe,Ormeling,Linnet probe 1.0m,0099002,LINET-5,\"1,0\",read on part,Halvenmouth store,D-02\n"
            + "driver,Ormeling,Linnet driver 5.0m,0099003,LINNET-5,500,read on part,Halvenmouth store,D-03\n";
    choose(file("new-parts.csv", bad));
    assertThat(browser.find("#problems").isDisplayed()).isTrue();
    assertThat(browser.find("main").getText())
        .contains("Did you mean 'LINNET-5'?")
        .doesNotContain("Write these");
    look("problems");

    String good =
        bad.replace("LINET-5", "LINNET-5").replace("\"1,0\"", "1.0").replace(",500,", ",5.0,");
    String moved =
        heading
            + "probe,Ormeling,Linnet probe 0.5m,0041003,LINNET-5,0.5,certificate,Halvenmouth store,E-07\n";
    choose(file("new-parts.csv", good) + "\n" + file("moved.csv", moved));
    assertThat(browser.find("main").getText()).contains("add 3 rows and change 1 row");
    look("plan");
    browser.find("#reason").sendKeys("Delivery of the week");
    browser.find("main form .act.go").click();
    browser.until(there -> there.getTitle().startsWith("Import receipt"));
    assertThat(browser.find("main").getText())
        .contains("Delivery of the week")
        .contains("Demo Planner");
    look("receipt");
  }
}
