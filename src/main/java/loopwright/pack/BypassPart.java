package loopwright.pack;

import java.util.List;
import java.util.stream.Stream;

/** What a sheet asks for of a bypass, line by line. */
enum BypassPart {
  NUMBER("site number", Item.BYPASS),
  FUNCTION("function inhibited", Item.BYPASS),
  VOTE("vote meanwhile", Item.BYPASS),
  AUTHORISER("authorised by", Item.BYPASS),
  OWNER("answers for it", Item.BYPASS),
  ON("on since", Item.BYPASS_TIME),
  EXPIRES("expires", Item.BYPASS_TIME),
  OFF("off since", Item.BYPASS_TIME),
  OFF_BY("taken off by", Item.BYPASS);

  private final String word;
  private final Item item;

  BypassPart(String word, Item item) {
    this.word = word;
    this.item = item;
  }

  String word() {
    return word;
  }

  Item item() {
    return item;
  }

  static List<BypassPart> texts() {
    return of(Item.BYPASS);
  }

  static List<BypassPart> moments() {
    return of(Item.BYPASS_TIME);
  }

  private static List<BypassPart> of(Item item) {
    return Stream.of(values()).filter(part -> part.item == item).toList();
  }
}
