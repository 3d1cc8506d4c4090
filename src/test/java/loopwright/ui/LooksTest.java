package loopwright.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.paint.Color;
import loopwright.ui.snapshot.Contrast;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Contrast of the looks by WCAG 2.2: 4.5 to 1 for text, 3 to 1 for marks; 7 to 1 is enhanced. */
class LooksTest {
  private static Map<String, Color> colours(Look look) throws IOException {
    try (InputStream in = LooksTest.class.getResourceAsStream("/loopwright/ui/" + look.sheet())) {
      String css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      Map<String, Color> colours = new HashMap<>();
      Matcher m = Pattern.compile("-lw-([a-z-]+): (#[0-9a-f]{6});").matcher(css);
      while (m.find()) {
        colours.put(m.group(1), Color.web(m.group(2)));
      }
      return colours;
    }
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
      Map<String, Color> colours = colours(look);
      assertThat(Contrast.ratio(colours.get(front), colours.get(back)))
          .as("%s on %s, %s", front, back, look)
          // Text's 4.5 is 7 in the look that is all for contrast.
          .isGreaterThanOrEqualTo(look == Look.CONTRAST && least > 3 ? 7 : least);
    }
  }

  @Test
  void theContrastLookIsBlackAndWhiteButForTheRedLead() throws IOException {
    Map<String, Color> colours = colours(Look.CONTRAST);
    assertThat(colours).hasSizeGreaterThan(20);
    colours.forEach(
        (name, colour) -> {
          if (!name.equals("lead-red")) {
            assertThat(colour).as(name).isIn(Color.BLACK, Color.WHITE);
          }
        });
  }

  @ParameterizedTest
  @EnumSource(Look.class)
  void theRedLeadIsRedAndTheBlackOneBlack(Look look) throws IOException {
    Color red = colours(look).get("lead-red");
    assertThat(red.getRed()).isGreaterThan(0.6);
    assertThat(Math.max(red.getGreen(), red.getBlue())).isLessThan(0.3);
    assertThat(Contrast.luminance(colours(look).get("lead-black"))).isLessThan(0.02);
  }

  @Test
  void everyLookNamesTheSameColours() throws IOException {
    for (Look look : Look.values()) {
      assertThat(colours(look).keySet()).isEqualTo(colours(Look.PAPER).keySet());
    }
  }
}
