package loopwright.matching;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The classification of an area by zone, gas group and temperature class.
 *
 * @param zone 0, 1 or 2
 */
public record AreaClass(int zone, GasGroup group, TemperatureClass temperature) {
  private static final Set<String> SAFE =
      Set.of("safe area", "non-hazardous", "nonhazardous", "not hazardous", "unclassified", "none");

  /** Gas groups; equipment of a later one may stand where an earlier one is asked for. */
  public enum GasGroup {
    IIA,
    IIB,
    IIC;

    public boolean covers(GasGroup asked) {
      return ordinal() >= asked.ordinal();
    }

    public static Optional<GasGroup> named(String word) {
      String plain = word.strip().toUpperCase(Locale.ROOT);
      return Stream.of(values()).filter(one -> one.name().equals(plain)).findFirst();
    }
  }

  /** Temperature classes with the hottest surface they allow, °C (IEC 60079-0, from memory). */
  public enum TemperatureClass {
    T1(450),
    T2(300),
    T3(200),
    T4(135),
    T5(100),
    T6(85);

    private final int mostCelsius;

    TemperatureClass(int mostCelsius) {
      this.mostCelsius = mostCelsius;
    }

    public int mostCelsius() {
      return mostCelsius;
    }

    public boolean covers(TemperatureClass asked) {
      return mostCelsius <= asked.mostCelsius;
    }

    public static Optional<TemperatureClass> named(String word) {
      String plain = word.strip().toUpperCase(Locale.ROOT);
      return Stream.of(values()).filter(one -> one.name().equals(plain)).findFirst();
    }
  }

  /** Whether the text says that nothing explosive is to be expected there. */
  public static boolean isSafe(String text) {
    return SAFE.contains(text.strip().toLowerCase(Locale.ROOT));
  }

  /** Whether the text tells the area by divisions, of which zones can't be read. */
  public static boolean isByDivision(String text) {
    return words(text).stream().anyMatch(word -> word.startsWith("DIV"));
  }

  /**
   * Reads {@code Zone 1 IIC T4}, in any case and order, with or without commas; empty unless zone,
   * group and class are all there, each once.
   */
  public static Optional<AreaClass> read(String text) {
    List<String> words = words(text);
    List<Integer> zones = Stream.of(0, 1, 2).filter(zone -> names(words, zone)).toList();
    List<GasGroup> groups =
        words.stream().map(GasGroup::named).flatMap(Optional::stream).distinct().toList();
    List<TemperatureClass> classes =
        words.stream().map(TemperatureClass::named).flatMap(Optional::stream).distinct().toList();
    return zones.size() == 1 && groups.size() == 1 && classes.size() == 1
        ? Optional.of(new AreaClass(zones.get(0), groups.get(0), classes.get(0)))
        : Optional.empty();
  }

  private static boolean names(List<String> words, int zone) {
    int at = words.indexOf("ZONE");
    return words.contains("ZONE" + zone)
        || at >= 0 && at + 1 < words.size() && words.get(at + 1).equals(Integer.toString(zone));
  }

  private static List<String> words(String text) {
    return Arrays.asList(text.strip().toUpperCase(Locale.ROOT).split("[\\s,;/]+"));
  }

  /** Which protection level the zone asks for (IEC 60079-14, from memory). */
  public Approval.Level level() {
    return Approval.Level.values()[zone];
  }

  /** As {@link #read} takes it. */
  @Override
  public String toString() {
    return "Zone " + zone + " " + group + " " + temperature;
  }
}
