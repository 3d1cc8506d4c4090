package loopwright.cli;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.casework.sheet.CellDefect;
import loopwright.casework.sheet.Leniency;
import loopwright.casework.sheet.Mapping;
import loopwright.casework.sheet.PinColumn;
import loopwright.casework.sheet.PinPreview;
import loopwright.casework.sheet.PinSheet;
import loopwright.casework.sheet.Sheet;
import loopwright.casework.sheet.SheetColumn;
import loopwright.casework.sheet.SheetStore;
import loopwright.casework.sheet.WireColumn;
import loopwright.casework.sheet.WirePreview;
import loopwright.casework.sheet.WireSheet;
import loopwright.io.sheet.SheetFiles;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** Prints a vehicle's wire list or pinouts, and takes lists kept in a spreadsheet. */
@Command(
    name = "wires",
    mixinStandardHelpOptions = true,
    exitCodeList = {
      "0:${bundle:exit.wires}",
      "1:${bundle:exit.unsaved}",
      "2:${bundle:exit.line}",
      "3:${bundle:exit.wires-wrong}"
    })
final class WiresCommand implements Callable<Integer> {
  private final CliWorld world;

  @Parameters(paramLabel = "${bundle:label.vehicle}", descriptionKey = "vehicle")
  private String name = "";

  @Option(names = "--in", paramLabel = "${bundle:label.file}")
  private Optional<Path> in = Optional.empty();

  @Option(names = "--column", paramLabel = "${bundle:label.what-heading}")
  private Map<String, String> columns = Map.of();

  @Option(names = "--save", paramLabel = "${bundle:label.file}")
  private Optional<Path> save = Optional.empty();

  @Option(names = "--pins")
  private boolean pins;

  @Option(names = "--connector", paramLabel = "${bundle:label.id}")
  private Set<String> connectors = Set.of();

  @Option(
      names = "--allow",
      paramLabel = "${bundle:label.what}",
      split = ",",
      converter = LeniencyWord.class)
  private Set<Leniency> leniency = Set.of();

  /** Knows what may be left open by its word. */
  static final class LeniencyWord implements ITypeConverter<Leniency> {
    @Override
    public Leniency convert(String word) {
      return Arrays.stream(Leniency.values())
          .filter(l -> l.word().equalsIgnoreCase(word.strip()))
          .findFirst()
          .orElseThrow(() -> new TypeConversionException(word));
    }
  }

  @Mixin private LineWidth width = new LineWidth();

  WiresCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    Page log = width.err(world);
    if (save.isPresent() && in.isEmpty()) {
      log.say(Speech.of("wires.save"));
      return ExitCode.USAGE.number();
    }
    if (!columns.isEmpty() && in.isEmpty()) {
      log.say(Speech.of("wires.column"));
      return ExitCode.USAGE.number();
    }
    Optional<Vehicle> opened = VehicleCommand.open(world, name, log);
    if (opened.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    Vehicle vehicle = opened.get();
    if (!areConnectors(vehicle, log)) {
      return ExitCode.USAGE.number();
    }
    pins |= !connectors.isEmpty();
    if (in.isEmpty()) {
      world.out().print(pins ? PinSheet.text(vehicle, connectors) : WireSheet.text(vehicle));
      world.out().flush();
      return ExitCode.DONE.number();
    }
    SheetStore.Read list;
    try {
      list = new SheetFiles().read(in.get());
    } catch (Problem e) {
      log.say(Speech.problem(e));
      log.flush();
      return ExitCode.VEHICLE.number();
    }
    Page page = width.out(world);
    list.remark().ifPresent(page::say);
    ExitCode code = pins ? pinouts(page, log, list, vehicle) : wires(page, log, list, vehicle);
    page.flush();
    return code.number();
  }

