package loopwright.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.CaseDesk;
import loopwright.casework.OrderCard;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.model.Vehicle;
import loopwright.report.OrderSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows or prints the order of checks of a circuit. */
@Command(
    name = "card",
    mixinStandardHelpOptions = true,
    exitCodeList = {
      "0:${bundle:exit.shown}",
      "1:${bundle:exit.unwritten}",
      "2:${bundle:exit.line}",
      "3:${bundle:exit.vehicle}"
    })
final class CardCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  @Parameters(index = "1", paramLabel = "${bundle:label.circuit}", descriptionKey = "circuit")
  private String circuit = "";

  @Option(names = "--complaint", paramLabel = "${bundle:label.words}")
  private String complaint = ComplaintKind.DEAD.words();

  CardCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() throws Problem {
    if (print.out.isPresent() && !print.asks(".pdf")) {
      return print.unknownEnding(world, ".pdf");
    }
    Optional<Vehicle> vehicle = VehicleCommand.open(world, print.vehicle);
    if (vehicle.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    OrderCard card;
    try {
      CaseDesk.Complaint words = world.desk().understand(vehicle.get(), circuit + " " + complaint);
      boolean same = words.circuit().equals(circuit);
      card =
          world
              .cardDesk()
              .card(
                  vehicle.get(),
                  new CaseDesk.Complaint(
                      circuit, same ? words.load() : Optional.empty(), words.kind()));
    } catch (Problem e) {
      new Page(world.err(), Page.USUAL).say(Speech.problem(e));
      return ExitCode.USAGE.number();
    }
    if (print.out.isPresent()) {
      return print.write(
          world,
          "card",
          OrderSheet.pdf(List.of(card), print.paper, OutOptions.today(world), print.phrases));
    }
    show(card.upTo(card.checks()));
    return ExitCode.DONE.number();
  }

  private void show(OrderCard.Page card) {
    Page page = new Page(world.out(), Page.USUAL);
    page.say(card.vehicle() + ": " + card.title());
    page.say(print.phrases.say("order-card.how"));
    card.cautions().forEach(c -> page.block(Speech.label("careful").stripLeading(), c));
    for (int i = 0; i < card.steps().size(); i++) {
      OrderCard.Step step = card.steps().get(i);
      page.gap();
      page.say((i + 1) + "  " + step.what());
      page.labelled(" " + Speech.label("careful"), step.cautions());
      page.labelled(" " + Speech.label("set"), step.set());
      page.labelled(" " + Speech.label("red"), given(step.red()));
      page.labelled(" " + Speech.label("black"), given(step.black()));
      page.labelled(" " + Speech.label("good"), given(step.healthy()));
      page.block(" " + Speech.label("read"), "____________");
      for (OrderCard.Way way : step.ways()) {
        page.block(
            "   - " + way.result() + ": ",
            way.step()
                .map(n -> print.phrases.say("order-card.go", Integer.toString(n)))
                .orElseGet(way::left));
      }
    }
    page.gap();
    page.say(print.phrases.say("order-card.left"));
    page.flush();
  }

  private static List<String> given(String text) {
    return text.isEmpty() ? List.of() : List.of(text);
  }
}
