package loopwright.registerfile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import loopwright.matching.Elsewhere;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import org.jspecify.annotations.Nullable;

/**
 * In which rows each serial stands. Two parts are one when kind and serial agree, without regard to
 * case, unless both rows name a maker and the makers differ.
 */
final class SerialIndex {
  /** A message names three places and says that there are more. */
  private static final int MOST_TOLD = 4;

  private final Map<Key, List<RegisterRow>> everywhere = new HashMap<>();
  private final Map<Key, List<RegisterRow>> byMaker = new HashMap<>();

  private record Key(PartKind kind, String serial, String maker) {}

  SerialIndex(List<RegisterRow> rows) {
    for (RegisterRow row : rows) {
      for (PartView part : row.loop().parts()) {
        add(row, part);
      }
    }
  }

  private void add(RegisterRow row, PartView part) {
    String serial = part.name().serial();
    if (serial != null) {
      Key key = key(part.kind(), serial, part.name().maker());
      byMaker.computeIfAbsent(key, any -> new ArrayList<>(1)).add(row);
      everywhere.computeIfAbsent(key(part.kind(), serial, ""), any -> new ArrayList<>(1)).add(row);
    }
  }

  private static Key key(PartKind kind, String serial, @Nullable String maker) {
    return new Key(kind, plain(serial), maker == null ? "" : plain(maker));
  }

  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  /** The row's loop with the other places of each part joined to it. */
  LoopView joined(RegisterRow row) {
    return row.loop().withParts(part -> part.standingAlsoAt(others(row, part)));
  }

  private List<Elsewhere> others(RegisterRow row, PartView part) {
    String serial = part.name().serial();
    if (serial == null) {
      return List.of();
    }
    Key anyMaker = key(part.kind(), serial, "");
    Key sameMaker = key(part.kind(), serial, part.name().maker());
    List<List<RegisterRow>> candidates =
        sameMaker.equals(anyMaker)
            ? List.of(everywhere.getOrDefault(anyMaker, List.of()))
            : List.of(
                byMaker.getOrDefault(sameMaker, List.of()),
                byMaker.getOrDefault(anyMaker, List.of()));
    return others(row, candidates);
  }

  private static List<Elsewhere> others(RegisterRow own, List<List<RegisterRow>> candidates) {
    List<Elsewhere> others = new ArrayList<>();
    boolean selfSeen = false;
    for (List<RegisterRow> rows : candidates) {
      for (RegisterRow row : rows) {
        if (row == own && !selfSeen) {
          selfSeen = true;
        } else if (others.size() < MOST_TOLD) {
          others.add(new Elsewhere(row.loop().tag(), row.where()));
        } else {
          return others;
        }
      }
    }
    return others;
  }
}
