package loopwright.web;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.time.SiteMoment;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;

/** Reads single fields; every refusal says what would be right. */
final class Fields {
  private Fields() {}

  static String text(String typed, int mostCharacters) {
    String text = filled(typed);
    if (text.length() > mostCharacters) {
      throw new IllegalArgumentException(
          "This has %s characters; at most %s are kept.".formatted(text.length(), mostCharacters));
    }
    if (text.chars().anyMatch(Fields::isUnprintable)) {
      throw new IllegalArgumentException(
          "This holds a character that can't be shown. Type it anew.");
    }
    return text;
  }

  private static boolean isUnprintable(int c) {
    return Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t';
  }

  static BigDecimal number(String typed) {
    return Numbers.read(filled(typed)).orElseThrow(() -> noNumber(typed));
  }

  static Reported reported(String typed, Unit unit) {
    return Reported.read(filled(typed), unit).orElseThrow(() -> noNumber(typed));
  }

  static Unit unit(String symbol, Unit... choices) {
    return Stream.of(choices)
        .filter(unit -> unit.symbol().equals(symbol))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("Choose the unit: " + symbols(choices)));
  }

  static LocalDate day(String typed) {
    try {
      return SiteMoment.isoDay(filled(typed));
    } catch (DateTimeException noDay) {
      throw new IllegalArgumentException(
          quoted(typed) + " is not a day. Give it as year-month-day, such as 2026-03-14.", noDay);
    }
  }

  static <E extends Enum<E>> E constant(String typed, Class<E> choices) {
    return Arrays.stream(choices.getEnumConstants())
        .filter(constant -> constant.name().equals(typed))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("Choose one from the list."));
  }

  private static String filled(String typed) {
    if (typed.isBlank()) {
      throw new IllegalArgumentException("Fill this in.");
    }
    return typed.strip();
  }

  private static IllegalArgumentException noNumber(String typed) {
    return new IllegalArgumentException(
        quoted(typed)
            + " is not one number. Give it such as 4.5 or 4,5, without a thousands mark or unit.");
  }

  private static String symbols(Unit... choices) {
    return Stream.of(choices).map(Unit::symbol).collect(Collectors.joining(", ", "", "."));
  }

  private static String quoted(String typed) {
    return "\u201c" + typed.strip() + "\u201d";
  }
}
