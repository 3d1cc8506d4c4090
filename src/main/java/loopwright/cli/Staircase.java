package loopwright.cli;

import java.util.Locale;
import java.util.stream.Collectors;
import loopwright.casework.Band;
import loopwright.casework.LoopView;
import loopwright.casework.LoopView.PieceView;
import loopwright.casework.LoopView.Stair;
import loopwright.diagnosis.CheckKind;
import loopwright.model.Language;

/** The voltage staircase as text: a node a line with its healthy band and what was measured. */
final class Staircase {
  private static final int BAR = 24;
  private static final int WIDE_ENOUGH = 72;

  private final Page page;

  Staircase(Page page) {
    this.page = page;
  }

  void show(LoopView loop) {
    page.say(Speech.of("stairs.head", loop.title()));
    double low = 0;
    double high = 0;
    for (Stair stair : loop.stairs()) {
      low = Math.min(low, finite(stair.healthy().low()));
      high = Math.max(high, finite(stair.healthy().high()));
      for (LoopView.Measured measured : stair.measured()) {
        low = Math.min(low, finite(measured.volts()));
        high = Math.max(high, finite(measured.volts()));
      }
    }
    for (int i = 0; i < loop.stairs().size(); i++) {
      stair(loop.stairs().get(i), low, high);
      if (i < loop.pieces().size()) {
        piece(loop.pieces().get(i));
      }
    }
    for (LoopView branch : loop.branches()) {
      page.gap();
      show(branch);
    }
  }

  private void stair(Stair stair, double low, double high) {
    StringBuilder line = new StringBuilder();
    line.append(pad(stair.point().toString(), 12)).append(' ');
    if (page.width() >= WIDE_ENOUGH) {
      line.append(bar(stair, low, high)).append("  ");
    }
    String words = band(stair.healthy());
    if (!stair.measured().isEmpty()) {
      words +=
          "  "
              + Speech.of("stairs.measured")
              + " "
              + stair.measured().stream()
                  .map(m -> volts(m.volts()) + " V (" + m.reading() + ")")
                  .collect(Collectors.joining(", "));
    }
    if (!stair.reachable()) {
      words += "  " + Speech.of("no-lead");
    }
    page.block(line.toString(), words);
  }

  private void piece(PieceView piece) {
    String standing =
        switch (piece.standing()) {
          case HELD -> Speech.of("stairs.held", percent(piece.belief()));
          case CLEARED ->
              Speech.of("stairs.cleared")
                  + " "
                  + piece.clearedBy().stream()
                      .map(String::valueOf)
                      .collect(Collectors.joining(", "));
          case CONDEMNED -> Speech.of("stairs.failed", percent(piece.belief()));
        };
    page.block("    | ", piece.title() + ": " + standing);
  }

  private static String bar(Stair stair, double low, double high) {
    StringBuilder bar = new StringBuilder(" ".repeat(BAR));
    int from = column(stair.healthy().low(), low, high);
    int to = column(stair.healthy().high(), low, high);
    for (int i = from; i <= to; i++) {
      bar.setCharAt(i, '=');
    }
    for (LoopView.Measured measured : stair.measured()) {
      bar.setCharAt(column(measured.volts(), low, high), 'x');
    }
    return "[" + bar + "]";
  }

  private static int column(double value, double low, double high) {
    if (!(high > low)) {
      return 0;
    }
    double share = (finite(value) - low) / (high - low);
    return (int) Math.round(Math.max(0, Math.min(1, share)) * (BAR - 1));
  }

  private static double finite(double value) {
    return Double.isFinite(value) ? value : 0;
  }

  private static String pad(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }

  static String band(Band band) {
    String unit = band.unit() == Band.Unit.VOLT ? "V" : Language.ohm("");
    if (Double.isInfinite(band.low())) {
      return "OL";
    }
    if (Double.isInfinite(band.high())) {
      return Language.range(volts(band.low()) + " " + unit, "OL");
    }
    return Language.range(volts(band.low()), volts(band.high())) + " " + unit;
  }

  /** Three decimals below a volt, else two: what a cheap meter shows. */
  static String volts(double value) {
    return Language.marked(
        String.format(Locale.ROOT, Math.abs(value) < 1 ? "%.3f" : "%.2f", value));
  }

  static String percent(double share) {
    double percent = share * 100;
    if (percent > 0 && percent < 1) {
      return Speech.of("percent.least");
    }
    if (percent < 100 && percent > 99) {
      return Speech.of("percent.most");
    }
    return String.format(Locale.ROOT, "%.0f %%", percent);
  }

  /** The unit a bare number is taken in for a kind of check. */
  static String unit(CheckKind kind) {
    return switch (kind) {
      case OHMS -> "ohm";
      case MILLIVOLTS -> "mV";
      default -> "V";
    };
  }
}
