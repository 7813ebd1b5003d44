package loopwright.loop;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import loopwright.matching.PartView;
import loopwright.problem.Text;
import loopwright.register.ComponentId;
import loopwright.register.PartPanel;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import loopwright.web.PathSegment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/**
 * Disputed records as people see them: on the first page, on the pages of both loops and on the
 * part's, with the way to decide them.
 */
public final class Disputes implements LoopPanel, PartPanel {
  private static final int MOST = 200;
  private static final int URGENCY = 3;

  private final DisputeStore store = new DisputeStore();
  private final PlacementStore placements = new PlacementStore();
  private final PointStore points = new PointStore();
  private final PartFacts parts;

  public Disputes(PartFacts parts) {
    this.parts = parts;
  }

  /**
   * One claim, and the form that says it was misread.
   *
   * @param href the loop
   */
  record Side(String tag, String href, String correctHref) {}

  record Row(String part, long partId, String at, Side standing, Side other) {}

  record Panel(List<Row> rows, boolean past) {}

  @Override
  public String template() {
    return "loop/disputes";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    List<Dispute> open = store.openAt(sql, List.of(loop.point()), loop.viewpoint());
    boolean past = !loop.viewpoint().equals(Viewpoint.LATEST);
    return new Panel(rows(sql, open), past);
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }

  @Override
  public Object model(DSLContext sql, ComponentId part, UnitsShown units) {
    return new Panel(rows(sql, store.openOf(sql, part.number())), false);
  }

  private List<Row> rows(DSLContext sql, List<Dispute> disputes) {
    Map<Long, PartView> views = views(sql, disputes);
    return disputes.stream()
        .map(
            dispute ->
                new Row(
                    words(views, dispute),
                    dispute.part().number(),
                    SiteMoment.shown(dispute.at(), dispute.standing().zone()),
                    side(sql, dispute, dispute.standing()),
                    side(sql, dispute, dispute.other())))
        .toList();
  }

  private Map<Long, PartView> views(DSLContext sql, Collection<Dispute> disputes) {
    List<Long> numbers = disputes.stream().map(dispute -> dispute.part().number()).toList();
    return numbers.isEmpty() ? Map.of() : parts.parts(sql, numbers);
  }

  private static String words(Map<Long, PartView> views, Dispute dispute) {
    PartView view = views.get(dispute.part().number());
    return Text.capital(view == null ? "a part" : view.words());
  }

  private Side side(DSLContext sql, Dispute dispute, Dispute.Claim claim) {
    Instant until =
        placements.at(sql, claim.point(), dispute.at()).stream()
            .filter(placed -> placed.slot() == claim.slot())
            .map(placed -> placed.span().until())
            .findFirst()
            .orElse(Span.OPEN);
    StayWords clock = new StayWords(Map.of(), claim.zone());
    String href = "/loops/" + PathSegment.of(claim.tag());
    String query = StayLines.query(claim.slot(), new Span(dispute.at(), until), clock);
    return new Side(claim.tag(), href, href + "/correction?" + query);
  }

  List<Need> needs(DSLContext sql, Instant now) {
    List<Dispute> open = store.open(sql, MOST);
    Map<Long, PartView> views = views(sql, open);
    TreeSet<Long> claimed = new TreeSet<>();
    open.forEach(dispute -> claimed.add(dispute.other().point()));
    List<Need> needs = new ArrayList<>();
    for (PointStore.Located at : points.located(sql, claimed)) {
      open.stream()
          .filter(dispute -> dispute.other().point() == at.point())
          .forEach(dispute -> needs.add(need(dispute, words(views, dispute), at)));
    }
    return needs;
  }

  private static Need need(Dispute dispute, String part, PointStore.Located at) {
    Dispute.Claim other = dispute.other();
    return new Need(
        "attention",
        URGENCY,
        "/loops/" + PathSegment.of(other.tag()),
        other.tag(),
        at.trainCode() + ", " + at.site(),
        at.train(),
        "Disputed: %s %s: one serial was misread.".formatted(part, dispute.seenFrom(other.point())),
        dispute.at(),
        "shop",
        "Read the serial at %s and at %s, then correct the record that is wrong."
            .formatted(dispute.standing().tag(), other.tag()));
  }
}
