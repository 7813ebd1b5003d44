package loopwright.label;

import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.problem.Refused;

/**
 * Under which address this register is found: what stands in front of every label's code. It is
 * configured and never guessed from a request, so that labels survive whatever name somebody's
 * browser used.
 *
 * @param address without a slash at its end; empty when nobody gave one
 * @param former addresses that labels were printed with before
 * @param trying whether labels may be printed with the address a page was asked under; for the
 *     invented plant
 */
public record LabelBase(Optional<String> address, List<String> former, boolean trying) {
  public static final LabelBase NOT_GIVEN = new LabelBase(Optional.empty(), List.of(), false);
  public static final LabelBase FOR_TRYING = new LabelBase(Optional.empty(), List.of(), true);

  private static final int LONGEST = 100;

  public LabelBase {
    address = address.map(LabelBase::checked);
    former = former.stream().map(LabelBase::checked).toList();
  }

  private static String checked(String text) {
    String base = text.strip().replaceAll("/+$", "");
    URI uri = uri(base);
    String scheme = String.valueOf(uri.getScheme()).toLowerCase(Locale.ROOT);
    if (!scheme.equals("http") && !scheme.equals("https")) {
      throw new Refused(LabelProblem.BAD_BASE, text, "it begins with neither https:// nor http://");
    }
    if (uri.getHost() == null) {
      throw new Refused(LabelProblem.BAD_BASE, text, "it names no host");
    }
    if (uri.getRawQuery() != null || uri.getRawFragment() != null || uri.getUserInfo() != null) {
      throw new Refused(LabelProblem.BAD_BASE, text, "it holds more than host, port and path");
    }
    if (base.length() > LONGEST) {
      throw new Refused(
          LabelProblem.BAD_BASE, text, "with " + base.length() + " characters it is too long");
    }
    return base;
  }

  private static URI uri(String base) {
    try {
      return URI.create(base);
    } catch (IllegalArgumentException unreadable) {
      Refused refused = new Refused(LabelProblem.BAD_BASE, base, "it is no address");
      refused.initCause(unreadable);
      throw refused;
    }
  }

  /**
   * What labels begin with.
   *
   * @param asked the address under which the page was asked for
   * @throws Refused {@link LabelProblem#NO_BASE}
   */
  String printed(String asked) {
    return known(asked).orElseThrow(() -> new Refused(LabelProblem.NO_BASE));
  }

  /**
   * The address records are found under, where one is known.
   *
   * @param asked the address under which the page was asked for
   */
  public Optional<String> known(String asked) {
    return address.or(() -> trying ? Optional.of(asked) : Optional.empty());
  }

  /**
   * What a code on other paper than labels says: the address, or where none is configured the code
   * alone. The search field takes both.
   *
   * @param asked the address under which the page was asked for
   */
  public String said(LabelCode code, String asked) {
    return address
        .or(() -> trying ? Optional.of(asked) : Optional.empty())
        .map(base -> base + "/c/" + code.text())
        .orElse(code.text());
  }

  /**
   * What stands behind this register's own address in a scanned one: {@code /c/1C0D1X2}. A label
   * that leads to the very server that is asked is its own, too.
   *
   * @param scanned a whole address
   * @param asked the address under which the page was asked for
   * @throws Refused {@link LabelProblem#FOREIGN} for an address of somebody else
   */
  public String path(String scanned, String asked) {
    String text = bare(scanned.strip());
    return Stream.concat(Stream.concat(address.stream(), Stream.of(asked)), former.stream())
        .map(LabelBase::bare)
        .filter(own -> startsWith(text, own))
        .findFirst()
        .map(own -> text.substring(own.length()))
        .orElseThrow(() -> new Refused(LabelProblem.FOREIGN, foreign(scanned)));
  }

  /** The host in any case, the path exactly, and nothing in between. */
  private static boolean startsWith(String text, String own) {
    return text.regionMatches(true, 0, own, 0, own.length())
        && text.length() > own.length()
        && text.charAt(own.length()) == '/';
  }

  /** Host, port unless it is the usual one, and path: http became https in many places. */
  private static String bare(String address) {
    String rest = address.substring(address.indexOf("://") + 3);
    int slash = rest.indexOf('/');
    String place = slash < 0 ? rest : rest.substring(0, slash);
    String usual = place.replaceAll(":(80|443)$", "");
    return usual + (slash < 0 ? "" : rest.substring(slash));
  }

  private static String foreign(String scanned) {
    String text = scanned.strip();
    int slash = text.indexOf('/', text.indexOf("://") + 3);
    return slash < 0 ? text : text.substring(0, slash);
  }
}
