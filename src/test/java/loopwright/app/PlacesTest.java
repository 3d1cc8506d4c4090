package loopwright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Where files go: XDG Base Directory Specification 0.8; Microsoft's known folder RoamingAppData;
 * Apple's File System Programming Guide, "Application Support".
 */
class PlacesTest {
  private static Places places(String os, Map<String, String> environment) {
    return new Places("", os, "/home/kit", environment);
  }

  @Test
  void onLinuxCasesAndSettingsGoWhereTheSpecificationSays() {
    Places usual = places("Linux", Map.of());
    assertThat(usual.dataFolder()).isEqualTo(Path.of("/home/kit/.local/share/loopwright"));
    assertThat(usual.settingsFolder()).isEqualTo(Path.of("/home/kit/.config/loopwright"));

    Places named =
        places("Linux", Map.of("XDG_DATA_HOME", "/big/data", "XDG_CONFIG_HOME", "/small"));
    assertThat(named.dataFolder()).isEqualTo(Path.of("/big/data/loopwright"));
    assertThat(named.settingsFolder()).isEqualTo(Path.of("/small/loopwright"));
  }

  @Test
  void aPathThatIsNotAbsoluteIsIgnored() {
    Places odd = places("Linux", Map.of("XDG_DATA_HOME", "data", "XDG_CONFIG_HOME", ""));
    assertThat(odd.dataFolder()).isEqualTo(Path.of("/home/kit/.local/share/loopwright"));
    assertThat(odd.settingsFolder()).isEqualTo(Path.of("/home/kit/.config/loopwright"));
  }

  @Test
  void onWindowsAndMacosBothGoToTheProgramsOwnFolder() {
    Places windows = places("Windows 11", Map.of("APPDATA", "/kit/roaming"));
    assertThat(windows.dataFolder()).isEqualTo(Path.of("/kit/roaming/Loopwright"));
    assertThat(windows.settingsFolder()).isEqualTo(windows.dataFolder());

    Places mac = places("Mac OS X", Map.of("XDG_DATA_HOME", "/elsewhere"));
    assertThat(mac.dataFolder())
        .isEqualTo(Path.of("/home/kit/Library/Application Support/Loopwright"));
    assertThat(mac.settingsFolder()).isEqualTo(mac.dataFolder());
  }

  @Test
  void aFolderThatIsAskedForHasItAll() {
    Places stick = new Places("/stick", "Linux", "/home/kit", Map.of("XDG_DATA_HOME", "/big"));
    assertThat(stick.dataFolder()).isEqualTo(Path.of("/stick"));
    assertThat(stick.settingsFolder()).isEqualTo(Path.of("/stick"));
  }
}
