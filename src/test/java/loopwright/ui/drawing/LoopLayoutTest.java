package loopwright.ui.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.casework.Band;
import loopwright.casework.LoopView;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;
import loopwright.ui.drawing.LoopPlan.Box;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Loops of all lengths laid out in all rooms that the window has. */
class LoopLayoutTest {
  private static final LoopLayout.TextWidth HALF_EM_A_LETTER =
      (text, size) -> 0.55 * size * text.length();

  /** Room in em: 1280 and 1024 pixels across at 100, 125, 150 and 200 %. */
  private static final double[][] ROOMS = {
    {78, 16}, {62, 10.5}, {62, 12}, {50, 11}, {40, 20}, {38, 17}, {30, 15}, {30, 12}
  };

  static Stream<LoopLayout.Request> loopsAndRooms() {
    Random random = new Random(7);
    List<LoopLayout.Request> all = new ArrayList<>();
    for (int pieces : new int[] {2, 5, 9, 12, 17, 26, 40}) {
      for (double[] room : ROOMS) {
        LoopView loop = loop(random, pieces, random.nextInt(3), 12.6);
        Optional<TerminalRef> red =
            Optional.of(loop.stairs().get(random.nextInt(pieces + 1)).point());
        Optional<TerminalRef> black = Optional.of(loop.stairs().get(pieces).point());
        for (LoopLayout.Folding folding : LoopLayout.Folding.values()) {
          all.add(
              new LoopLayout.Request(
                  loop, room[0], room[1], red, black, folding, HALF_EM_A_LETTER));
        }
      }
    }
    return all.stream();
  }

  private static LoopView loop(Random random, int pieces, int branches, double feedVolts) {
    int load = pieces * 2 / 3;
    PartKind[] kinds = PartKind.values();
    double[] belief = random.doubles(pieces).map(b -> b / pieces).toArray();
    List<LoopView.PieceView> list =
        IntStream.range(0, pieces)
            .mapToObj(
                i -> {
                  PartKind kind =
                      i == load
                          ? PartKind.LAMP
                          : i % 2 == 0 ? PartKind.WIRE : kinds[random.nextInt(kinds.length)];
                  return new LoopView.PieceView(
                      "P" + i,
                      "some long named piece of the loop P" + i,
                      "",
                      kind,
                      Optional.empty(),
                      Optional.empty(),
                      "",
                      random.nextInt(3) == 0 ? LoopView.Standing.CLEARED : LoopView.Standing.HELD,
                      belief[i],
                      List.of());
                })
            .toList();
    List<LoopView.Stair> stairs =
        IntStream.rangeClosed(0, pieces)
            .mapToObj(
                i -> {
                  double volts = i <= load ? feedVolts - Math.signum(feedVolts) * 0.05 * i : 0;
                  List<LoopView.Measured> measured =
                      random.nextInt(3) == 0
                          ? List.of(new LoopView.Measured(i + 1, volts))
                          : List.of();
                  return new LoopView.Stair(
                      new TerminalRef("N" + i, "x"),
                      List.of(new TerminalRef("M" + i, "y")),
                      new Band(volts - 0.1, volts + 0.1, Band.Unit.VOLT),
                      measured,
                      true);
                })
            .toList();
    List<LoopView> acting = new ArrayList<>();
    for (int b = 0; b < branches; b++) {
      acting.add(loop(random, 6, 0, feedVolts));
    }
    return new LoopView("Loop", list, stairs, acting);
  }

