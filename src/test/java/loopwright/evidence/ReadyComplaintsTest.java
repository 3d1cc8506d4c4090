package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.io.ReadyCaseFile;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every ready-made case fits its vehicle and shows there what it complains of. */
class ReadyComplaintsTest {
  private static final List<ReadyCase> CASES = ReadyCaseFile.readBundled().orThrow();

  private record Told(SimulatedMeter meter) {
    Seen at(String part, Setting setting) {
      try {
        Answer answer =
            meter.read(
                new OwnCheck(
                    CheckKind.LOOK,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(part),
                    setting));
        return ((Answer.Saw) answer).seen();
      } catch (Problem p) {
        throw new AssertionError(p);
      }
    }
  }

  private static Told sick(ReadyCase c, Vehicle v) throws Problem {
    return new Told(new SimulatedMeter(v, Bench.KNOWLEDGE, c, c.id().hashCode()));
  }

  private static Told sound(ReadyCase c, Vehicle v) throws Problem {
    Told told = sick(c, v);
    c.truth().forEach(f -> told.meter().mended(f.part()));
    return told;
  }

  @Test
  void allTwentyThreeAreRead() {
    assertThat(CASES).hasSize(23);
  }

  @TestFactory
  Stream<DynamicTest> theComplaintShowsAndGoesAwayWithTheTruth() {
    return CASES.stream().map(c -> DynamicTest.dynamicTest(c.id(), () -> shows(c)));
  }

  private static void shows(ReadyCase c) throws Problem {
    Vehicle v = Bench.vehicle(c.vehicle());
    Circuit circuit = v.circuit(c.circuit()).orElseThrow();
    CaseDesk.Complaint words = Bench.desk().understand(v, c.complaint());
    String load = circuit.loads().get(0).toString();
    Setting on = circuit.onSetting();
    Told sick = sick(c, v);
    Told sound = sound(c, v);
    System.out.printf(
        "%-22s %-22s on: %s (mended %s), rest: %s (mended %s); words: %s %s%n",
        c.id(),
        c.kind().words(),
        sick.at(load, on),
        sound.at(load, on),
        sick.at(load, Setting.REST),
        sound.at(load, Setting.REST),
        words.circuit(),
        words.kind().words());
    assertThat(words.circuit()).isEqualTo(c.circuit());
    assertThat(words.kind()).isEqualTo(c.kind());
    switch (c.kind()) {
      case DEAD -> {
        assertThat(sick.at(load, on)).isEqualTo(Seen.OFF);
        assertThat(sound.at(load, on)).isEqualTo(Seen.ON);
      }
      case DIM -> {
        assertThat(sick.at(load, on)).isEqualTo(Seen.DIM);
        assertThat(sound.at(load, on)).isEqualTo(Seen.ON);
      }
      case STUCK_ON -> {
        // Some control of the circuit's own let go: the key may have to stay on.
        assertThat(
                on.positions().keySet().stream()
                    .map(
                        k -> {
                          java.util.TreeMap<String, String> left =
                              new java.util.TreeMap<>(on.positions());
                          left.remove(k);
                          return Setting.of(left);
                        })
                    .filter(r -> sick.at(load, r) != Seen.OFF && sound.at(load, r) == Seen.OFF))
            .isNotEmpty();
      }
      case BLOWS_FUSE -> {
        assertThat(sick.at(load, on)).isEqualTo(Seen.OFF);
        assertThat(
                v.parts().stream()
                    .filter(p -> p.kind() == PartKind.FUSE)
                    .filter(p -> sick.at(p.id(), on) == Seen.BROKEN))
            .isNotEmpty();
      }
      case WAKES_OTHER ->
          assertThat(
                  v.circuits().stream()
                      .flatMap(o -> o.loads().stream())
                      .map(LoadRef::toString)
                      .filter(l -> sick.at(l, on) != Seen.OFF && sound.at(l, on) == Seen.OFF))
              .isNotEmpty();
      default -> throw new AssertionError("no case is of kind " + c.kind());
    }
  }
}
