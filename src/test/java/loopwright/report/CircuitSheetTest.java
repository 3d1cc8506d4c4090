package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import loopwright.casework.CircuitDrawing;
import loopwright.casework.CircuitLoops;
import loopwright.casework.LoopView;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.diagnosis.Cart;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CircuitSheetTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);
  private static final Map<String, List<CircuitDrawing>> DRAWN = new HashMap<>();
  private static final Map<String, Printed> PRINTED = new HashMap<>();

  /** All circuits of a vehicle on paper, each beginning a page. */
  private record Printed(List<Leaf> leaves, byte[] pdf) {
    static Printed of(String name, PageSize size) {
      Paper paper =
          CircuitSheet.paper(Bench.vehicle(name), drawings(name), size, "1 May 2024", PHRASES);
      return new Printed(paper.finished(), paper.pdf());
    }

    /** The texts of each circuit's pages. */
    List<List<String>> circuits() {
      List<String> pages = Pages.texts(pdf);
      assertThat(pages).hasSameSizeAs(leaves);
      List<List<String>> circuits = new ArrayList<>();
      for (int i = 0; i < pages.size(); i++) {
        if (leaves.get(i).texts().stream().anyMatch(t -> t.size() == Paper.TITLE)) {
          circuits.add(new ArrayList<>());
        }
        circuits.get(circuits.size() - 1).add(pages.get(i));
      }
      return circuits;
    }
  }

  private static synchronized Printed printed(String name, PageSize size) {
    return PRINTED.computeIfAbsent(name + " " + size, n -> Printed.of(name, size));
  }

  private static synchronized List<CircuitDrawing> drawings(String name) {
    return DRAWN.computeIfAbsent(name, n -> drawings(Bench.vehicle(n)));
  }

  private static List<CircuitDrawing> drawings(Vehicle vehicle) {
    CircuitLoops loops =
        new CircuitLoops(vehicle, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), PHRASES);
    List<CircuitDrawing> drawings = new ArrayList<>();
    for (Circuit circuit : vehicle.circuits()) {
      try {
        drawings.add(loops.drawing(circuit.id()));
      } catch (Problem e) {
        throw new AssertionError(e);
      }
    }
    return drawings;
  }

  @ParameterizedTest
  @CsvSource({"pumper, A4", "tractor, LETTER", "truck, A4", "motorcycle, LETTER"})
  void nothingOverlapsOrIsTooSmallAndAllIsBlack(String name, PageSize size) {
    Printed printed = printed(name, size);
    Pages.wellLaidOut(printed.leaves(), 7 - 1e-9);
    Pages.blackOnly(printed.pdf());
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void eachCircuitHasItsPartsTerminalsLabelsSizesAndVoltsOnItsPages(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    List<List<String>> circuits = printed(name, PageSize.A4).circuits();
    assertThat(circuits).hasSameSizeAs(drawings(name));
    for (int c = 0; c < circuits.size(); c++) {
      CircuitDrawing drawing = drawings(name).get(c);
      List<String> pages = circuits.get(c);
      // The drawing and its cautions stay on one page, but for one with three loops of 13 pieces.
      assertThat(pages.get(0).contains("Ohms only on a dead loop"))
          .as(drawing.circuit().id())
          .isEqualTo(!drawing.circuit().id().equals("floods"));
      // Opened and closed by spaces, so that W1 isn't found in W11.
      String text = " " + String.join(" ", pages).replaceAll("[\\s\u00a0]+", " ") + " ";
      assertThat(text).contains(drawing.circuit().name());
      drawing.on().forEach(line -> assertThat(text).contains(line));
      assertThat(drawing.loops()).as(drawing.circuit().id()).isNotEmpty();
      for (CircuitDrawing.DrawnLoop loop : drawing.loops()) {
        for (LoopView.PieceView piece : loop.view().pieces()) {
          Part part = vehicle.requirePart(piece.part());
          assertThat(text).contains(" " + part.id() + " ");
          if (!part.label().isEmpty()) {
            assertThat(text).contains("\u201c" + part.label().split(" ")[0]);
          }
          if (part.spec() instanceof PartSpec.Wire w) {
            assertThat(text).contains(" " + w.size() + " ");
            for (String word : w.colour().split(" ")) {
              assertThat(text).contains(" " + word);
            }
          } else {
            piece.in().ifPresent(t -> assertThat(text).contains(" " + t.terminal() + " "));
            piece.out().ifPresent(t -> assertThat(text).contains(" " + t.terminal() + " "));
          }
          if (part.spec() instanceof PartSpec.Fuse f) {
            assertThat(text).contains(" " + piece.detail() + " ");
            assertThat(piece.detail())
                .isEqualTo((long) f.amps() == f.amps() ? (long) f.amps() + " A" : f.amps() + " A");
          }
        }
        for (int i = 0; i < loop.volts().size(); i++) {
          TerminalRef point = loop.view().stairs().get(i).point();
          // The table holds every point with its range in one line.
          assertThat(text).contains(point.toString()).contains(loop.volts().get(i));
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void everyLoadOfACircuitIsDrawn(String name) {
    for (CircuitDrawing drawing : drawings(name)) {
      List<String> drawn =
          Strand.of(drawing).stream()
              .flatMap(s -> s.pieces().stream())
              .map(p -> p.view().part())
              .toList();
      assertThat(drawn).containsAll(drawing.circuit().loads().stream().map(LoadRef::part).toList());
    }
  }

  /** The lamp circuit of {@link Cart}: battery, F1, contact of K1, W7, C1, W8, L1, W9, G1, W13. */
  @Test
  void theLoopOfTheCartIsNumberedFromPostToPostAndItsCoilJoinsIt() {
    List<Strand> strands = Strand.of(drawings(Cart.VEHICLE).get(0));
    assertThat(strands).hasSize(2);
    assertThat(strands.get(0).pieces().stream().map(p -> p.view().part()))
        .containsExactly("F1", "K1", "W7", "C1", "W8", "L1", "W9", "G1", "W13");
    assertThat(strands.get(0).nodes().stream().map(Strand.Node::number))
        .containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
    assertThat(strands.get(1).title()).startsWith("coil of lamp relay K1, about ");
    assertThat(strands.get(1).pieces().stream().map(p -> p.view().part()))
        .containsExactly("S1", "W4", "K1");
    // From the fuse (2) by two points of its own to the ground lug (8).
    assertThat(strands.get(1).nodes().stream().map(Strand.Node::number))
        .containsExactly(2, 11, 12, 8);
  }

  @Test
  void anUnknownCircuitIsNamed() {
    CircuitLoops loops =
        new CircuitLoops(Cart.VEHICLE, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), PHRASES);
    assertThatThrownBy(() -> loops.drawing("horn"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("horn")
        .hasMessageContaining("lamp, tail");
  }
}
