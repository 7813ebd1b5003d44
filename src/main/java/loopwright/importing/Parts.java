package loopwright.importing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.matching.PartKind;
import loopwright.register.Component;
import loopwright.register.ComponentDetails;
import loopwright.register.FamilyId;
import loopwright.register.PartIdentity;
import org.jspecify.annotations.Nullable;

/** What later rows ask of the parts, recorded and planned. */
final class Parts {
  /**
   * A part by its number, below zero while it is planned.
   *
   * @param channels of a driver box; 1 for everything else
   */
  record Part(long number, PartKind kind, PartIdentity identity, int channels) {
    String inWords() {
      return kind.word() + " " + identity.label();
    }
  }

  private final Map<Long, Part> parts = new HashMap<>();
  private final Map<Long, FamilyId> families = new HashMap<>();
  private final Map<String, List<Part>> plannedByLabel = new HashMap<>();

  void planned(long number, ComponentDetails details) {
    PartIdentity identity = details.identity();
    Part part = new Part(number, details.kind(), identity, details.channels());
    parts.put(number, part);
    plannedByLabel.computeIfAbsent(label(identity.label()), l -> new ArrayList<>()).add(part);
  }

  /** What the files say of its family goes before what is recorded. */
  void recorded(Component component) {
    recorded(component, component.details());
  }

  void recorded(Component component, ComponentDetails details) {
    long number = component.id().number();
    parts.put(number, new Part(number, details.kind(), details.identity(), details.channels()));
    FamilyId family = component.facts().family();
    if (family != null) {
      families.putIfAbsent(number, family);
    }
  }

  void family(long number, @Nullable FamilyId family) {
    if (family != null) {
      families.put(number, family);
    }
  }

  Optional<Part> find(long number) {
    return Optional.ofNullable(parts.get(number));
  }

  Optional<FamilyId> familyOf(long number) {
    return Optional.ofNullable(families.get(number));
  }

  List<Part> plannedLabelled(String label) {
    return plannedByLabel.getOrDefault(label(label), List.of());
  }

  private static String label(String text) {
    return text.strip().toUpperCase(Locale.ROOT);
  }
}
