package loopwright.app;

import static loopwright.report.Paper.day;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.CaseDesk;
import loopwright.casework.CircuitDrawing;
import loopwright.casework.CircuitLoops;
import loopwright.casework.OrderCard;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.list.Allowance;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTables;
import loopwright.casework.list.MakingList;
import loopwright.diagnosis.ComplaintKind;
import loopwright.io.OutFile;
import loopwright.io.sheet.ListSheet;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.report.CircuitSheet;
import loopwright.report.KnownGoodCard;
import loopwright.report.LabelSheet;
import loopwright.report.MakingSheet;
import loopwright.report.OrderSheet;
import loopwright.report.PageSize;
import loopwright.report.PlanSheet;
import loopwright.ui.lists.Prints;

/** Writes what the window prints. */
record PrintFiles(Engine engine, Clock clock) implements Prints {
  @Override
  public Path write(Plan plan, Sheet sheet, Paper paper, Path folder) throws IOException, Problem {
    Vehicle vehicle = plan.vehicle();
    PageSize size = paper == Paper.LETTER ? PageSize.LETTER : PageSize.A4;
    Phrases phrases = engine.phrases();
    String date = day(LocalDate.now(clock));
    byte[] bytes =
        switch (sheet) {
          case MAKING -> MakingSheet.pdf(making(vehicle), size, date, phrases);
          case LABELS -> LabelSheet.pdf(vehicle, size, date, phrases);
          case DRAWINGS -> CircuitSheet.pdf(vehicle, drawings(vehicle), size, date, phrases);
          case CHECK ->
              PlanSheet.pdf(engine.paperDesk().check(vehicle, plan.hottest()), size, date, phrases);
          case KNOWN_GOOD ->
              KnownGoodCard.pdf(engine.knownGood(vehicle), size, clock.getZone(), date, phrases);
          case BUYING -> table(new ListTables(making(vehicle), phrases).buying());
          case CUTTING -> table(new ListTables(making(vehicle), phrases).cutting());
          case ORDER -> OrderSheet.pdf(cards(plan), size, date, phrases);
        };
    Path file = folder.resolve(name(plan, sheet)).toAbsolutePath();
    OutFile.write(file, vehicle.name(), bytes);
    return file;
  }

  private MakingList making(Vehicle vehicle) {
    return MakingList.of(vehicle, Allowance.USUAL, engine.phrases());
  }

  private List<Circuit> circuits(Vehicle vehicle) throws Problem {
    if (vehicle.circuits().isEmpty()) {
      throw new Problem("vehicle", vehicle.name(), engine.phrases().say("problem.no-circuits"));
    }
    return vehicle.circuits();
  }

  private List<OrderCard> cards(Plan plan) throws Problem {
    List<OrderCard> cards = new ArrayList<>();
    for (Circuit circuit : circuits(plan.vehicle())) {
      if (plan.circuit().map(circuit.id()::equals).orElse(true)) {
        cards.add(
            engine
                .cardDesk()
                .card(
                    plan.vehicle(),
                    new CaseDesk.Complaint(circuit.id(), Optional.empty(), ComplaintKind.DEAD)));
      }
    }
    return cards;
  }

  private List<CircuitDrawing> drawings(Vehicle vehicle) throws Problem {
    CircuitLoops loops = engine.loops(vehicle);
    List<CircuitDrawing> drawings = new ArrayList<>();
    for (Circuit circuit : circuits(vehicle)) {
      drawings.add(loops.drawing(circuit.id()));
    }
    return drawings;
  }

  private static byte[] table(ListTable table) {
    return ListSheet.text(table).getBytes(StandardCharsets.UTF_8);
  }

  private static String name(Plan plan, Sheet sheet) {
    String ending = sheet == Sheet.BUYING || sheet == Sheet.CUTTING ? ".csv" : ".pdf";
    Optional<String> circuit = plan.circuit().filter(c -> sheet == Sheet.ORDER);
    return safe(plan.vehicle().id())
        + "-"
        + sheet.name().toLowerCase(Locale.ROOT)
        + circuit.map(c -> "-" + safe(c)).orElse("")
        + ending;
  }

  private static String safe(String id) {
    return id.replaceAll("[^\\p{Alnum}_-]", "_");
  }
}
