package loopwright.stock;

/**
 * How many of a sort should lie in stock: as many as a year used on average, and at least one for
 * every {@value #FITTED_FOR_ONE} fitted. Own choice, no source; a shop that waits long for parts
 * takes more.
 *
 * @param fitted parts of the sort in loops now
 * @param used put into loops, by assemblies or found in place of another, during the last {@value
 *     #YEARS} years
 */
record Suggestion(int fitted, int used) {
  static final int YEARS = 3;
  static final int FITTED_FOR_ONE = 20;

  int parts() {
    return Math.max(ceiling(used, YEARS), ceiling(fitted, FITTED_FOR_ONE));
  }

  String reasoning() {
    return "%s fitted: one for every %s of them makes %s. %s put in during the last %s years: a year's use makes %s. The larger of the two; own choice, no source."
        .formatted(
            fitted,
            FITTED_FOR_ONE,
            ceiling(fitted, FITTED_FOR_ONE),
            used,
            YEARS,
            ceiling(used, YEARS));
  }

  private static int ceiling(int number, int by) {
    return (number + by - 1) / by;
  }
}
