package loopwright.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.meter.MeterSpec;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.solver.Rig;
import org.junit.jupiter.api.Test;

/** Which grounds there are, what returns lie beside each other, and what proves them. */
class GroundsTest {
  private static final MeterSpec BASIC = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  private static PartSpec heater(double amps) {
    return new PartSpec.PlainLoad(PartKind.HEATER, Rig.exactly(amps));
  }

  private static PartSpec stud(double ohms) {
    return new PartSpec.Ground(Optional.of(Rig.exactly(ohms)));
  }

  private static DropProofs proofs(Vehicle vehicle) {
    return new DropProofs(Grounds.of(vehicle, Bench.KNOWLEDGE), BASIC);
  }

  private static Ground ground(Vehicle vehicle, String id) {
    return Grounds.of(vehicle, Bench.KNOWLEDGE).ground(id).orElseThrow();
  }

  private static List<String> ids(String vehicle, Ground.Kind kind) {
    return Grounds.of(Bench.vehicle(vehicle), Bench.KNOWLEDGE).all().stream()
        .filter(g -> g.kind() == kind)
        .map(Ground::id)
        .toList();
  }

  @Test
  void everyStudStrapAndPieceOfMetalOfTheDemoVehiclesIsThere() {
    assertThat(ids("pumper", Ground.Kind.STRAP)).containsExactly("STR1", "STR2");
    assertThat(ids("pumper", Ground.Kind.STUD))
        .containsExactlyInAnyOrder("G1", "G2", "G3", "G4", "G5", "G6", "G7", "G8");
    assertThat(ids("pumper", Ground.Kind.WIRE)).containsExactly("W110");
    assertThat(ids("pumper", Ground.Kind.BODY)).containsExactly("BODY", "ENG");
    assertThat(ids("tractor", Ground.Kind.BODY)).containsExactly("BODY", "MGL", "MGR");
    assertThat(ids("truck", Ground.Kind.STRAP)).containsExactly("STR1", "STR2", "STR3");
    assertThat(ids("motorcycle", Ground.Kind.WIRE)).containsExactly("W47");
  }

  @Test
  void aLoadsWayBackNamesEachPieceUpToThePost() {
    Ground beacon = ground(Bench.vehicle("pumper"), "L5");
    assertThat(beacon.kind()).isEqualTo(Ground.Kind.LOAD);
    assertThat(beacon.pieces()).containsExactly("W10", "G4", "G1", "STR1");
    assertThat(beacon.to()).isEqualTo(Bench.vehicle("pumper").groundedPost());
  }

  /**
   * Two studs side by side from the body to the post.
   *
   * <pre>
   *   BAT+ --S1--(H 10 A)-- body --+--GA 2 mohm--+-- BAT-
   *                                +--GB 6 mohm--+
   * </pre>
   */
  private static Vehicle sideBySide(double a, double b) {
    return Rig.of(12)
        .battery(12.6, 0.01, "top")
        .onOff("S1", 0.01, "top", "on")
        .part("H", heater(10), "on", "metal")
        .part("B", new PartSpec.Body(), "metal")
        .part("GA", stud(a), "metal", "0")
        .part("GB", stud(b), "metal", "0")
        .circuit("c", "H", "S1=on")
        .vehicle();
  }

  @Test
  void returnsBesideEachOtherAreProvenTogether() {
    Vehicle vehicle = sideBySide(2e-3, 6e-3);
    DropProof proof = proofs(vehicle).best(ground(vehicle, "GA")).orElseThrow();
    assertThat(proof.beside()).containsExactly("GB");
    // 2 and 6 mohm side by side are 1.5.
    assertThat(proof.own().typical()).isCloseTo(1.5e-3, within(1e-12));
    // The heater's 1.26 ohm, 0.02 of battery and switch: 12.6 / 1.2815 A through 1.5 mohm.
    double amps = 12.6 / (1.26 + 0.02 + 0.0015);
    assertThat(proof.amps()).isCloseTo(amps, within(1e-6));
    assertThat(proof.healthy().typical()).isCloseTo(amps * 1.5e-3, within(1e-8));
    // With GA off all comes through GB.
    assertThat(proof.without().orElseThrow())
        .isCloseTo(12.6 / (1.26 + 0.02 + 0.006) * 6e-3, within(1e-8));
    assertThat(proof.limit().ohms()).isCloseTo(0.1 / amps, within(1e-9));
  }

  @Test
  void aPieceInTheShadowOfAnotherHasNoProofOfItsOwn() {
    Vehicle vehicle = sideBySide(1e-3, 30e-3);
    assertThat(proofs(vehicle).best(ground(vehicle, "GA"))).isPresent();
    assertThat(proofs(vehicle).best(ground(vehicle, "GB"))).isEmpty();
  }

  @Test
  void whatOnlyAClockLoadsBesideAnotherHasNone() {
    Vehicle pumper = Bench.vehicle("pumper");
    // 30 mA of the clock through cab and battery studs: 0.08 mV.
    assertThat(proofs(pumper).settings(ground(pumper, "G3"))).isEmpty();
    assertThat(proofs(pumper).best(ground(pumper, "R1"))).isPresent();
  }

  @Test
  void aReadingOfTwoReturnsSaysWhatBothHaveTogether() {
    Vehicle vehicle = sideBySide(2e-3, 6e-3);
    DropProof proof = proofs(vehicle).best(ground(vehicle, "GA")).orElseThrow();
    Judgement said = Judgement.of(proof, BASIC, 0.0148, 1e-4);
    // 14.8 mV, 0.5 % and 2 digits: 14.526 to 15.074 mV at 9.83 A.
    assertThat(said.verdict()).isEqualTo(Judgement.Verdict.GOOD);
    assertThat(said.lowOhms()).isCloseTo(1.4775e-3, within(3e-6));
    assertThat(said.highOhms()).isCloseTo(1.5333e-3, within(3e-6));
  }

