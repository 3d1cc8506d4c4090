package loopwright.rules;

import java.util.List;

/**
 * An argument of a text that is turned into words when the conclusions are read, so that a rule
 * needs not join a part only to name it, and numbers come out in the reader's language.
 */
public sealed interface Argument {

  /** A part by its title; by its id where none was stated. */
  record Title(String part) implements Argument {}

  /** Parts by their titles, with commas between. */
  record Titles(List<String> parts) implements Argument {
    /** Copies the list. */
    public Titles {
      parts = List.copyOf(parts);
    }
  }

  /** A word of the trade, in the language in use where the bundle {@code rules/trade} has it. */
  record Word(String word) implements Argument {}

  /** Volts with their unit; below a tenth of a volt in millivolts. */
  record Volts(double volts) implements Argument {}

  /** Degrees Celsius, in the unit of temperatures in use. */
  record Celsius(double degrees) implements Argument {}

  /** Ohms with their unit. */
  record Ohms(double ohms) implements Argument {}

  /** A band, from low to high. */
  record Band(Argument low, Argument high) implements Argument {}
}