  @ParameterizedTest
  @MethodSource("loopsAndRooms")
  void nothingLiesOnSomethingElse(LoopLayout.Request request) {
    LoopPlan plan = LoopLayout.of(request);
    assertApart(plan.pieces().stream().map(p -> p.id().box()).toList());
    assertApart(
        plan.pieces().stream().flatMap(p -> p.name().stream()).map(LoopPlan.Label::box).toList());
    assertApart(plan.pieces().stream().map(LoopPlan.Piece::symbol).toList());
    assertApart(plan.nodes().stream().map(LoopPlan.Node::band).toList());
    assertApart(
        plan.nodes().stream().flatMap(n -> n.value().stream()).map(LoopPlan.Label::box).toList());
    List<Box> leads =
        plan.nodes().stream()
            .filter(n -> n.lead().isPresent())
            .map(LoopPlan.Node::leadBox)
            .toList();
    assertApart(leads);
    for (Box lead : leads) {
      assertThat(plan.pieces()).noneMatch(p -> p.id().box().overlaps(lead));
    }
    for (LoopPlan.Row row : plan.rows()) {
      assertApart(row.pieces().stream().map(p -> p.id().box()).toList());
      assertApart(row.pieces().stream().map(LoopPlan.Piece::symbol).toList());
      assertThat(row.pieces())
          .allMatch(
              p ->
                  p.cell().bottom()
                      <= plan.pieces().stream().mapToDouble(m -> m.id().box().y()).min().orElse(99)
                          + 1e-9);
    }
    assertApart(plan.ticks().stream().map(t -> t.label().box()).toList());
  }

  private static void assertApart(List<Box> boxes) {
    for (int i = 0; i < boxes.size(); i++) {
      for (int j = i + 1; j < boxes.size(); j++) {
        assertThat(boxes.get(i).overlaps(boxes.get(j)))
            .as("%s on %s", boxes.get(i), boxes.get(j))
            .isFalse();
      }
    }
  }

  @ParameterizedTest
  @MethodSource("loopsAndRooms")
  void everyColumnOfTheStaircaseStandsUnderItsNode(LoopLayout.Request request) {
    LoopPlan plan = LoopLayout.of(request);
    for (LoopPlan.Node node : plan.nodes()) {
      assertThat(node.band().centreX()).isCloseTo(node.x(), within(1e-9));
      assertThat(node.band().y()).isGreaterThan(plan.lineY());
      assertThat(node.points()).allMatch(p -> p.y() > plan.lineY() && p.y() <= plan.railY() + 1e-9);
    }
    for (LoopPlan.Piece piece : plan.pieces()) {
      assertThat(piece.symbol().x()).isGreaterThanOrEqualTo(piece.cell().x());
      assertThat(piece.symbol().right()).isLessThanOrEqualTo(piece.cell().right());
      assertThat(x(plan, piece.index())).isCloseTo(piece.cell().x(), within(1e-9));
    }
  }

