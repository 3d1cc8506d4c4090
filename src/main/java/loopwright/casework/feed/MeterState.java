package loopwright.casework.feed;

import java.time.Duration;
import loopwright.meter.MeterFunction;

/** How it stands with a meter that sends its readings. */
public sealed interface MeterState {

  /** No reading has come yet. */
  record Connecting() implements MeterState {}

  /**
   * The reading is steady and may be taken.
   *
   * @param text as a person would type it, for instance {@code 12.41 V}; {@code OL} over range
   */
  record Steady(String text) implements MeterState {}

  /**
   * The reading is steady but was taken a moment ago and has not changed since: the leads were not
   * lifted.
   *
   * @param text the reading
   */
  record Taken(String text) implements MeterState {}

  /**
   * The reading still moves.
   *
   * @param text the latest reading
   */
  record Moving(String text) implements MeterState {}

  /**
   * What the meter shows doesn't fit the check.
   *
   * @param shown the unit shown; empty if the meter sends numbers without one
   * @param asked what the check asks for
   */
  record Unfit(String shown, MeterFunction asked) implements MeterState {}

  /**
   * Lines come that are no readings.
   *
   * @param line the latest, what can't be printed left out, 20 characters at most
   */
  record Garbled(String line) implements MeterState {}

  /**
   * Connected, but nothing comes.
   *
   * @param since for how long
   */
  record Silent(Duration since) implements MeterState {}

  /**
   * Not connected; it is tried again by and by.
   *
   * @param why in words
   */
  record Gone(String why) implements MeterState {}
}
