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
    description = {
      "The order of checks of a circuit on one card: what to check first, and after each result",
      "where to go, with what is good, cautions and room to write. On paper with --out FILE.pdf."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:shown or written",
      "1:the file can't be written",
      "2:the command line was not understood",
      "3:the vehicle can't be read or has defects"
    })
final class CardCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  @Parameters(
      index = "1",
      paramLabel = "CIRCUIT",
      description = "The circuit's id, for instance beacon.")
  private String circuit = "";

  @Option(
      names = "--complaint",
      paramLabel = "WORDS",
      description = "What it does, for instance dim; dead if left out.")
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
      new Page(world.err(), Page.USUAL).say(e.getMessage());
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
    card.cautions().forEach(c -> page.block("CAREFUL  ", c));
    for (int i = 0; i < card.steps().size(); i++) {
      OrderCard.Step step = card.steps().get(i);
      page.gap();
      page.say((i + 1) + "  " + step.what());
      page.labelled("   CAREFUL  ", step.cautions());
      page.labelled("   SET      ", step.set());
      page.labelled("   RED      ", given(step.red()));
      page.labelled("   BLACK    ", given(step.black()));
      page.labelled("   GOOD     ", given(step.healthy()));
      page.block("   I READ   ", "____________");
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
