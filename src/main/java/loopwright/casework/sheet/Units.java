package loopwright.casework.sheet;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.model.Quantity;
import loopwright.model.WireSize;

/** The units that headings and cells name. */
final class Units {
  private static final Pattern IN_HEADING =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}])(mm ?(?:\\^ ?)?[2²]|sq\\.? ?mm|q ?mm|awg|gauge|ga|ohms?|min(?:utes)?|"
              + Quantity.LENGTH.pattern()
              + ")(?![\\p{L}\\p{N}])");

  private Units() {}

  /** Metres in the unit that a heading names. */
  static Optional<BigDecimal> metresOfHeading(String heading) {
    return inHeading(heading).flatMap(Quantity.LENGTH::factor);
  }

  /** The unit of size that a heading names. */
  static Optional<WireSize.Unit> sizeOfHeading(String heading) {
    return inHeading(heading)
        .flatMap(
            u -> {
              if (u.equals("awg") || u.startsWith("ga")) {
                return Optional.of(WireSize.Unit.AWG);
              }
              return u.contains("mm") && !u.equals("mm")
                  ? Optional.of(WireSize.Unit.MM2)
                  : Optional.empty();
            });
  }

  private static Optional<String> inHeading(String heading) {
    Matcher m = IN_HEADING.matcher(heading.toLowerCase(Locale.ROOT));
    return m.find() ? Optional.of(m.group(1)) : Optional.empty();
  }

  /** A heading without the unit it names. */
  static String without(String heading) {
    return IN_HEADING.matcher(heading.toLowerCase(Locale.ROOT)).replaceAll(" ");
  }
}
