package loopwright.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Contrast of the looks by WCAG 2.2: 4.5 to 1 for text, 3 to 1 for marks; 7 to 1 is enhanced. */
class LooksTest {
  private static Map<String, double[]> colours(Look look) throws IOException {
    try (InputStream in = LooksTest.class.getResourceAsStream("/loopwright/ui/" + look.sheet())) {
      String css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      Map<String, double[]> colours = new HashMap<>();
      Matcher m = Pattern.compile("-lw-([a-z-]+): #([0-9a-f]{6});").matcher(css);
      while (m.find()) {
        int rgb = Integer.parseInt(m.group(2), 16);
        colours.put(
            m.group(1),
            new double[] {
              (rgb >> 16 & 255) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0
            });
      }
      return colours;
    }
  }

  /** Relative luminance, WCAG 2.2, definition of "relative luminance". */
  private static double luminance(double[] rgb) {
    double[] weight = {0.2126, 0.7152, 0.0722};
    double sum = 0;
    for (int i = 0; i < 3; i++) {
      double c = rgb[i];
      sum += weight[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return sum;
  }

  private static double contrast(double[] a, double[] b) {
    double one = luminance(a);
    double other = luminance(b);
    return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
  }

  @ParameterizedTest
  @CsvSource({
    "ink, card, 7",
    "ink, paper, 7",
    "ink, button, 7",
    "ink, picked, 4.5",
    "ink, field, 7",
    "ink, cap, 7",
    "ink, bar, 7",
    "ink-soft, card, 4.5",
    "ink-soft, paper, 4.5",
    "ink-soft, picked, 4.5",
    "on-primary, primary, 4.5",
    "on-warn, warn, 7",
    "on-lead-red, lead-red, 4.5",
    "on-lead-black, lead-black, 7",
    "lead-black-edge, card, 3",
    "lead-red-edge, card, 3",
    "good, card, 3",
    "bad, card, 3",
    "accent, card, 3",
    "edge-strong, card, 3"
  })
  void textAndMarksStandOutInEveryLook(String front, String back, double least) throws IOException {
    for (Look look : Look.values()) {
      Map<String, double[]> colours = colours(look);
      assertThat(contrast(colours.get(front), colours.get(back)))
          .as("%s on %s, %s", front, back, look)
          // Text's 4.5 is 7 in the look that is all for contrast.
          .isGreaterThanOrEqualTo(look == Look.CONTRAST && least > 3 ? 7 : least);
    }
  }

  @Test
  void theContrastLookIsBlackAndWhiteButForTheRedLead() throws IOException {
    Map<String, double[]> colours = colours(Look.CONTRAST);
    assertThat(colours).hasSizeGreaterThan(20);
    colours.forEach(
        (name, rgb) -> {
          if (!name.equals("lead-red")) {
            assertThat(rgb).as(name).isIn(new double[] {0, 0, 0}, new double[] {1, 1, 1});
          }
        });
  }

  @ParameterizedTest
  @EnumSource(Look.class)
  void theRedLeadIsRedAndTheBlackOneBlack(Look look) throws IOException {
    double[] red = colours(look).get("lead-red");
    assertThat(red[0]).isGreaterThan(0.6);
    assertThat(Math.max(red[1], red[2])).isLessThan(0.3);
    assertThat(luminance(colours(look).get("lead-black"))).isLessThan(0.02);
  }

  @Test
  void everyLookNamesTheSameColours() throws IOException {
    for (Look look : Look.values()) {
      assertThat(colours(look).keySet()).isEqualTo(colours(Look.PAPER).keySet());
    }
  }
}
