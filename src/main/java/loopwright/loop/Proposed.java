package loopwright.loop;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.matching.PartView;
import loopwright.web.Form;
import org.jooq.DSLContext;

/** A chain as typed into a form, judged as it would be if it were left so now. */
public final class Proposed {
  private final PartFacts parts;
  private final Judging judging;
  private final Configuration configuration;
  private final InstantSource clock;

  public Proposed(
      PartFacts parts, Judging judging, Configuration configuration, InstantSource clock) {
    this.parts = parts;
    this.judging = judging;
    this.configuration = configuration;
    this.clock = clock;
  }

  /** Names of the fields of such a form, in chain order. */
  public static List<String> fields() {
    return Stream.of(Slot.values()).map(Slot::word).toList();
  }

  /** The chain judged; complaints stay with the form where a serial can't be taken. */
  public Optional<Judging.Judged> judged(DSLContext sql, long point, String tag, Form form) {
    return new ChangeForm(form, parts)
        .chain(sql, configuration.at(sql, point, clock.instant()))
        .map(chain -> judging.judge(sql, new Judging.Subject(point, tag), chain, clock.instant()));
  }

  /**
   * The chain as typed, for a survey or an assembly at that moment; complaints stay with the form,
   * each at its slot.
   */
  public Optional<Chain> chain(DSLContext sql, long point, Form form, Instant at, ZoneId zone) {
    ChangeForm typed = new ChangeForm(form, parts);
    return typed
        .chain(sql, configuration.at(sql, point, clock.instant()))
        .filter(chain -> typed.complainOfUnborn(sql, chain, at, zone));
  }

  /** A form that holds what is recorded as fitted now. */
  public Form asFitted(DSLContext sql, long point, ZoneId zone) {
    List<Placed> chain = configuration.at(sql, point, clock.instant());
    List<Long> components =
        chain.stream().flatMap(placed -> placed.content().component().stream().boxed()).toList();
    Map<Slot, String> texts = TypedPart.texts(sql, parts, chain, parts.parts(sql, components));
    return ChangeForm.filled(chain, texts, clock.instant(), zone);
  }

  /** The parts that a fingerprint names, in words. */
  public List<String> partsOf(DSLContext sql, String fingerprint) {
    Map<Slot, Long> components = Combinations.components(fingerprint);
    Map<Long, PartView> views = parts.parts(sql, components.values());
    return components.values().stream()
        .map(number -> views.containsKey(number) ? views.get(number).words() : "?")
        .toList();
  }

  /**
   * A chain as it stands in the address of such a form: every field the form usually has, so that
   * nothing of the record stays in between.
   */
  public String query(DSLContext sql, Chain chain) {
    List<Long> components =
        chain.slots().values().stream().flatMap(c -> c.component().stream().boxed()).toList();
    Map<Long, PartView> views = parts.parts(sql, components);
    return ChangeForm.SLOTS.stream()
        .map(slot -> slot.word() + "=" + encoded(sql, slot, chain.in(slot), views))
        .collect(Collectors.joining("&"));
  }

  private String encoded(DSLContext sql, Slot slot, Content content, Map<Long, PartView> views) {
    String text = content instanceof Content.Unknown ? ChangeForm.UNREADABLE : "";
    if (content instanceof Content.Part part && views.containsKey(part.number())) {
      text = TypedPart.text(sql, parts, slot, label(views.get(part.number())), part);
    }
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** What was found, as the rows of {@code loop/judged :: findings}. */
  public static List<?> findings(Judging.Judged judged) {
    return Shown.rows(judged.judgement());
  }

  /** The chain on its ruler, as SVG. */
  public static String drawing(Judging.Judged judged) {
    return Drawing.of(judged);
  }

  /** Serial, else shop number; empty where it has neither. */
  public static String label(PartView view) {
    String serial = view.name().serial();
    String shop = view.name().shopNumber();
    return serial != null ? serial : shop == null ? "" : shop;
  }
}