  @Test
  void whatCannotBeToldSaysWhatWouldHelp() {
    Vehicle vehicle = sideBySide(9e-3, 1000);
    DropProof proof = proofs(vehicle).best(ground(vehicle, "GA")).orElseThrow();
    // The limit is 100 mV at this very current: on the 20 V range two digits are 20 mV.
    assertThat(Judgement.of(proof, BASIC, 0.09, 0.01).why()).isEqualTo(Judgement.Why.LOWER_RANGE);
    assertThat(Judgement.of(proof, BASIC, 0.09, 0.0001).verdict())
        .isEqualTo(Judgement.Verdict.GOOD);
    // All is exact here, so that only the meter is in doubt.
    assertThat(Judgement.of(proof, BASIC, 0.0999, 0.0001).why())
        .isEqualTo(Judgement.Why.GREATER_LOAD);
    assertThat(Judgement.of(proof, BASIC, 0.0, 0.0001).why()).isEqualTo(Judgement.Why.NO_CURRENT);
    assertThat(Judgement.of(proof, BASIC, 0.11, 0.0001).verdict()).isEqualTo(Judgement.Verdict.BAD);
    Judgement turned = Judgement.of(proof, BASIC, -0.09, 0.0001);
    assertThat(turned.turned()).isTrue();
    assertThat(turned.verdict()).isEqualTo(Judgement.Verdict.GOOD);
  }

  @Test
  void anOpenGroundLeavesNoUpperEnd() {
    Vehicle vehicle = sideBySide(9e-3, 1000);
    DropProof proof = proofs(vehicle).best(ground(vehicle, "GA")).orElseThrow();
    Judgement said = Judgement.of(proof, BASIC, 12.6, 0.01);
    assertThat(said.verdict()).isEqualTo(Judgement.Verdict.BAD);
    assertThat(said.highOhms()).isInfinite();
    // 12.6 V on the 20 V range may be 12.517: 83 mV are left for the 1.27 ohm before it.
    assertThat(said.lowOhms()).isGreaterThan(40);
  }

  @Test
  void theEngineStrapIsProvenWhileCranking() {
    Vehicle pumper = Bench.vehicle("pumper");
    DropProof strap = proofs(pumper).best(ground(pumper, "STR2")).orElseThrow();
    assertThat(strap.cranks()).isTrue();
    assertThat(strap.works().get(0).part()).isEqualTo("M1");
    assertThat(strap.limit().source()).isEqualTo(Limit.Source.STARTER);
    // 0.2 V for each 100 A.
    assertThat(strap.limit().ohms()).isCloseTo(2e-3, within(1e-12));
    assertThat(strap.without().orElseThrow()).isGreaterThan(10 * strap.healthy().typical());
    // Lamps don't need the engine's strap.
    assertThat(proofs(pumper).settings(ground(pumper, "STR2"))).hasSize(1);
  }

  @Test
  void aGreaterLoadIsFoundForACoarseMeter() {
    Vehicle truck = Bench.vehicle("truck");
    DropProofs proofs = proofs(truck);
    DropProof lamps = proofs.best(ground(truck, "STR1")).orElseThrow();
    assertThat(lamps.cranks()).isFalse();
    DropProof greater = proofs.greater(lamps).orElseThrow();
    assertThat(greater.amps()).isGreaterThan(lamps.amps());
  }

  @Test
  void nothingIsOnForWhatAlwaysDraws() {
    Vehicle pumper = Bench.vehicle("pumper");
    assertThat(proofs(pumper).best(ground(pumper, "CLK")).orElseThrow().setting())
        .isEqualTo(Setting.REST);
  }

  @Test
  void ohmsByTwoLeadsHideMilliohms() {
    TwoWireOhms ohms = new TwoWireOhms(new Spread(1e-3, 2e-3, 4e-3), 10e-3, BASIC);
    // Leads of 0.1 to 0.5 ohm, 0.8 % and 2 digits of 0.1 ohm.
    assertThat(ohms.zero()[0]).isZero();
    assertThat(ohms.zero()[1]).isCloseTo(0.5 + 0.004 + 0.2, within(1e-9));
    assertThat(ohms.shows()).isCloseTo(2 * 0.2 + 0.008 * (0.3 + 0.304), within(1e-9));
    assertThat(ohms.canPass()).isFalse();
    assertThat(ohms.judge(0.3, 0.1, 0.3, 0.1).verdict()).isEqualTo(Judgement.Verdict.CANT_TELL);
    assertThat(ohms.judge(0.3, 0.1, 0.3, 0.1).highOhms()).isCloseTo(0.4048, within(1e-9));
    assertThat(ohms.judge(0.3, 0.1, 1.2, 0.1).verdict()).isEqualTo(Judgement.Verdict.BAD);
    TwoWireOhms.Shown open = ohms.judge(0.3, 0.1, Double.POSITIVE_INFINITY, 0.1);
    assertThat(open.verdict()).isEqualTo(Judgement.Verdict.BAD);
    TwoWireOhms loose = new TwoWireOhms(new Spread(1e-3, 2e-3, 4e-3), 2, BASIC);
    assertThat(loose.canPass()).isTrue();
    assertThat(loose.judge(0.3, 0.1, 0.5, 0.1).verdict()).isEqualTo(Judgement.Verdict.GOOD);
  }
}
