package loopwright.demo;

import java.time.LocalDate;
import java.time.LocalTime;

/** A day, or a minute of a day, by the clock of the site: the way the files say it. */
record DemoMoment(LocalDate day, LocalTime time) implements Comparable<DemoMoment> {

  static DemoMoment on(LocalDate day) {
    return new DemoMoment(day, LocalTime.MIDNIGHT);
  }

  static DemoMoment on(String day, String time) {
    return new DemoMoment(LocalDate.parse(day), LocalTime.parse(time));
  }

  DemoMoment plusMinutes(int minutes) {
    return new DemoMoment(day, time.plusMinutes(minutes));
  }

  @Override
  public int compareTo(DemoMoment other) {
    int days = day.compareTo(other.day);
    return days != 0 ? days : time.compareTo(other.time);
  }

  /** {@code 2026-02-11} for the start of a day, else {@code 2026-02-11T10:45}. */
  @Override
  public String toString() {
    return time.equals(LocalTime.MIDNIGHT) ? day.toString() : day + "T" + time;
  }
}
