package loopwright.ui.shell;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.ui.Look;
import loopwright.ui.Preferences;
import loopwright.ui.TextSize;
import loopwright.ui.fake.FakePreferences;
import org.junit.jupiter.api.Test;

class ShellViewModelTest {
  private final FakePreferences preferences = new FakePreferences();

  @Test
  void lookAndTextSizeAreFoundAgain() {
    ShellViewModel first = new ShellViewModel(preferences);
    first.lookProperty().set(Look.NIGHT);
    first.textSizeProperty().set(TextSize.LARGER);
    ShellViewModel later = new ShellViewModel(preferences);
    assertThat(later.lookProperty().get()).isEqualTo(Look.NIGHT);
    assertThat(later.emProperty().get()).isEqualTo(24);
  }

  @Test
  void preferencesOfAnotherVersionAreNoObstacle() {
    preferences.keep(Preferences.Item.LOOK, "PLAID");
    preferences.keep(Preferences.Item.TEXT_SIZE, "9");
    ShellViewModel shell = new ShellViewModel(preferences);
    assertThat(shell.lookProperty().get()).isEqualTo(Look.PAPER);
    assertThat(shell.textSizeProperty().get()).isEqualTo(TextSize.NORMAL);
  }

  @Test
  void bodyTextIsNeverSmallerThanFifteenPixels() {
    for (TextSize size : TextSize.values()) {
      assertThat(size.pixels()).isGreaterThanOrEqualTo(15);
    }
  }
}
