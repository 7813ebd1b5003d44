package loopwright.demo;

import java.util.List;

/**
 * The invented families: makers, models and lengths are made up. Lengths are in the unit the maker
 * sells them in.
 */
enum DemoFamily {
  LINNET_5(
      "LINNET-5",
      "Linnet, 5 m systems",
      "Ormeling",
      "m",
      List.of("0.5", "1.0", "1.5", "5.0"),
      List.of("3.5", "4.0", "4.5"),
      List.of("5.0"),
      "optional",
      "api670-2mm",
      "8",
      200,
      new VoltageModel.Nature(250, 2250, 2.0, 200 / 25.4, 1.0, 0.30)),
  LINNET_9(
      "LINNET-9",
      "Linnet, 9 m systems",
      "Ormeling",
      "m",
      List.of("0.5", "1.0", "1.5"),
      List.of("7.5", "8.0", "8.5"),
      List.of("9.0"),
      "required",
      "2mm-200-long",
      "8",
      200,
      new VoltageModel.Nature(250, 2250, 2.0, 200 / 25.4, 1.25, 0.35)),
  BRACKEN_7(
      "BRACKEN-7",
      "Bracken, 7 m systems",
      "Tavistane",
      "m",
      List.of("1.0", "2.0"),
      List.of("5.0", "6.0"),
      List.of("7.0"),
      "required",
      "2mm-200-long",
      "8",
      200,
      new VoltageModel.Nature(250, 2250, 1.0, 200 / 25.4, 0.95, 0.25)),
  TEASEL(
      "TEASEL",
      "Teasel, 15, 20 and 25 ft systems",
      "Quernholt",
      "ft",
      List.of("3", "6"),
      List.of("9", "12", "14", "17", "19", "22"),
      List.of("15", "20", "25"),
      "required",
      "2mm-200-long",
      "8",
      200,
      new VoltageModel.Nature(254, 2286, 2.0, 200 / 25.4, 1.05, 0.30)),
  GARNET(
      "GARNET",
      "Garnet, 4 mm range, 5 and 9 m systems",
      "Tavistane",
      "m",
      List.of("1.0"),
      List.of("4.0", "8.0"),
      List.of("5.0", "9.0"),
      "required",
      "4mm-100",
      "11",
      100,
      new VoltageModel.Nature(500, 4500, 2.0, 100 / 25.4, 0.9, 0.25));

  static final double METRES_PER_FOOT = 0.3048;

  final String code;
  final String title;
  final String maker;
  final String unit;
  final List<String> leads;
  final List<String> cables;
  final List<String> systems;
  final String cableUse;
  final String profile;
  final String tipMillimetres;
  final int millivoltsPerMil;
  final VoltageModel.Nature nature;

  DemoFamily(
      String code,
      String title,
      String maker,
      String unit,
      List<String> leads,
      List<String> cables,
      List<String> systems,
      String cableUse,
      String profile,
      String tipMillimetres,
      int millivoltsPerMil,
      VoltageModel.Nature nature) {
    this.code = code;
    this.title = title;
    this.maker = maker;
    this.unit = unit;
    this.leads = leads;
    this.cables = cables;
    this.systems = systems;
    this.cableUse = cableUse;
    this.profile = profile;
    this.tipMillimetres = tipMillimetres;
    this.millivoltsPerMil = millivoltsPerMil;
    this.nature = nature;
  }

  boolean hasLongRange() {
    return this == GARNET;
  }

  /** Voltage that the shop sets at rest: the middle of the range, to a tenth of a volt. */
  double midVolts() {
    double mid =
        nature.voltsAtFrom()
            + nature.millivoltsPerMicrometre()
                / 1000
                * (nature.midMicrometres() - nature.fromMicrometres());
    return -Math.round(mid * 10) / 10.0;
  }

  /** {@code Linnet}, {@code Teasel}: how the maker's model names begin. */
  String series() {
    return title.substring(0, title.indexOf(','));
  }
}
