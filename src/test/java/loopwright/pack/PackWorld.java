package loopwright.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import loopwright.outage.Work;
import loopwright.testing.FilledForm;
import loopwright.testing.Shop;
import loopwright.testing.Visitor;
import org.jsoup.nodes.Document;

/** A shop with an outage planned over its loops, driven through the pages. */
public final class PackWorld implements AutoCloseable {
  public final Shop shop = new Shop();
  final Visitor technician = shop.technician;
  public final Visitor planner = shop.app.as("planner");
  final String outage;

  /** V-1 and V-2 hold sets in balance, V-3 nothing known; all three are taken. */
  public PackWorld() {
    for (int n = 1; n <= 3; n++) {
      shop.point("V-" + n);
      shop.set(n);
    }
    survey("V-1", 1);
    survey("V-2", 2);
    outage = plan("Spring");
    take(outage, "V-1", "V-2", "V-3");
  }

  private void survey(String tag, int n) {
    assertThat(shop.survey(tag, "2026-02-20", "P-" + n, "C-" + n, "D-" + n).status())
        .isEqualTo(303);
  }

  /** Address of a fresh outage on the only train. */
  public String plan(String name) {
    Document page = planner.get("/outages/new").page();
    String location =
        planner
            .post(
                "/outages/new",
                "name",
                name,
                "begins",
                "2026-02-25",
                "ends",
                "2026-03-12",
                "team",
                "two of the shop",
                "train",
                page.select("input[name=train]").first().attr("value"),
                "reason",
                "agreed")
            .location();
    assertThat(location).endsWith("/scope");
    return location.replace("/scope", "");
  }

  /** Takes loops into an outage. */
  public void take(String at, String... tags) {
    settle(at, "in", tags);
  }

  /** Takes loops out of an outage again. */
  public void leaveOut(String at, String... tags) {
    settle(at, "out", tags);
  }

  private void settle(String at, String what, String... tags) {
    Document page = planner.get(at + "/scope?show=all").page();
    List<String> fields = new ArrayList<>(List.of("do", what, "reason", "because"));
    for (Work work :
        List.of(Work.VERIFY, Work.AS_FOUND, Work.SET_GAP, Work.AS_LEFT, Work.RESTORE)) {
      fields.addAll(List.of("work", work.word()));
    }
    for (String tag : tags) {
      fields.addAll(
          List.of("loop", page.select("input[name=loop][aria-label=" + tag + "]").attr("value")));
    }
    assertThat(planner.post(at + "/scope", fields.toArray(String[]::new)).status()).isEqualTo(303);
  }

  /** Issues a revision. */
  public void issue(String note) {
    planner.get(outage + "/pack");
    Visitor.Answer answer = planner.post(outage + "/pack", "note", note);
    assertThat(answer.page().select(".complaints").text()).isEmpty();
    assertThat(answer.status()).isEqualTo(303);
  }

  /** Address of the outage. */
  public String outage() {
    return outage;
  }

  public Visitor technician() {
    return technician;
  }

  /** Fills in the newest workbook for these loops, brings it back and keeps it. */
  public void bringBackDone(String... tags) {
    FilledSheet sheet = FilledSheet.of(file("1.xlsx"));
    for (String tag : tags) {
      sheet.done(tag);
    }
    bringBack(sheet);
  }

  /**
   * Brings one back as done of which the as-found curve was too flat and the as-left one good.
   *
   * @param slope mV/µm as found
   */
  public void bringBackFoundFlat(String tag, double slope) {
    bringBack(
        FilledSheet.of(file("1.xlsx"))
            .done(tag)
            .curve(tag, Column.AS_FOUND, -2.1, slope)
            .set(tag, Item.NOTHING_TOUCHED, Column.AS_LEFT, "no")
            .set(tag, Item.DONE_BY, Column.AS_LEFT, "T. Echnician")
            .set(tag, Item.MEASURED_AT, Column.AS_LEFT, "2026-03-01 09:00")
            .curve(tag, Column.AS_LEFT, -2.1, 7.874));
  }

  private void bringBack(FilledSheet sheet) {
    Document page = technician.get(outage + "/returns").page();
    Visitor.Answer sent =
        FilledForm.of(page, "form[enctype]")
            .choose("file", "pack.xlsx", sheet.workbook())
            .send(technician, "do", "look");
    Visitor.Answer kept =
        FilledForm.of(technician.get(sent.location()).page(), "main form[method=post]")
            .send(technician, "do", "keep");
    assertThat(kept.status()).isEqualTo(303);
  }

  byte[] file(String path) {
    return technician.bytes(outage + "/pack/" + path);
  }

  @Override
  public void close() {
    shop.close();
  }
}
