package loopwright.demo;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** Hands out parts with made-up serials and keeps the store. Serials never repeat. */
final class DemoShop {
  private final Random dice = new Random(20_260_630L);
  private final Map<String, Integer> lastNumber = new HashMap<>();
  private final List<DemoPart> all = new ArrayList<>();
  private int binsUsed;

  DemoPart probe(DemoFamily family, String lead, DemoMoment since) {
    return part("probe", family, lead, since);
  }

  DemoPart cable(DemoFamily family, String length, DemoMoment since) {
    DemoPart cable = part("extension cable", family, length, since);
    if (dice.nextInt(8) == 0) {
      double longer = 0.93 + 0.10 * dice.nextDouble();
      cable.physicalMetres = String.valueOf(Math.round(cable.trueMetres * longer * 100) / 100.0);
    }
    return cable;
  }

  DemoPart driver(DemoFamily family, String system, DemoMoment since) {
    return part("driver", family, system, since);
  }

  /** A part like that one, from the same maker, with another serial. */
  DemoPart like(DemoPart part, DemoMoment since) {
    return part(part.kind, part.family, String.valueOf(part.length), since);
  }

  /** A cable with neither serial nor readable length: the shop gave it a number. */
  DemoPart unmarkedCable(
      DemoFamily family, double trueMetres, String shopNumber, DemoMoment since) {
    DemoPart cable =
        new DemoPart(
            "extension cable",
            family,
            null,
            trueMetres,
            family.series() + " cable",
            "",
            shopNumber,
            since);
    cable.note = "Marking worn off; length not known.";
    all.add(cable);
    return cable;
  }

  private DemoPart part(String kind, DemoFamily family, String length, DemoMoment since) {
    double metres =
        Double.parseDouble(length) * (family.unit.equals("ft") ? DemoFamily.METRES_PER_FOOT : 1);
    String what = kind.replace("extension ", "");
    String model = family.series() + " " + what + " " + length + family.unit;
    DemoPart part =
        new DemoPart(kind, family, length, metres, model, serial(family.maker), "", since);
    if (dice.nextInt(6) == 0) {
      part.evidence = "certificate";
    }
    all.add(part);
    return part;
  }

  /** Each maker numbers in its own way; one of them puts zeros at the front. */
  private String serial(String maker) {
    int number = lastNumber.merge(maker, 1 + dice.nextInt(29), Integer::sum);
    return switch (maker) {
      case "Ormeling" -> "%07d".formatted(41_000 + number);
      case "Tavistane" -> "T%05d%c".formatted(20_300 + number, (char) ('A' + number % 26));
      default -> "Q-%05d".formatted(7_100 + number);
    };
  }

  /** Spares of every length on offer. */
  void stock(Map<DemoFamily, String> stores, DemoMoment since) {
    new EnumMap<>(stores).forEach((family, store) -> stock(family, store, since));
  }

  private void stock(DemoFamily family, String store, DemoMoment since) {
    for (String lead : family.leads) {
      times(3, () -> shelve(probe(family, lead, since), store));
    }
    for (String length : family.cables) {
      times(2, () -> shelve(cable(family, length, since), store));
    }
    for (String system : family.systems) {
      times(3, () -> shelve(driver(family, system, since), store));
    }
  }

  private static void times(int count, Runnable what) {
    for (int i = 0; i < count; i++) {
      what.run();
    }
  }

  private void shelve(DemoPart part, String store) {
    part.store = store;
    part.bin = "%c-%02d".formatted((char) ('A' + binsUsed / 30), binsUsed % 30 + 1);
    binsUsed++;
  }

  List<DemoPart> all() {
    return all;
  }

  /** The n-th stocked part of that kind, family and length. */
  DemoPart stocked(String kind, DemoFamily family, @Nullable String length, int n) {
    return all.stream()
        .filter(part -> !part.store.isEmpty() && part.kind.equals(kind))
        .filter(part -> part.family == family && String.valueOf(length).equals(part.length))
        .skip(n)
        .findFirst()
        .orElseThrow();
  }
}
