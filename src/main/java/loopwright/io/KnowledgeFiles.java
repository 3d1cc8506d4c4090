package loopwright.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.knowledge.FaultMode;
import loopwright.knowledge.Knowledge;
import loopwright.knowledge.PatternValues;
import loopwright.knowledge.TypicalValues;
import loopwright.knowledge.WireFuses;
import loopwright.meter.MeterSpec;
import loopwright.model.PartKind;
import loopwright.model.Spread;

/**
 * Reads the knowledge folder except its rules: {@code faults/*.json}, {@code
 * reference/typical-values.csv}, {@code reference/fuse.csv}, {@code reference/wire-fuse.csv}, the
 * tables of the circuit patterns and {@code meters/*.json}.
 */
public final class KnowledgeFiles {
  private static final String BUNDLED = "/knowledge/reference/typical-values.csv";

  private static final List<String> TYPICAL_COLUMNS =
      List.of(
          "kind",
          "quantity",
          "system_V",
          "low",
          "typical",
          "high",
          "relative_percent",
          "unit",
          "source",
          "origin");

  private static final List<String> FUSE_COLUMNS =
      List.of("kind", "item", "rated_A", "cold_resistance_mohm", "source", "origin");

  private static final Set<String> ORIGINS =
      Set.of("FOUND", "MEMORY", "COMPUTED", "COMMON PRACTICE");

  private KnowledgeFiles() {}

  /** The knowledge that comes with the program. */
  public static ReadResult<Knowledge> readBundled() {
    URL url = KnowledgeFiles.class.getResource(BUNDLED);
    if (url == null) {
      DefectList defects = new DefectList(FileWords.say("program"));
      defects.addAt(
          "",
          0,
          FileWords.say("knowledge"),
          FileWords.say("missing"),
          BUNDLED,
          FileWords.say("program.without", BUNDLED));
      return new ReadResult.Refused<>(defects.all());
    }
    try {
      URI uri = url.toURI();
      if (!"jar".equals(uri.getScheme())) {
        return read(Path.of(uri).getParent().getParent());
      }
      try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
        return read(jar.getPath("/knowledge"));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own knowledge cannot be opened at " + url, e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException("the program's own knowledge has no usable address", e);
    }
  }

  /**
   * The knowledge in a folder.
   *
   * @param root the folder that holds {@code faults}, {@code reference} and {@code meters}
   */
  public static ReadResult<Knowledge> read(Path root) {
    List<Defect> all = new ArrayList<>();
    Faults faults = new Faults(all);
    for (Path file : json(root.resolve("faults"), "faults", all)) {
      one(file, "faults/", all, FaultFile::read).ifPresent(c -> faults.add(file, c));
    }
    List<MeterSpec> meters = new ArrayList<>();
    Map<String, String> meterFiles = new HashMap<>();
    for (Path file : json(root.resolve("meters"), "meters", all)) {
      one(file, "meters/", all, MeterFile::read)
          .ifPresent(
              m -> {
                String before = meterFiles.putIfAbsent(m.id(), file.getFileName().toString());
                if (before != null) {
                  twice(
                      all,
                      "meters/" + file.getFileName(),
                      FileWords.say("meter.of", m.id()),
                      before);
                }
                meters.add(m);
              });
    }
    Optional<TypicalValues> typicals = typicals(root.resolve("reference"), all);
    PlanTables tables = new PlanTables(root.resolve("reference"), all);
    WireFuses wireFuses = tables.wireFuses();
    PatternValues patternValues = tables.patternValues();
    faults.finish();
    if (!all.isEmpty() || typicals.isEmpty()) {
      return new ReadResult.Refused<>(all);
    }
    return new ReadResult.Good<>(
        new Knowledge(
            typicals.get(),
            faults.modes,
            faults.slip.orElseThrow(),
            meters,
            wireFuses,
            patternValues));
  }

  /**
   * One meter description, for a meter of the owner's own.
   *
   * @param path a file of format {@code loopwright-meter}
   */
  public static ReadResult<MeterSpec> readMeter(Path path) {
    List<Defect> all = new ArrayList<>();
    Optional<MeterSpec> meter = one(path, "", all, MeterFile::read);
    return meter.isPresent() && all.isEmpty()
        ? new ReadResult.Good<>(meter.get())
        : new ReadResult.Refused<>(all);
  }

