package loopwright.demo;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A made-up component.
 *
 * @param kind {@code probe}, {@code extension cable} or {@code driver}
 * @param length nominal, in the family's unit; for a driver the system length; null when its
 *     marking can't be read
 * @param trueMetres what the length really is: the model needs it even when nobody knows it
 */
final class DemoPart {
  final String kind;
  final DemoFamily family;
  final @Nullable String length;
  final double trueMetres;
  final String model;
  final String serial;
  final String shopNumber;
  final DemoMoment since;
  String evidence = "read on part";
  String physicalMetres = "";
  String condition = "usable";
  String conditionReason = "";
  String store = "";
  String bin = "";
  String note = "";

  DemoPart(
      String kind,
      DemoFamily family,
      @Nullable String length,
      double trueMetres,
      String model,
      String serial,
      String shopNumber,
      DemoMoment since) {
    this.kind = kind;
    this.family = family;
    this.length = length;
    this.trueMetres = trueMetres;
    this.model = model;
    this.serial = serial;
    this.shopNumber = shopNumber;
    this.since = since;
  }

  String label() {
    return serial.isEmpty() ? shopNumber : serial;
  }

  /** In metres, exact; empty when unknown. */
  String lengthInMetres() {
    if (length == null) {
      return "";
    }
    return family.unit.equals("m")
        ? length
        : new BigDecimal(length).multiply(new BigDecimal("0.3048")).toPlainString();
  }

  DemoPart scrapped(String why) {
    condition = "scrapped";
    conditionReason = why;
    return this;
  }

  DemoPart quarantined(String why) {
    condition = "quarantined";
    conditionReason = why;
    return this;
  }
}
