package loopwright.casework.practise;

import java.util.Locale;
import java.util.Optional;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.prove.Prints;
import loopwright.model.Part;
import loopwright.model.Vehicle;

/**
 * What is read out to a class: four characters that settle level, vehicle and all chance. A drill
 * on somebody's own vehicle has three more, the print of the vehicle file, so that two whose files
 * differ are told.
 *
 * @param level what the drill trains
 * @param vehicle number of the demo vehicle from 1; {@link #OWN} for any other
 * @param seed of all chance, 0 to {@link #SEEDS} - 1
 * @param print print of an own vehicle; empty for a demo vehicle
 */
public record DrillCode(Level level, int vehicle, int seed, String print) {

  /** Stands for a vehicle that isn't a demo vehicle. */
  public static final int OWN = 0;

  /** How many drills there are of each level on each vehicle. */
  public static final int SEEDS = 500;

  /** Nothing that looks like another: no 0 O Q, 1 I, 2 Z, 5 S, 8 B, 6 G, U V. */
  private static final String ALPHABET = "34679ACDEFHJKLMNPRTVWXY";

  private static final int LETTERS = 4;
  private static final int PRINT_LETTERS = 3;
  private static final int VEHICLES = 8;
  private static final int LEVELS = 8;
  private static final int ALL = power(LETTERS);

  /**
   * Spreads the codes over all there could be: one letter misheard is mostly no code at all, since
   * only one in nine is. Has no factor in common with the alphabet's length.
   */
  private static final int STRIDE = 160_481;

  /** Checks the limits. */
  public DrillCode {
    if (vehicle < 0 || vehicle >= VEHICLES || seed < 0 || seed >= SEEDS) {
      throw new IllegalArgumentException("vehicle " + vehicle + ", seed " + seed);
    }
  }

  /** A drill on a vehicle; its print counts only if it isn't a demo vehicle. */
  static DrillCode of(Level level, int number, int seed, Vehicle vehicle) {
    return new DrillCode(level, number, seed, number == OWN ? print(vehicle) : "");
  }

  /**
   * Reads a code as somebody typed it.
   *
   * @throws Problem if it is none
   */
  public static DrillCode parse(String text) throws Problem {
    String code = text.strip().toUpperCase(Locale.ROOT).replaceAll("[\\s-]", "");
    Optional<Integer> number =
        code.length() == LETTERS || code.length() == LETTERS + PRINT_LETTERS
            ? number(code.substring(0, LETTERS))
            : Optional.empty();
    String print = number.isPresent() ? code.substring(LETTERS) : "";
    if (number.isEmpty() || number(print).isEmpty()) {
      throw none(text);
    }
    int packed = (int) ((long) number.get() * inverse() % ALL);
    int level = packed % LEVELS;
    int vehicle = packed / LEVELS % VEHICLES;
    int seed = packed / LEVELS / VEHICLES;
    if (seed >= SEEDS || level >= Level.values().length || (vehicle == OWN) == print.isEmpty()) {
      throw none(text);
    }
    return new DrillCode(Level.values()[level], vehicle, seed, print);
  }

  private static Problem none(String text) {
    String shown = text.length() > 20 ? text.substring(0, 20) + "..." : text;
    return new Problem("code", shown, Phrases.inUse().say("practise.code.how"));
  }

  private static Optional<Integer> number(String letters) {
    int number = 0;
    for (char c : letters.toCharArray()) {
      int digit = ALPHABET.indexOf(c);
      if (digit < 0) {
        return Optional.empty();
      }
      number = number * ALPHABET.length() + digit;
    }
    return Optional.of(number);
  }

  private static String letters(int number, int count) {
    StringBuilder letters = new StringBuilder();
    int left = number;
    for (int i = 0; i < count; i++) {
      letters.insert(0, ALPHABET.charAt(left % ALPHABET.length()));
      left /= ALPHABET.length();
    }
    return letters.toString();
  }

  private static int power(int exponent) {
    int all = 1;
    for (int i = 0; i < exponent; i++) {
      all *= ALPHABET.length();
    }
    return all;
  }

  private static long inverse() {
    return java.math.BigInteger.valueOf(STRIDE)
        .modInverse(java.math.BigInteger.valueOf(ALL))
        .longValue();
  }

  /** The print of all that is electrical about a vehicle, in three characters. */
  static String print(Vehicle vehicle) {
    int sum =
        Prints.of(vehicle, vehicle.parts().stream().map(Part::id).toList()).toString().hashCode();
    return letters(Math.floorMod(sum, power(PRINT_LETTERS)), PRINT_LETTERS);
  }

  /** A number of its own for each code, from which all chance is drawn too. */
  int packed() {
    return (seed * VEHICLES + vehicle) * LEVELS + level.ordinal();
  }

  /** The code as it is read out: {@code 4F7K}, or {@code 4F7K-9AC} on one's own vehicle. */
  @Override
  public String toString() {
    String four = letters((int) ((long) packed() * STRIDE % ALL), LETTERS);
    return print.isEmpty() ? four : four + "-" + print;
  }
}