  /** Notes a wrong format or version of a file. */
  static void formatAndVersion(ObjectReader in, String format, DefectList defects) {
    in.text("format")
        .filter(f -> !f.equals(format))
        .ifPresent(
            f ->
                defects.add(
                    in.path("format"),
                    in.object(),
                    JsonValue.quoted(f),
                    JsonValue.quoted(format),
                    ObjectReader.bad("format", JsonValue.quoted(f), JsonValue.quoted(format))));
    in.number("version")
        .filter(v -> v != 1)
        .ifPresent(
            v ->
                defects.add(
                    in.path("version"),
                    in.object(),
                    ObjectReader.plain(v),
                    "1",
                    ObjectReader.bad("version", ObjectReader.plain(v), "1")));
  }

  private interface Reader<T> {
    Optional<T> read(JsonValue root, DefectList defects);
  }

  private static <T> Optional<T> one(Path file, String folder, List<Defect> all, Reader<T> reader) {
    DefectList defects = new DefectList(folder + file.getFileName());
    Optional<T> content =
        JsonTree.bytes(file, defects)
            .flatMap(b -> JsonTree.parse(b, defects))
            .flatMap(root -> reader.read(root, defects));
    all.addAll(defects.all());
    return content;
  }

  private static List<Path> json(Path folder, String name, List<Defect> all) {
    List<Path> files = new ArrayList<>();
    try (Stream<Path> list = Files.list(folder)) {
      list.filter(p -> p.getFileName().toString().endsWith(".json")).sorted().forEach(files::add);
    } catch (IOException | UncheckedIOException e) {
      files.clear();
    }
    if (files.isEmpty()) {
      DefectList defects = new DefectList(name);
      defects.addAt(
          "",
          0,
          FileWords.say("folder.of", name),
          FileWords.say("folder.empty"),
          FileWords.say("folder.least"),
          FileWords.say("folder.bad"));
      all.addAll(defects.all());
    }
    return files;
  }

  private static void twice(List<Defect> all, String file, String object, String before) {
    DefectList defects = new DefectList(file);
    defects.addAt(
        "",
        0,
        object,
        FileWords.say("twice"),
        FileWords.say("once"),
        FileWords.say("twice.bad", before));
    all.addAll(defects.all());
  }

  /** Gathers the modes of several files and sees that none is there twice. */
  private static final class Faults {
    private final List<Defect> all;
    private final List<FaultMode> modes = new ArrayList<>();
    private final Map<String, String> files = new HashMap<>();
    private Optional<Double> slip = Optional.empty();

    Faults(List<Defect> all) {
      this.all = all;
    }

    void add(Path file, FaultFile.Content content) {
      String name = file.getFileName().toString();
      for (FaultMode mode : content.modes()) {
        String key = mode.kind().word() + "/" + mode.mode();
        String before = files.putIfAbsent(key, name);
        if (before != null) {
          twice(all, "faults/" + name, FileWords.say("mode", key), before);
        }
        modes.add(mode);
      }
      if (content.testSlip().isPresent()) {
        if (slip.isPresent()) {
          twice(all, "faults/" + name, "test_slip", FileWords.say("file.another"));
        }
        slip = content.testSlip();
      }
    }

    void finish() {
      if (slip.isEmpty()) {
        DefectList defects = new DefectList("faults");
        defects.addAt(
            "",
            0,
            "test_slip",
            FileWords.say("missing"),
            FileWords.say("slip.one"),
            FileWords.say("slip.none"));
        all.addAll(defects.all());
      }
    }
  }

  // Usual values.

  private static Optional<TypicalValues> typicals(Path folder, List<Defect> all) {
    DefectList defects = new DefectList("reference/typical-values.csv");
    List<TypicalValues.Row> rows = new ArrayList<>();
    Set<TypicalValues.Key> keys = new HashSet<>();
    JsonTree.bytes(folder.resolve("typical-values.csv"), defects)
        .ifPresent(
            csv -> {
              for (CsvTable.Row row : CsvTable.read(csv, TYPICAL_COLUMNS, defects)) {
                typical(row, keys, defects).ifPresent(rows::add);
              }
            });
    DefectList fuseDefects = new DefectList("reference/fuse.csv");
    List<TypicalValues.FuseRow> fuses = new ArrayList<>();
    JsonTree.bytes(folder.resolve("fuse.csv"), fuseDefects)
        .ifPresent(
            csv -> {
              for (CsvTable.Row row : CsvTable.read(csv, FUSE_COLUMNS, fuseDefects)) {
                fuse(row, fuseDefects).ifPresent(fuses::add);
              }
            });
    if (fuses.size() < 2 && fuseDefects.isEmpty()) {
      fuseDefects.addAt(
          "",
          0,
          FileWords.say("table"),
          FileWords.say("ratings", Integer.toString(fuses.size())),
          FileWords.say("ratings.least"),
          FileWords.say("ratings.bad", Integer.toString(fuses.size())));
    }
    all.addAll(defects.all());
    all.addAll(fuseDefects.all());
    return defects.isEmpty() && fuseDefects.isEmpty()
        ? Optional.of(new TypicalValues(rows, fuses))
        : Optional.empty();
  }

