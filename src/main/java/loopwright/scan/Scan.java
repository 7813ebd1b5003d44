package loopwright.scan;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import loopwright.web.Form;

/**
 * What has been scanned so far; all of it stands in the address, nothing is stored.
 *
 * @param parts components by number, in the order scanned
 * @param loop tag of the loop they are meant for; empty while nobody said
 * @param noCable whether somebody said that the lead goes straight to the driver
 */
record Scan(List<Long> parts, String loop, boolean noCable) {
  /** More than any chain has; an address that names more is not ours. */
  private static final int MOST = 12;

  Scan {
    parts = List.copyOf(parts);
  }

  static Scan of(Form form) {
    List<Long> parts =
        form.every("part").stream()
            .filter(text -> text.matches("[1-9]\\d{0,17}"))
            .map(Long::valueOf)
            .distinct()
            .limit(MOST)
            .toList();
    return new Scan(parts, form.typed("loop").strip(), form.typed("cable").equals("none"));
  }

  Scan with(long part) {
    List<Long> more = new ArrayList<>(parts);
    more.add(part);
    return new Scan(more, loop, noCable);
  }

  Scan without(long part) {
    return new Scan(parts.stream().filter(other -> other != part).toList(), loop, noCable);
  }

  Scan holding(List<Long> others) {
    return new Scan(others, loop, noCable);
  }

  Scan at(String tag) {
    return new Scan(parts, tag, noCable);
  }

  Scan withoutCable(boolean none) {
    return new Scan(parts, loop, none);
  }

  boolean isEmpty() {
    return parts.isEmpty() && loop.isEmpty();
  }

  String href() {
    List<String> fields = new ArrayList<>();
    parts.forEach(part -> fields.add("part=" + part));
    if (!loop.isEmpty()) {
      fields.add("loop=" + URLEncoder.encode(loop, StandardCharsets.UTF_8));
    }
    if (noCable) {
      fields.add("cable=none");
    }
    return fields.isEmpty() ? "/scan" : "/scan?" + String.join("&", fields);
  }
}
