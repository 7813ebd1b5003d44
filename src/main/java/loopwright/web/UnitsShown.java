package loopwright.web;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.time.Duration;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/** Which units a person wants to read first. What was typed always shows as it was typed. */
public enum UnitsShown {
  /** µm, mV/µm, m, °C. */
  METRIC("metric", "µm, m"),
  /** mil, mV/mil, ft, °F. */
  MIL("mil", "mil, ft");

  private static final String COOKIE = "units";

  private final String word;
  private final String label;

  UnitsShown(String word, String label) {
    this.word = word;
    this.label = label;
  }

  public String word() {
    return word;
  }

  public String label() {
    return label;
  }

  public boolean metric() {
    return this == METRIC;
  }

  public UnitsShown other() {
    return this == METRIC ? MIL : METRIC;
  }

  /** A length in both units, the reader's first. */
  public String both(Length length) {
    return metric()
        ? length.inMetres() + " (" + length.inFeet() + ")"
        : length.inFeet() + " (" + length.inMetres() + ")";
  }

  /** A length balance with its sign, in the reader's unit. */
  public String signed(Length balance) {
    return metric() ? balance.signedMetres() : balance.signedFeet();
  }

  /** The reader's choice; metric until they made one. */
  public static UnitsShown of(Context http) {
    return named(http.cookie(COOKIE));
  }

  void keep(Context http, boolean secure) {
    int year = (int) Duration.ofDays(365).toSeconds();
    http.cookie(new Cookie(COOKIE, word, "/", year, secure, true, null, SameSite.STRICT));
  }

  static UnitsShown named(@Nullable String word) {
    return MIL.word.equals(word) ? MIL : METRIC;
  }
}