  private boolean areConnectors(Vehicle vehicle, Page log) {
    List<String> known =
        vehicle.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Connector)
            .map(Part::id)
            .toList();
    Optional<String> unknown = connectors.stream().filter(c -> !known.contains(c)).findFirst();
    unknown.ifPresent(
        c -> {
          String have = known.isEmpty() ? Speech.of("wires.none") : String.join(", ", known);
          log.say(Speech.of("wires.connectors", c, have));
          log.flush();
        });
    return unknown.isEmpty();
  }

  private ExitCode wires(Page page, Page log, SheetStore.Read list, Vehicle vehicle) {
    WireSheet sheet = WireSheet.read(list.text(), list.name());
    Optional<Mapping<WireColumn>> mapping = mapped(log, sheet);
    if (mapping.isEmpty()) {
      return ExitCode.USAGE;
    }
    WirePreview preview = sheet.preview(vehicle, mapping.get(), leniency);
    columns(page, preview.mapping());
    page.gap();
    page.say(
        Speech.of(
            "wires.understood",
            List.of(WirePreview.Effect.values()).stream()
                .map(e -> preview.count(e) + " " + Speech.of("wires." + e))
                .collect(Collectors.joining(", "))));
    preview.rows().forEach(row -> show(page, row));
    if (!preview.added().isEmpty()) {
      page.gap();
      page.say(Speech.of("wires.added", preview.added().size()));
      page.items(preview.added().stream().map(WirePreview.Added::told).toList());
    }
    page.items(preview.remarks());
    if (preview.applied().isEmpty()) {
      defects(page, preview.defects());
      page.gap();
      page.say(Speech.of("wires.not-yet"));
      return ExitCode.VEHICLE;
    }
    if (!preview.wanting().isEmpty()) {
      return wanting(page, preview.wanting());
    }
    boolean same =
        preview.added().isEmpty()
            && preview.count(WirePreview.Effect.UNCHANGED) == preview.rows().size();
    return save.isPresent() ? save(page, log, preview.applied().get()) : ready(page, same);
  }

  private static ExitCode wanting(Page page, List<VehicleCheck.Finding> wanting) {
    page.gap();
    page.say(Speech.of("wires.wanting"));
    page.items(wanting.stream().map(VehicleCheck.Finding::message).toList());
    return ExitCode.VEHICLE;
  }

  private static ExitCode ready(Page page, boolean same) {
    page.gap();
    page.say(same ? Speech.of("wires.all-there") : Speech.of("wires.to-keep"));
    return ExitCode.DONE;
  }

  private ExitCode save(Page page, Page log, Vehicle changed) {
    page.gap();
    ExitCode code = Saving.save(page, log, save.orElseThrow(), changed);
    log.flush();
    return code;
  }

  private static void show(Page page, WirePreview.Row row) {
    Part wire = row.wire();
    String title = "  " + Speech.of("wires." + row.effect()) + " " + wire.id() + ": ";
    switch (row.effect()) {
      case NEW -> {
        PartSpec.Wire spec = (PartSpec.Wire) wire.spec();
        page.block(
            title,
            Speech.of("wires.from-to", spec.from(), spec.to())
                + ", "
                + spec.size()
                + ", "
                + WireSheet.length(spec)
                + (spec.colour().isEmpty() ? "" : ", " + spec.colour())
                + taken(row));
      }
      case CHANGED ->
          page.block(
              title,
              row.changes().stream()
                      .map(
                          c ->
                              c.column().said()
                                  + " "
                                  + (c.before().isEmpty() ? Speech.of("wires.none") : c.before())
                                  + " -> "
                                  + (c.after().isEmpty() ? Speech.of("wires.none") : c.after()))
                      .collect(Collectors.joining("; "))
                  + taken(row));
      case UNCHANGED -> {
        // Counted above; a long list of them would hide what changes.
      }
    }
  }

  private static String taken(WirePreview.Row row) {
    return row.taken().isEmpty() ? "" : " (" + String.join("; ", row.taken()) + ")";
  }

  private ExitCode pinouts(Page page, Page log, SheetStore.Read list, Vehicle vehicle) {
    PinSheet sheet = PinSheet.read(list.text(), list.name());
    Optional<Mapping<PinColumn>> mapping = mapped(log, sheet);
    if (mapping.isEmpty()) {
      return ExitCode.USAGE;
    }
    PinPreview preview = sheet.preview(vehicle, mapping.get(), connectors);
    columns(page, preview.mapping());
    page.items(preview.remarks());
    page.gap();
    page.say(Speech.of("wires.agreeing", preview.agreeing()));
    if (!preview.differences().isEmpty()) {
      page.gap();
      page.say(Speech.of("wires.differing", preview.differences().size()));
      page.items(preview.differences().stream().map(PinPreview.Difference::message).toList());
    }
    if (!preview.defects().isEmpty()) {
      defects(page, preview.defects());
    }
    if (save.isPresent() && preview.applied().isEmpty()) {
      page.gap();
      page.say(Speech.of("wires.not-yet"));
      return ExitCode.VEHICLE;
    }
    if (save.isPresent()) {
      return preview.wanting().isEmpty()
          ? save(page, log, preview.applied().orElseThrow())
          : wanting(page, preview.wanting());
    }
    return preview.defects().isEmpty() && preview.differences().isEmpty()
        ? ExitCode.DONE
        : ExitCode.VEHICLE;
  }

  private static void defects(Page page, List<CellDefect> defects) {
    page.gap();
    page.say(Speech.of("wires.defects", defects.size()));
    page.items(defects.stream().map(CellDefect::message).toList());
  }

  private static <C extends Enum<C> & SheetColumn> void columns(Page page, Mapping<C> mapping) {
    if (mapping.headings().isEmpty()) {
      return;
    }
    page.say(
        Speech.of(
            "wires.columns",
            mapping.columns().entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .map(
                    e ->
                        e.getValue()
                            + " "
                            + mapping.heading(e.getValue())
                            + " = "
                            + e.getKey().said())
                .collect(Collectors.joining(", "))));
  }

  /** The guessed columns with those given on the command line; empty if one isn't understood. */
  private <C extends Enum<C> & SheetColumn> Optional<Mapping<C>> mapped(Page log, Sheet<C> sheet) {
    Mapping<C> mapping = sheet.guess();
    for (Map.Entry<String, String> given : columns.entrySet()) {
      Optional<C> column =
          sheet.columns().stream()
              .filter(
                  c ->
                      Stream.of(c.word(), c.said())
                          .anyMatch(given.getKey().strip()::equalsIgnoreCase))
              .findFirst();
      Optional<Integer> number = mapping.find(given.getValue());
      if (column.isEmpty() || (number.isEmpty() && !given.getValue().isBlank())) {
        List<String> words = sheet.columns().stream().map(SheetColumn::said).toList();
        log.say(
            column.isEmpty()
                ? Speech.of("wires.which", given.getKey(), String.join(", ", words))
                : Speech.of(
                    "wires.no-column",
                    given.getKey(),
                    given.getValue(),
                    String.join(", ", mapping.headings())));
        log.flush();
        return Optional.empty();
      }
      mapping =
          number.isPresent()
              ? mapping.with(column.get(), number.get())
              : mapping.without(column.get());
    }
    return Optional.of(mapping);
  }
}
