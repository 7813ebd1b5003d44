package loopwright.loop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.matching.PartView;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/**
 * Parts on record in a loop that the chain being entered no longer has: the form asks where each
 * goes. Fields are named after the slot that it leaves.
 */
record TakenOut(Slot slot, long part, String label, String about) {
  private static final String STOCK = "stock";
  private static final String QUARANTINE = "quarantine";

  static List<TakenOut> of(List<Placed> recorded, Chain chain, Map<Long, PartView> views) {
    List<TakenOut> out = new ArrayList<>();
    for (Placed placed : recorded) {
      placed
          .content()
          .component()
          .ifPresent(
              number -> {
                if (isSeenElsewise(placed.slot(), chain)
                    && chain.slots().values().stream().noneMatch(placed.content()::equals)) {
                  out.add(taken(placed.slot(), number, views.get(number)));
                }
              });
    }
    return out;
  }

  /** Where nobody could read what sits there, the part on record may still do so. */
  private static boolean isSeenElsewise(Slot slot, Chain chain) {
    Content seen = chain.slots().get(slot);
    return slot.isPath() && seen == null || seen != null && !(seen instanceof Content.Unknown);
  }

  private static TakenOut taken(Slot slot, long number, @Nullable PartView view) {
    return view == null
        ? new TakenOut(slot, number, "number " + number, "")
        : new TakenOut(slot, number, view.words(), Shown.about(view));
  }

  public String field() {
    return "out-" + slot.word();
  }

  /** Whoever leaves a loop has the old part in hand; whoever finds one may never have seen it. */
  static Map<String, String> choices(boolean survey) {
    Map<String, String> choices = new LinkedHashMap<>();
    if (survey) {
      choices.put("", "nobody knows where it is");
    }
    choices.put(STOCK, "to stock");
    choices.put(QUARANTINE, "to quarantine");
    if (!survey) {
      choices.put("", "nobody knows where it is");
    }
    return choices;
  }

  /**
   * Reads where each goes; complaints stay with the form. Who was not asked yet is asked.
   *
   * @param survey parts may have gone without anybody seeing it
   */
  static List<PutAway> read(Form form, List<TakenOut> parts, boolean survey) {
    List<PutAway> all = new ArrayList<>();
    for (TakenOut taken : parts) {
      if (form.every(taken.field()).isEmpty() && !survey) {
        form.complain(taken.field(), "Say where " + taken.label + " goes, then record again.");
      } else if (!choices(survey).containsKey(form.typed(taken.field()))) {
        form.complain(taken.field(), "Choose one of the list.");
      } else if (!form.typed(taken.field()).isEmpty()) {
        all.add(taken.read(form));
      }
    }
    return all;
  }

  private PutAway read(Form form) {
    String store = kept(form, "store-", 60);
    String bin = kept(form, "bin-", 60);
    String why = kept(form, "why-", 400);
    boolean quarantine = form.typed(field()).equals(QUARANTINE);
    if (quarantine && why.isBlank()) {
      form.complain(
          "why-" + slot.word(), "Say why it may not be used: whoever finds it will read this.");
    }
    return new PutAway(part, store, bin, quarantine ? why : "");
  }

  private String kept(Form form, String prefix, int most) {
    String name = prefix + slot.word();
    try {
      return Text.kept("this", form.typed(name), most);
    } catch (Refused tooLong) {
      form.complain(name, tooLong.getMessage());
      return "";
    }
  }
}
