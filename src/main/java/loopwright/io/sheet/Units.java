package loopwright.io.sheet;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.model.WireSize;

/** The units that headings and cells name. */
final class Units {
  /** Metres in each unit of length; foot and inch are exact by the 1959 agreement. */
  private static final Map<String, BigDecimal> METRES =
      Map.ofEntries(
          Map.entry("m", BigDecimal.ONE),
          Map.entry("metre", BigDecimal.ONE),
          Map.entry("meter", BigDecimal.ONE),
          Map.entry("mtr", BigDecimal.ONE),
          Map.entry("cm", new BigDecimal("0.01")),
          Map.entry("mm", new BigDecimal("0.001")),
          Map.entry("ft", new BigDecimal("0.3048")),
          Map.entry("foot", new BigDecimal("0.3048")),
          Map.entry("feet", new BigDecimal("0.3048")),
          Map.entry("'", new BigDecimal("0.3048")),
          Map.entry("in", new BigDecimal("0.0254")),
          Map.entry("inch", new BigDecimal("0.0254")),
          Map.entry("inche", new BigDecimal("0.0254")),
          Map.entry("\"", new BigDecimal("0.0254")));

  /** Every spelling of a unit of length, for use in a pattern. */
  static final String LENGTH = "mm|cm|met(?:re|er)s?|mtrs?|m|ft|feet|foot|in(?:ch(?:es)?)?|'|\"";

  private static final Pattern IN_HEADING =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}])(mm ?(?:\\^ ?)?[2²]|sq\\.? ?mm|q ?mm|awg|gauge|ga|ohms?|min(?:utes)?|"
              + LENGTH
              + ")(?![\\p{L}\\p{N}])");

  private Units() {}

  /** Metres in a unit of length. */
  static Optional<BigDecimal> metres(String unit) {
    String u = unit.toLowerCase(Locale.ROOT);
    BigDecimal plural = u.endsWith("s") ? METRES.get(u.substring(0, u.length() - 1)) : null;
    return Optional.ofNullable(METRES.getOrDefault(u, plural));
  }

  /** Metres in the unit that a heading names. */
  static Optional<BigDecimal> metresOfHeading(String heading) {
    return inHeading(heading).flatMap(Units::metres);
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
