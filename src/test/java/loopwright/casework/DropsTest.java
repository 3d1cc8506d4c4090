package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;

/** Kirchhoff's voltage law by hand: the shares of a loop add up to what the battery gives. */
class DropsTest {

  private static final List<PartKind> KINDS =
      List.of(PartKind.FUSE, PartKind.WIRE, PartKind.LAMP, PartKind.WIRE);

  /** A battery, fuse, wire, lamp, wire: 12.6, 12.5, 12.3, 0.1, 0 V in health. */
  private static LoopView loop(double sign, Double... measured) {
    double[] healthy = {12.6, 12.5, 12.3, 0.1, 0};
    List<LoopView.PieceView> pieces = new ArrayList<>();
    List<LoopView.Stair> stairs = new ArrayList<>();
    for (int i = 0; i < healthy.length; i++) {
      List<LoopView.Measured> here =
          measured[i] == null ? List.of() : List.of(new LoopView.Measured(i + 1, measured[i]));
      double v = sign * healthy[i];
      stairs.add(
          new LoopView.Stair(
              new TerminalRef("P" + i, "t"),
              List.of(),
              new Band(v - 0.2, v + 0.2, Band.Unit.VOLT),
              here,
              true));
      if (i < KINDS.size()) {
        pieces.add(
            new LoopView.PieceView(
                "X" + i,
                "part " + i,
                "",
                KINDS.get(i),
                Optional.empty(),
                Optional.empty(),
                "",
                LoopView.Standing.HELD,
                0,
                List.of()));
      }
    }
    return new LoopView("lamp", pieces, stairs, List.of());
  }

  @Test
  void sharesAddUpAndTheLossIsNamed() {
    Drops drops = Drops.of(loop(1, 12.5, null, 10.2, 0.15, null)).orElseThrow();
    assertThat(drops.shares()).hasSize(3);
    assertThat(drops.shares())
        .extracting(Drops.Share::side)
        .containsExactly(Drops.Side.FEED, Drops.Side.LOAD, Drops.Side.RETURN);
    assertThat(drops.shares().stream().mapToDouble(Drops.Share::measured).sum())
        .isEqualTo(12.5, within(1e-9));
    Drops.Share worst = drops.worst().orElseThrow();
    assertThat(worst.parts()).containsExactly("part 0", "part 1");
    assertThat(worst.measured()).isEqualTo(2.3, within(1e-9));
    assertThat(worst.healthy()).isEqualTo(0.3, within(1e-9));
  }

  @Test
  void aLossInTheGroundOfAPositiveGroundVehicleIsNamedToo() {
    Drops drops = Drops.of(loop(-1, -12.6, null, -12.3, -2.0, null)).orElseThrow();
    assertThat(drops.worst().orElseThrow().side()).isEqualTo(Drops.Side.RETURN);
    assertThat(drops.worst().orElseThrow().measured()).isEqualTo(2.0, within(1e-9));
  }

  @Test
  void whatIsAsInHealthHasNoWorstShare() {
    assertThat(Drops.of(loop(1, 12.6, 12.5, 12.3, 0.1, null)).orElseThrow().worst()).isEmpty();
  }

  @Test
  void theBatteryIsTakenAsUsualWhereNobodyMeasuredIt() {
    Drops drops = Drops.of(loop(1, null, 12.0, 9.0, null, null)).orElseThrow();
    Drops.Share first = drops.shares().get(0);
    assertThat(first.about()).isTrue();
    assertThat(first.measured()).isEqualTo(0.6, within(1e-9));
    assertThat(drops.worst().orElseThrow().from()).isEqualTo(new TerminalRef("P1", "t"));
    // The battery may be 0.2 V off: so little isn't called a loss of the feed.
    Drops little = Drops.of(loop(1, null, 12.25, 12.1, null, null)).orElseThrow();
    assertThat(little.worst()).isEmpty();
    // All of it past an open switch is.
    Drops open = Drops.of(loop(1, null, null, 0.0, 0.0, null)).orElseThrow();
    assertThat(open.worst().orElseThrow().measured()).isEqualTo(12.6, within(1e-9));
  }

  @Test
  void oneReadingMakesNoShares() {
    assertThat(Drops.of(loop(1, 12.6, null, null, null, null))).isEmpty();
  }
}
