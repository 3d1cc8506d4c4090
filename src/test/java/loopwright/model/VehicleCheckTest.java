package loopwright.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class VehicleCheckTest {
  private static final WireSize SIZE = WireSize.parse("1.5 mm2");

  private final List<Part> parts = new ArrayList<>();
  private final List<List<TerminalRef>> joins = new ArrayList<>();
  private GroundedPole grounded = GroundedPole.NEGATIVE;

  private void part(String id, PartSpec spec) {
    parts.add(
        new Part(
            id,
            "",
            "",
            spec,
            Map.of(),
            Optional.empty(),
            Optional.empty(),
            Set.copyOf(spec.terminals()),
            ""));
  }

  private void wire(String from, String to) {
    part(
        "W" + parts.size(),
        new PartSpec.Wire(
            PartKind.WIRE,
            TerminalRef.parse(from),
            TerminalRef.parse(to),
            SIZE,
            Estimate.of(1),
            Optional.empty(),
            "",
            ""));
  }

  private void battery() {
    part("BATT", new PartSpec.Battery(Optional.empty(), Optional.empty()));
  }

  private void lamp(String id) {
    part(id, new PartSpec.Lamp(Optional.empty(), Estimate.of(21)));
  }

  private void relay(String id, boolean changeover) {
    part(
        id,
        new PartSpec.Relay(
            changeover,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            PartSpec.Suppression.NONE,
            Optional.empty()));
  }

  private void switchPart(String id) {
    part(id, PartSpec.Switch.onOff(Optional.empty()));
  }

  /** The words for what is missing, one for each finding of the only circuit. */
  private List<String> missing(String load, Map<String, String> on) {
    Circuit circuit = new Circuit("c", "", List.of(LoadRef.parse(load)), on, "");
    Vehicle vehicle = new Vehicle("v", "v", 12, grounded, parts, joins, List.of(circuit), "");
    return VehicleCheck.check(vehicle).stream().map(VehicleCheck.Finding::value).toList();
  }

  @Test
  void aLoadSwitchedOnItsGroundSideHasALoopOnlyWhileSwitched() {
    battery();
    lamp("L");
    switchPart("S");
    wire("BATT.pos", "L.in");
    wire("L.out", "S.in");
    wire("S.out", "BATT.neg");
    assertThat(missing("L", Map.of("S", "on"))).isEmpty();
    assertThat(missing("L", Map.of())).containsExactly("no return");
  }

  @Test
  void onAPositiveGroundVehicleTheFeedIsTheNegativePost() {
    grounded = GroundedPole.POSITIVE;
    battery();
    lamp("L");
    wire("BATT.neg", "L.in");
    assertThat(missing("L", Map.of())).containsExactly("no return");
    wire("L.out", "BATT.pos");
    assertThat(missing("L", Map.of())).isEmpty();
  }

  @Test
  void aContactOfARelayThatAnotherRelayPullsInCountsAsClosed() {
    battery();
    lamp("L");
    switchPart("S");
    relay("K1", false);
    relay("K2", false);
    wire("BATT.pos", "S.in");
    wire("S.out", "K1.86");
    wire("K1.85", "BATT.neg");
    wire("BATT.pos", "K1.30");
    wire("K1.87", "K2.86");
    wire("K2.85", "BATT.neg");
    wire("BATT.pos", "K2.30");
    wire("K2.87", "L.in");
    wire("L.out", "BATT.neg");
    assertThat(missing("L", Map.of("S", "on"))).isEmpty();
    assertThat(missing("L", Map.of())).containsExactly("no feed");
  }

  @Test
  void aRelayWhoseCoilGroundLeadsOnlyToAnotherCoilDoesNotPullIn() {
    // Both coils hang on 85 of the other: fed, but without a way to ground.
    battery();
    lamp("L");
    relay("K1", false);
    relay("K2", false);
    wire("BATT.pos", "K1.86");
    wire("BATT.pos", "K2.86");
    wire("K1.85", "K2.85");
    wire("BATT.pos", "K1.30");
    wire("K1.87", "L.in");
    wire("L.out", "BATT.neg");
    assertThat(missing("L", Map.of())).containsExactly("no feed");
  }

  @Test
  void aRestContactConductsWithoutItsCoil() {
    battery();
    lamp("L");
    relay("K", true);
    wire("BATT.pos", "K.30");
    wire("K.87a", "L.in");
    wire("L.out", "BATT.neg");
    assertThat(missing("L", Map.of())).isEmpty();
  }

  @Test
  void twoLoadsInSeriesFeedEachOther() {
    battery();
    lamp("L");
    part("R", new PartSpec.PlainLoad(PartKind.HEATER, Estimate.of(1)));
    wire("BATT.pos", "R.in");
    wire("R.out", "L.in");
    wire("L.out", "BATT.neg");
    assertThat(missing("L", Map.of())).isEmpty();
  }

  @Test
  void twoLampsThatShareALostGroundHaveNoReturn() {
    battery();
    lamp("L");
    lamp("M");
    wire("BATT.pos", "L.in");
    wire("BATT.pos", "M.in");
    wire("L.out", "M.out");
    assertThat(missing("L", Map.of())).containsExactly("no return");
  }

  @Test
  void bothPostsOnOneEndOfALoadMakeNoLoop() {
    battery();
    lamp("L");
    wire("BATT.pos", "L.in");
    wire("L.in", "BATT.neg");
    assertThat(missing("L", Map.of())).containsExactly("no loop");
  }

  @Test
  void anLedTheWrongWayRoundIsBlocked() {
    battery();
    part("D", new PartSpec.Led(Optional.empty(), Estimate.of(0.02)));
    wire("BATT.pos", "D.out");
    wire("D.in", "BATT.neg");
    assertThat(missing("D", Map.of())).containsExactly("blocked by a diode");
  }

  @Test
  void theLoopIsFoundExactlyWhereAPlainSearchOfAllWaysFindsOne() {
    // A plain second way: every simple way from post to post, on 2,000 random networks.
    Random random = new Random(17);
    int with = 0;
    for (int run = 0; run < 2_000; run++) {
      parts.clear();
      battery();
      lamp("L");
      List<String> points = new ArrayList<>(List.of("BATT.pos", "BATT.neg", "L.in", "L.out"));
      for (int n = 0; n < 1 + random.nextInt(5); n++) {
        part("B" + n, new PartSpec.Body());
        points.add("B" + n + ".metal");
      }
      int[][] wires = new int[2 + random.nextInt(9)][];
      for (int w = 0; w < wires.length; w++) {
        int a = random.nextInt(points.size());
        int b = (a + 1 + random.nextInt(points.size() - 1)) % points.size();
        wires[w] = new int[] {a, b};
        wire(points.get(a), points.get(b));
      }
      boolean loop = wayThroughLamp(wires, 0, new HashSet<>(), false);
      with += loop ? 1 : 0;
      assertThat(missing("L", Map.of()).isEmpty()).as("run %d", run).isEqualTo(loop);
    }
    assertThat(with).isBetween(200, 1_800);
  }

  /** Whether a way that meets no point twice leads on to point 1 and passes the lamp, 2 to 3. */
  private static boolean wayThroughLamp(int[][] wires, int at, Set<Integer> met, boolean lit) {
    if (at == 1) {
      return lit;
    }
    met.add(at);
    boolean found = false;
    for (int[] wire : wires) {
      int next = wire[0] == at ? wire[1] : wire[1] == at ? wire[0] : -1;
      found |= next >= 0 && !met.contains(next) && wayThroughLamp(wires, next, met, lit);
    }
    if (!lit && (at == 2 || at == 3) && !met.contains(5 - at)) {
      found |= wayThroughLamp(wires, 5 - at, met, true);
    }
    met.remove(at);
    return found;
  }

  @Test
  void aMisspeltWordFindsItsNeighbourAndAStrangeOneFindsNone() {
    List<String> known = List.of("feed", "load", "common");
    assertThat(Nearest.to("laod", known)).contains("load");
    assertThat(Nearest.to("COMON", known)).contains("common");
    assertThat(Nearest.to("ground", known)).isEmpty();
    assertThat(Nearest.to("x", known)).isEmpty();
  }
}
