package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Pattern;
import loopwright.InGerman;
import loopwright.casework.ReadyCase;
import loopwright.model.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What is said of files, and what ready-made cases tell, where German is in use. */
@ExtendWith(InGerman.class)
class GermanFilesTest {
  private static final Pattern ENGLISH =
      Pattern.compile("\\b(is|must|has|the|there|names|missing|one of|with)\\b");

  private static final String BROKEN =
      """
      {"format": "loopwright-vehicle", "version": 1, "id": "x", "name": 5, "system_volts": 13,
       "grounded": "minus", "colour": 1,
       "parts": [
        {"id": "BATT", "kind": "battery", "volts": 12.6},
        {"id": "W1", "kind": "wire", "from": "BATT.pos", "to": "F9.feed", "size": "9 inch",
         "metres": 400},
        {"id": "W2", "kind": "wire", "from": "BATT.pos", "to": "BATT.pos", "size": "1 mm2",
         "metres": 1},
        {"id": "F1", "kind": "fuse", "amps": {"about": 3, "low": 5, "high": 1}},
        {"id": "F1", "kind": "fuse", "amps": 9000},
        {"id": "L1", "kind": "lamp"},
        {"id": "K1", "kind": "relais"}],
       "joins": [["BATT.pos"]],
       "circuits": [{"id": "c", "name": "C", "loads": ["L9"], "on": {"S9": "on"}}]}
      """;

  @Test
  void everythingWrongWithAVehicleIsToldInGerman() {
    List<Defect> defects = VehicleFile.read(BROKEN, "x.json").defects();
    assertThat(defects).hasSizeGreaterThan(12);
    assertThat(defects)
        .allSatisfy(d -> assertThat(ENGLISH.matcher(d.message()).find()).as(d.message()).isFalse())
        .allSatisfy(d -> assertThat(d.message()).contains("Zeile"));
    assertThat(defects.toString())
        .contains(
            "Leitung W1: metres ist 400 m; möglich: mehr als 0 und höchstens 100 m",
            "Feld „watts“ fehlt");
  }

  @Test
  void readyMadeCasesTellTheirStoryInGerman() {
    List<ReadyCase> german = ReadyCaseFile.readBundled().orThrow();
    Language.use(Language.ENGLISH);
    List<ReadyCase> english = ReadyCaseFile.readBundled().orThrow();
    assertThat(german).hasSameSizeAs(english);
    for (int i = 0; i < german.size(); i++) {
      assertThat(german.get(i).id()).isEqualTo(english.get(i).id());
      assertThat(german.get(i).title()).isNotEqualTo(english.get(i).title());
      assertThat(german.get(i).story()).isNotEqualTo(english.get(i).story());
    }
  }
}