  private static Optional<TypicalValues.Row> typical(
      CsvTable.Row row, Set<TypicalValues.Key> keys, DefectList defects) {
    String object = row.text("kind") + " " + row.text("quantity");
    Optional<PartKind> kind = kind(row.text("kind"));
    if (kind.isEmpty() && !row.text("kind").equals("constant")) {
      bad(row, "kind", object, FileWords.say("kind-or-constant"), defects);
      return Optional.empty();
    }
    Optional<Integer> volts = Optional.empty();
    if (!row.text("system_V").equals("any")) {
      if (!Set.of("6", "12", "24").contains(row.text("system_V"))) {
        bad(row, "system_V", object, FileWords.say("volts-or-any"), defects);
        return Optional.empty();
      }
      volts = Optional.of(Integer.valueOf(row.text("system_V")));
    }
    TypicalValues.Key key = new TypicalValues.Key(kind, row.text("quantity"), volts);
    if (!keys.add(key)) {
      bad(row, "quantity", object, FileWords.say("one-row", key), defects);
      return Optional.empty();
    }
    Optional<Double> typical = CsvTable.number(row, "typical", object, defects);
    Optional<Double> low = CsvTable.number(row, "low", object, defects).or(() -> typical);
    Optional<Double> high = CsvTable.number(row, "high", object, defects).or(() -> typical);
    Optional<Double> relative =
        CsvTable.number(row, "relative_percent", object, defects).map(p -> p / 100);
    if (row.text("source").isBlank()) {
      bad(row, "source", object, FileWords.say("source"), defects);
      return Optional.empty();
    }
    if (!ORIGINS.contains(row.text("origin"))) {
      bad(row, "origin", object, FileWords.say("origin"), defects);
      return Optional.empty();
    }
    if (relative.isPresent() && !(relative.get() >= 0 && relative.get() < 1)) {
      bad(row, "relative_percent", object, FileWords.say("percent"), defects);
      return Optional.empty();
    }
    Optional<Spread> usual = Optional.empty();
    if (typical.isPresent() && low.isPresent() && high.isPresent()) {
      if (!(low.get() <= typical.get() && typical.get() <= high.get())) {
        bad(row, "typical", object, FileWords.say("between"), defects);
        return Optional.empty();
      }
      usual = Optional.of(new Spread(low.get(), typical.get(), high.get()));
    }
    if (usual.isEmpty() && relative.isEmpty()) {
      bad(row, "typical", object, FileWords.say("typical"), defects);
      return Optional.empty();
    }
    return Optional.of(
        new TypicalValues.Row(
            key, usual, relative, row.text("unit"), row.text("source"), row.text("origin")));
  }

  private static Optional<PartKind> kind(String word) {
    return Stream.of(PartKind.values()).filter(k -> k.word().equals(word)).findFirst();
  }

  static void bad(
      CsvTable.Row row, String column, String object, String limit, DefectList defects) {
    String shown = JsonValue.quoted(row.text(column));
    defects.addAt(column, row.line(), object, shown, limit, ObjectReader.bad(column, shown, limit));
  }

  private static Optional<TypicalValues.FuseRow> fuse(CsvTable.Row row, DefectList defects) {
    boolean wanted =
        row.text("kind").equals("resistance")
            && row.text("item").equals("blade fuse, regular")
            && row.has("rated_A");
    if (!wanted) {
      return Optional.empty();
    }
    String object = FileWords.say("fuse", row.text("rated_A"));
    Optional<Double> amps = CsvTable.number(row, "rated_A", object, defects);
    Optional<Double> milliohms = CsvTable.number(row, "cold_resistance_mohm", object, defects);
    if (amps.isEmpty() || milliohms.isEmpty()) {
      return Optional.empty();
    }
    if (!(amps.get() > 0 && milliohms.get() > 0)) {
      bad(row, "cold_resistance_mohm", object, FileWords.say("above", "0"), defects);
      return Optional.empty();
    }
    return Optional.of(new TypicalValues.FuseRow(amps.get(), milliohms.get() / 1000));
  }
}
