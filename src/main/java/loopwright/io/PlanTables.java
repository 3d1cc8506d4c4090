package loopwright.io;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import loopwright.knowledge.PatternValues;
import loopwright.knowledge.WireFuses;
import loopwright.model.Spread;
import loopwright.model.WireSize;

/** Reads the tables that plans are made by and checked by. */
final class PlanTables {
  private static final String WIRE_FUSES = "wire-fuse.csv";
  private static final String LOADS = "pattern-loads.csv";
  private static final String SOCKETS = "trailer-sockets.csv";
  private static final String DROPS = "voltage-drop-limits.csv";

  private static final List<String> WIRE_FUSE_COLUMNS =
      List.of("wire_system", "wire_size", "fuse_A", "source", "origin");
  private static final List<String> LOAD_COLUMNS =
      List.of("load", "system_V", "low", "typical", "high", "unit", "source", "origin");
  private static final List<String> SOCKET_COLUMNS =
      List.of("standard", "system_V", "pin", "marking", "function", "source", "origin");
  private static final List<String> DROP_COLUMNS =
      List.of("piece", "system_V", "max_drop_V", "source", "origin");

  private final Path folder;
  private final List<Defect> all;

  /**
   * Reads from a folder.
   *
   * @param folder the folder {@code reference}
   * @param all what is wrong with the tables is added to these
   */
  PlanTables(Path folder, List<Defect> all) {
    this.folder = folder;
    this.all = all;
  }

  /** The greatest fuse for each size of wire. */
  WireFuses wireFuses() {
    List<WireFuses.Row> rows = new ArrayList<>();
    each(
        WIRE_FUSES,
        WIRE_FUSE_COLUMNS,
        (row, defects) -> wireFuse(row, defects).ifPresent(rows::add));
    return new WireFuses(rows);
  }

  /** What circuit patterns begin with. */
  PatternValues patternValues() {
    List<PatternValues.Load> loads = new ArrayList<>();
    each(LOADS, LOAD_COLUMNS, (row, defects) -> load(row, defects).ifPresent(loads::add));
    List<PatternValues.Pin> pins = new ArrayList<>();
    each(
        SOCKETS,
        SOCKET_COLUMNS,
        (row, defects) ->
            volts(row, row.text("standard"), defects)
                .ifPresent(
                    v ->
                        pins.add(
                            new PatternValues.Pin(
                                row.text("standard"),
                                v,
                                row.text("pin"),
                                row.text("marking"),
                                row.text("function"),
                                source(row)))));
    List<PatternValues.Drop> drops = new ArrayList<>();
    each(DROPS, DROP_COLUMNS, (row, defects) -> drop(row, defects).ifPresent(drops::add));
    return new PatternValues(loads, pins, drops);
  }

  private void each(
      String file, List<String> columns, BiConsumer<CsvTable.Row, DefectList> reader) {
    DefectList defects = new DefectList("reference/" + file);
    JsonTree.bytes(folder.resolve(file), defects)
        .ifPresent(
            csv -> {
              List<CsvTable.Row> rows = CsvTable.read(csv, columns, defects);
              if (rows.isEmpty() && defects.isEmpty()) {
                defects.addAt(
                    "",
                    0,
                    FileWords.say("table"),
                    FileWords.say("table.no-row"),
                    FileWords.say("table.row"),
                    FileWords.say("table.rowless"));
              }
              rows.forEach(row -> reader.accept(row, defects));
            });
    all.addAll(defects.all());
  }

  private static Optional<WireFuses.Row> wireFuse(CsvTable.Row row, DefectList defects) {
    String object = row.text("wire_system") + " " + row.text("wire_size");
    String unit = row.text("wire_system").startsWith("AWG") ? " AWG" : " mm2";
    Optional<Double> amps = CsvTable.number(row, "fuse_A", object, defects);
    try {
      double mm2 = WireSize.parse(row.text("wire_size") + unit).mm2();
      return amps.map(a -> new WireFuses.Row(mm2, a, source(row)));
    } catch (IllegalArgumentException e) {
      KnowledgeFiles.bad(row, "wire_size", object, FileWords.say("wire-size"), defects);
      return Optional.empty();
    }
  }

  private static Optional<PatternValues.Load> load(CsvTable.Row row, DefectList defects) {
    String name = row.text("load");
    Optional<Integer> volts = Optional.empty();
    if (!row.text("system_V").equals("any")) {
      volts = volts(row, name, defects);
      if (volts.isEmpty()) {
        return Optional.empty();
      }
    }
    Optional<Double> low = CsvTable.number(row, "low", name, defects);
    Optional<Double> typical = CsvTable.number(row, "typical", name, defects);
    Optional<Double> high = CsvTable.number(row, "high", name, defects);
    if (low.isEmpty() || typical.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    if (!(0 < low.get() && low.get() <= typical.get() && typical.get() <= high.get())) {
      KnowledgeFiles.bad(row, "typical", name, FileWords.say("between.above"), defects);
      return Optional.empty();
    }
    if (!Set.of("W", "A").contains(row.text("unit"))) {
      KnowledgeFiles.bad(row, "unit", name, FileWords.say("watts-or-amps"), defects);
      return Optional.empty();
    }
    return Optional.of(
        new PatternValues.Load(
            name,
            volts,
            new Spread(low.get(), typical.get(), high.get()),
            row.text("unit"),
            source(row)));
  }

  private static Optional<PatternValues.Drop> drop(CsvTable.Row row, DefectList defects) {
    for (PatternValues.Stretch stretch : PatternValues.Stretch.values()) {
      if (stretch.piece().equals(row.text("piece"))) {
        Optional<Integer> volts = volts(row, stretch.piece(), defects);
        Optional<Double> limit = CsvTable.number(row, "max_drop_V", stretch.piece(), defects);
        return volts.flatMap(
            v -> limit.map(l -> new PatternValues.Drop(stretch, v, l, source(row))));
      }
    }
    return Optional.empty();
  }

  private static Optional<Integer> volts(CsvTable.Row row, String object, DefectList defects) {
    if (!Set.of("6", "12", "24").contains(row.text("system_V"))) {
      KnowledgeFiles.bad(row, "system_V", object, FileWords.say("volts"), defects);
      return Optional.empty();
    }
    return Optional.of(Integer.valueOf(row.text("system_V")));
  }

  /** The source as a person reads it: what nobody published is common practice. */
  private static String source(CsvTable.Row row) {
    return switch (row.text("origin")) {
      case "COMMON PRACTICE" -> PatternValues.COMMON_PRACTICE;
      case "MEMORY" -> FileWords.say("source.memory", row.text("source"));
      default -> row.text("source");
    };
  }
}