  private static double x(LoopPlan plan, int node) {
    return plan.nodes().stream()
        .filter(n -> n.index() == node)
        .mapToDouble(LoopPlan.Node::x)
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @MethodSource("loopsAndRooms")
  void allLiesInsideTheDrawingAndTheDrawingInsideItsRoomDown(LoopLayout.Request request) {
    LoopPlan plan = LoopLayout.of(request);
    Box whole = new Box(0, 0, plan.width(), plan.height());
    Stream<Box> boxes =
        Stream.of(
                plan.pieces().stream().map(LoopPlan.Piece::cell),
                plan.nodes().stream().map(LoopPlan.Node::band),
                plan.nodes().stream().flatMap(n -> n.value().stream()).map(LoopPlan.Label::box),
                plan.folds().stream().map(LoopPlan.Fold::cell),
                plan.rows().stream().flatMap(r -> r.pieces().stream()).map(LoopPlan.Piece::cell))
            .flatMap(s -> s);
    assertThat(boxes)
        .allMatch(
            b ->
                b.x() >= whole.x()
                    && b.y() >= whole.y()
                    && b.right() <= whole.right() + 1e-9
                    && b.bottom() <= whole.bottom() + 1e-9);
    assertThat(plan.height()).isLessThanOrEqualTo(request.height() + 1e-9);
  }

  @ParameterizedTest
  @MethodSource("loopsAndRooms")
  void aFoldNeverHidesTheLeadsOrTheStrongestSuspect(LoopLayout.Request request) {
    LoopPlan plan = LoopLayout.of(request);
    assertThat(plan.nodes())
        .anyMatch(n -> request.red().equals(Optional.of(n.view().point())))
        .anyMatch(n -> request.black().equals(Optional.of(n.view().point())));
    double strongest =
        request.loop().pieces().stream()
            .filter(p -> p.standing() == LoopView.Standing.HELD)
            .mapToDouble(LoopView.PieceView::belief)
            .max()
            .orElse(0);
    double overall =
        request.loop().pieces().stream().mapToDouble(LoopView.PieceView::belief).max().orElse(0);
    if (strongest == overall) {
      assertThat(plan.pieces()).anyMatch(p -> p.view().belief() == strongest);
    }
    int drawn = plan.pieces().size() + plan.folds().stream().mapToInt(f -> f.to() - f.from()).sum();
    assertThat(drawn).isEqualTo(request.loop().pieces().size());
  }

  @Test
  void aLongLoopIsFoldedIntoTheRoomAndDrawnWholeWhenAsked() {
    LoopView loop = loop(new Random(1), 40, 0, 12.6);
    LoopPlan folded = LoopLayout.of(request(loop, 60, LoopLayout.Folding.PART_IN_QUESTION));
    LoopPlan whole = LoopLayout.of(request(loop, 60, LoopLayout.Folding.WHOLE));
    assertThat(folded.width()).isLessThanOrEqualTo(60);
    assertThat(folded.folds()).isNotEmpty();
    assertThat(whole.folds()).isEmpty();
    assertThat(whole.width()).isGreaterThan(60);
  }

  @Test
  void theFeedOfAPositiveGroundVehicleIsDrawnAtTheTop() {
    LoopView loop = loop(new Random(1), 8, 0, -6.3);
    LoopPlan plan = LoopLayout.of(request(loop, 60, LoopLayout.Folding.WHOLE));
    LoopPlan.Node feed = plan.nodes().get(0);
    LoopPlan.Node post = plan.nodes().get(plan.nodes().size() - 1);
    assertThat(feed.band().y()).isLessThan(post.band().y() - 1);
    assertThat(plan.ticks()).allMatch(t -> t.volts() < 0);
  }

  @Test
  void aReadingHigherIsDrawnHigher() {
    LoopView loop = loop(new Random(3), 9, 0, 12.6);
    LoopPlan plan = LoopLayout.of(request(loop, 60, LoopLayout.Folding.WHOLE));
    List<LoopPlan.Point> points = plan.nodes().stream().flatMap(n -> n.points().stream()).toList();
    for (LoopPlan.Point a : points) {
      for (LoopPlan.Point b : points) {
        if (a.volts() > b.volts()) {
          assertThat(a.y()).isLessThan(b.y());
        }
      }
    }
  }

  @Test
  void theLoopWithTheLeadsTakesTheMainRow() {
    LoopView loop = loop(new Random(5), 9, 1, 12.6);
    LoopView coil =
        new LoopView(
            "Coil",
            loop.branches().get(0).pieces(),
            loop.branches().get(0).stairs().stream().map(LoopLayoutTest::renamed).toList(),
            List.of());
    LoopView both = new LoopView("Lamp", loop.pieces(), loop.stairs(), List.of(coil));
    LoopPlan plan =
        LoopLayout.of(
            new LoopLayout.Request(
                both,
                60,
                18,
                Optional.of(coil.stairs().get(2).point()),
                Optional.of(coil.stairs().get(6).point()),
                LoopLayout.Folding.PART_IN_QUESTION,
                HALF_EM_A_LETTER));
    assertThat(plan.title()).isEqualTo("Coil");
    assertThat(plan.rows()).extracting(LoopPlan.Row::title).containsExactly("Lamp");
  }

  private static LoopView.Stair renamed(LoopView.Stair s) {
    return new LoopView.Stair(
        new TerminalRef("C" + s.point().part(), "x"),
        List.of(),
        s.healthy(),
        s.measured(),
        s.reachable());
  }

  private static LoopLayout.Request request(
      LoopView loop, double width, LoopLayout.Folding folding) {
    return new LoopLayout.Request(
        loop, width, 16, Optional.empty(), Optional.empty(), folding, HALF_EM_A_LETTER);
  }
}
