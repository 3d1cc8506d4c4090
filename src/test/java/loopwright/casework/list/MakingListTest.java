package loopwright.casework.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.Phrases;
import loopwright.diagnosis.Cart;
import loopwright.evidence.Bench;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The sums of the hand cart, counted by hand from its drawing (see {@link Cart}). */
class MakingListTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  private static MakingList cart() {
    return MakingList.of(Cart.VEHICLE, Allowance.USUAL, PHRASES);
  }

  private static List<Buy> group(MakingList making, Buy.Group group) {
    return making.buying().stream().filter(b -> b.group() == group).toList();
  }

  private static Cut cut(MakingList making, String wire) {
    return making.cuts().stream().filter(c -> c.part().id().equals(wire)).findFirst().orElseThrow();
  }

  @Test
  void aLengthGetsTenPercentAndFifteenCentimetresAtEachEnd() {
    assertThat(Allowance.USUAL.cut(Estimate.of(1))).isEqualTo(1.40);
    assertThat(Allowance.USUAL.cut(Estimate.of(2))).isEqualTo(2.50);
    assertThat(Allowance.USUAL.cut(Estimate.of(0.5))).isEqualTo(0.85);
    // 0.123 m: 0.1353 m and the ends are 0.4353 m, so 0.44 m are cut.
    assertThat(Allowance.USUAL.cut(Estimate.of(0.123))).isEqualTo(0.44);
    assertThat(new Allowance(0, 0).cut(Estimate.of(1.5))).isEqualTo(1.5);
    assertThat(new Allowance(0.25, 0.2).cut(Estimate.of(2))).isEqualTo(2.9);
  }

  @Test
  void aLengthKnownWithinLimitsIsCutByTheUpperOneAndSaidToBe() {
    Estimate rough = Estimate.between(1, 1.5, 2);
    assertThat(Allowance.USUAL.cut(rough)).isEqualTo(2.50);
    MakingList making = MakingList.of(with("W8", rough), Allowance.USUAL, PHRASES);
    assertThat(cut(making, "W8").byUpperEnd()).isTrue();
    assertThat(cut(making, "W7").byUpperEnd()).isFalse();
    assertThat(group(making, Buy.Group.WIRE).get(0).note())
        .isEqualTo("6 runs, longest 2.50 m; by the upper end: W8 1.50 m, up to 2.00 m");
  }

  private static Vehicle with(String wire, Estimate metres) {
    Vehicle v = Cart.VEHICLE;
    List<Part> parts = new ArrayList<>(v.parts());
    parts.replaceAll(
        p ->
            p.id().equals(wire) && p.spec() instanceof PartSpec.Wire w
                ? p.withSpec(
                    new PartSpec.Wire(
                        w.kind(),
                        w.from(),
                        w.to(),
                        w.size(),
                        metres,
                        w.endOhms(),
                        w.colour(),
                        w.loom()))
                : p);
    return v.with(parts, v.joins(), v.circuits());
  }

  @ParameterizedTest
  @CsvSource({"-0.01, 0.1", "1.01, 0.1", "NaN, 0.1", "0.1, -0.01", "0.1, 2.01", "0.1, NaN"})
  void allowancesOutOfBoundsAreRefused(double share, double ends) {
    assertThatThrownBy(() -> new Allowance(share, ends))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must be");
  }

  @Test
  void theWireOfTheCartIsTheSumOfItsCuts() {
    MakingList making = cart();
    assertThat(making.cuts().stream().mapToDouble(Cut::metres))
        .containsExactly(1.40, 1.40, 2.50, 1.40, 2.50, 0.85);
    // 10.05 m in all, all of one size, bought to the next decimetre.
    Buy wire = group(making, Buy.Group.WIRE).get(0);
    assertThat(group(making, Buy.Group.WIRE)).hasSize(1);
    assertThat(wire.item()).isEqualTo("1.5 mm2 (or 14 AWG), any colour");
    assertThat(wire.quantity()).isEqualTo(10.1);
    assertThat(wire.unit()).isEqualTo(Buy.Unit.METRES);
    assertThat(wire.note()).isEqualTo("6 runs, longest 2.50 m");
  }

  @Test
  void thePartsOfTheCartAreCounted() {
    MakingList making = cart();
    assertThat(lines(making, Buy.Group.FUSE))
        .containsExactly(
            "4 10 A, blade or to fit its holder [2 fitted, 2 spare]",
            "2 holder or a way of a fuse box [one for each fuse fitted]");
    assertThat(lines(making, Buy.Group.RELAY))
        .containsExactly(
            "1 12 V, make contact, terminals 30, 85, 86, 87, contact for its load, diode across"
                + " the coil, cathode at 86 []");
    assertThat(lines(making, Buy.Group.SWITCH)).containsExactly("2 off / on; terminals in, out []");
    assertThat(lines(making, Buy.Group.LAMP)).containsExactly("2 12 V 21 W []");
    assertThat(lines(making, Buy.Group.CONNECTOR))
        .containsExactly("1 plug and socket housing, 1 cavities []");
    assertThat(lines(making, Buy.Group.GROUND)).hasSize(1);
    assertThat(lines(making, Buy.Group.SPLICE)).isEmpty();
  }

  @Test
  void theTerminalsOfTheCartFollowFromWhatTheWiresEndOn() {
    String range = "for wire 0.25 to 1.5 mm2 (22 to 16 AWG) ";
    assertThat(lines(cart(), Buy.Group.TERMINAL))
        .containsExactly(
            "1 ring on battery post, " + range + "[BAT.neg: 1]",
            "1 ring on body, " + range + "[BODY.metal: 1]",
            "1 ring on ground stud, " + range + "[G1.lug: 1]",
            "4 6.3 mm blade receptacle, " + range + "[]",
            "1 socket contact, feed side of connector, " + range + "[]",
            "1 pin contact, load side of connector, " + range + "[]");
    // Three rings and three lamp leads, 40 mm each.
    assertThat(lines(cart(), Buy.Group.SLEEVE))
        .containsExactly("0.3 4.8 mm before shrinking, lined with glue [6 pieces of 40 mm]");
  }

  private static List<String> lines(MakingList making, Buy.Group group) {
    return group(making, group).stream()
        .map(
            b ->
                (b.unit() == Buy.Unit.PIECES
                        ? Integer.toString((int) b.quantity())
                        : Double.toString(b.quantity()))
                    + " "
                    + b.item()
                    + " ["
                    + b.note()
                    + "]")
        .toList();
  }

  @Test
  void theLoomOfTheCartIsTwoWiresThick() {
    List<MakingList.Loom> looms = cart().looms();
    assertThat(looms).hasSize(1);
    assertThat(looms.get(0).name()).isEqualTo("rear");
    assertThat(looms.get(0).cuts()).extracting(c -> c.part().id()).containsExactly("W8", "W11");
    assertThat(looms.get(0).metres()).isEqualTo(2.50);
    assertThat(looms.get(0).millimetres()).isEqualTo(4.8);
    assertThat(cart().loose())
        .extracting(c -> c.part().id())
        .containsExactly("W4", "W7", "W9", "W13");
  }

  @Test
  void sevenEqualWiresMakeARoundBundleOfAboutThreeDiameters() {
    // Six round one is exactly three; wires in a loom lie looser.
    double bundle = Insulated.bundle(List.of(1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0));
    assertThat(bundle / Insulated.outside(1)).isBetween(3.0, 3.3);
    assertThat(Insulated.bundle(List.of(1.0))).isEqualTo(2.1);
  }

  @ParameterizedTest
  @CsvSource({
    "18 AWG, 18 AWG (0.82 mm2)",
    "2/0 AWG, 2/0 AWG (67 mm2)",
    "1 mm2, 1 mm2 (or 16 AWG)",
    "2.5 mm2, 2.5 mm2 (or 12 AWG)",
    "50 mm2, 50 mm2 (or 1/0 AWG)",
    "300 mm2, 300 mm2"
  })
  void aSizeIsNamedInTheOtherUnitToo(String size, String both) {
    assertThat(WireSize.parse(size).inBoth()).isEqualTo(both);
  }

  @ParameterizedTest
  @CsvSource({
    "relay, 87, 40, 2.5 mm2, BLADE",
    "relay, 87, 40, 8 AWG, WIDE_BLADE",
    "relay, 87, 40, 16 mm2, RING",
    "relay, 30, 150, 2.5 mm2, RING",
    "relay, 86, 150, 1 mm2, BLADE",
    "fuse, load, 20, 10 AWG, BLADE",
    "fuse, load, 100, 16 mm2, RING"
  })
  void theTerminalDependsOnRatingAndWire(
      String kind, String terminal, double amps, String size, Fitting fitting) {
    PartSpec spec =
        kind.equals("fuse")
            ? new PartSpec.Fuse(amps, Optional.empty())
            : new PartSpec.Relay(
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                PartSpec.Suppression.NONE,
                Optional.of(amps));
    double mm2 = WireSize.parse(size).mm2();
    assertThat(Fitting.of(Part.of("P", "", spec), terminal, mm2, java.util.Set.of()))
        .isEqualTo(fitting);
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void everyWireIsCutOnceAndLabelledAtBothEnds(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    List<String> wires =
        vehicle.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Wire)
            .map(Part::id)
            .toList();
    MakingList making = MakingList.of(vehicle, Allowance.USUAL, PHRASES);
    ListTable cutting = new ListTables(making, PHRASES).cutting();
    assertThat(cutting.rows()).extracting(r -> r.get(0)).containsExactlyElementsOf(wires);
    List<Label> labels = Label.ofWires(vehicle);
    assertThat(labels).hasSize(2 * wires.size());
    for (String wire : wires) {
      PartSpec.Wire spec = (PartSpec.Wire) vehicle.requirePart(wire).spec();
      List<Label> two = labels.stream().filter(l -> l.part().id().equals(wire)).toList();
      assertThat(two).extracting(Label::here).containsExactly(ref(spec.from()), ref(spec.to()));
      assertThat(two).extracting(Label::far).containsExactly(ref(spec.to()), ref(spec.from()));
      assertThat(two).allSatisfy(l -> assertThat(l.head()).startsWith(wire));
    }
    // What is bought of wire is what is cut, to the decimetre above for each reel.
    double cut =
        making.cuts().stream()
            .filter(c -> c.part().kind() == PartKind.WIRE)
            .mapToDouble(Cut::metres)
            .sum();
    List<Buy> reels = group(making, Buy.Group.WIRE);
    double bought = reels.stream().mapToDouble(Buy::quantity).sum();
    assertThat(bought - cut).isBetween(-1e-6, 0.1 * reels.size());
    assertThat(reels.stream().flatMap(b -> b.parts().stream()))
        .doesNotHaveDuplicates()
        .hasSize(
            (int) making.cuts().stream().filter(c -> c.part().kind() == PartKind.WIRE).count());
  }

  private static String ref(TerminalRef at) {
    return at.toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void everyPartButTheBodyIsBought(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    List<String> bought =
        MakingList.of(vehicle, Allowance.USUAL, PHRASES).buying().stream()
            .filter(b -> b.group() != Buy.Group.TERMINAL)
            .flatMap(b -> b.parts().stream())
            .distinct()
            .toList();
    assertThat(vehicle.parts())
        .filteredOn(p -> p.kind() != PartKind.BODY)
        .extracting(Part::id)
        .allSatisfy(id -> assertThat(bought).contains(id));
  }

  @Test
  void aSpliceWithAHeavyWireIsABarWithRings() {
    MakingList making = MakingList.of(Bench.vehicle("pumper"), Allowance.USUAL, PHRASES);
    assertThat(cut(making, "W4").from().fitting()).isEqualTo(Fitting.RING);
    assertThat(group(making, Buy.Group.SPLICE))
        .filteredOn(b -> b.parts().contains("BB"))
        .extracting(Buy::item)
        .singleElement(org.assertj.core.api.InstanceOfAssertFactories.STRING)
        .startsWith("bus bar");
  }
}
