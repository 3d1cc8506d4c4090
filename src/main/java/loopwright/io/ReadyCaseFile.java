package loopwright.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.casework.ReadyCase;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;

/**
 * Ready-made cases: JSON, format {@code loopwright-demo-case}, version 1. Whether vehicle, parts
 * and modes exist is found out when a case is opened.
 */
public final class ReadyCaseFile {
  /** What the field {@code format} says. */
  public static final String FORMAT = "loopwright-demo-case";

  private static final String BUNDLED = "/demo-data/cases/beacon-ground.json";
  private static final int MOST_FAULTS = 10;

  private ReadyCaseFile() {}

  /** The cases that come with the program, by id. */
  public static ReadResult<List<ReadyCase>> readBundled() {
    URL url = ReadyCaseFile.class.getResource(BUNDLED);
    if (url == null) {
      DefectList defects = new DefectList(FileWords.say("program"));
      defects.addAt(
          "",
          0,
          FileWords.say("ready"),
          FileWords.say("missing"),
          BUNDLED,
          FileWords.say("program.without", BUNDLED));
      return new ReadResult.Refused<>(defects.all());
    }
    try {
      URI uri = url.toURI();
      if (!"jar".equals(uri.getScheme())) {
        return readFolder(Path.of(uri).getParent());
      }
      try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
        return readFolder(jar.getPath(BUNDLED).getParent());
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own cases cannot be opened at " + url, e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException("the program's own cases have no usable address", e);
    }
  }

  /**
   * The cases in a folder, by file name; files that don't end in {@code .json} are passed over.
   *
   * @throws IOException if the folder can't be listed
   */
  public static ReadResult<List<ReadyCase>> readFolder(Path folder) throws IOException {
    List<Path> files;
    try (Stream<Path> list = Files.list(folder)) {
      files = list.filter(p -> p.toString().endsWith(".json")).sorted().toList();
    }
    List<ReadyCase> cases = new ArrayList<>();
    List<Defect> all = new ArrayList<>();
    Set<String> ids = new HashSet<>();
    for (Path file : files) {
      DefectList defects = new DefectList("cases/" + file.getFileName());
      ReadResult<ReadyCase> result = finish(JsonTree.bytes(file, defects), defects);
      all.addAll(result.defects());
      result
          .found()
          .ifPresent(
              c -> {
                if (!ids.add(c.id())) {
                  DefectList twice = new DefectList("cases/" + file.getFileName());
                  twice.add(
                      "id",
                      FileWords.say("ready.of", c.id()),
                      c.id(),
                      FileWords.say("id.once"),
                      FileWords.say("id.twice"));
                  all.addAll(twice.all());
                }
                cases.add(c);
              });
    }
    return all.isEmpty()
        ? new ReadResult.Good<>(List.copyOf(cases))
        : new ReadResult.Refused<>(all);
  }

  /**
   * Reads a case from a text.
   *
   * @param placeName what defects call the file
   */
  public static ReadResult<ReadyCase> read(String json, String placeName) {
    DefectList defects = new DefectList(placeName);
    byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
    return finish(JsonTree.bytes(new java.io.ByteArrayInputStream(bytes), defects), defects);
  }

  private static ReadResult<ReadyCase> finish(Optional<byte[]> bytes, DefectList defects) {
    Optional<ReadyCase> found =
        bytes
            .flatMap(b -> JsonTree.parse(b, defects))
            .flatMap(root -> ObjectReader.of(root, "", FileWords.say("case"), defects))
            .flatMap(in -> ready(in, defects));
    return found.isPresent() && defects.isEmpty()
        ? new ReadResult.Good<>(found.get())
        : new ReadResult.Refused<>(defects.all());
  }

  private static Optional<ReadyCase> ready(ObjectReader raw, DefectList defects) {
    Optional<String> id = raw.name("id");
    ObjectReader in =
        raw.called(id.map(i -> FileWords.say("ready.of", i)).orElse(FileWords.say("case")));
    KnowledgeFiles.formatAndVersion(in, FORMAT, defects);
    Optional<String> title = in.text("title");
    String titleInGerman = in.text("title_de", "");
    Optional<String> vehicle = in.name("vehicle");
    Optional<String> complaint = in.text("complaint");
    Optional<String> circuit = in.name("circuit");
    Optional<ComplaintKind> kind =
        in.word("kind", ComplaintKind.values(), ComplaintKind::words, Optional.empty());
    Optional<Context> context =
        in.word("context", Context.values(), Context::word, Optional.empty());
    Optional<String> story = in.text("story");
    String storyInGerman = in.text("story_de", "");
    Optional<String> meter = in.name("meter");
    in.text("note", "");
    List<ReadyCase.Fault> truth = new ArrayList<>();
    List<JsonValue> items = in.list("truth", 1, MOST_FAULTS);
    for (int i = 0; i < items.size(); i++) {
      String path = DefectList.child(in.path("truth"), i);
      ObjectReader.of(items.get(i), path, in.object(), defects)
          .flatMap(f -> fault(f, defects))
          .ifPresent(truth::add);
    }
    in.nothingElse();
    if (!defects.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new ReadyCase(
            id.orElseThrow(),
            InGerman.or(titleInGerman, title.orElseThrow()),
            vehicle.orElseThrow(),
            complaint.orElseThrow(),
            circuit.orElseThrow(),
            kind.orElseThrow(),
            context.orElseThrow(),
            InGerman.or(storyInGerman, story.orElseThrow()),
            truth,
            meter.orElseThrow()));
  }

  private static Optional<ReadyCase.Fault> fault(ObjectReader in, DefectList defects) {
    Optional<String> part = in.name("part");
    // A mode's name may hold colons: the element is behind them.
    Optional<String> mode = in.text("mode");
    Optional<Double> ohms = in.optionalNumber("ohms");
    in.nothingElse();
    if (ohms.isPresent() && !(ohms.get() >= 0)) {
      String shown = ObjectReader.plain(ohms.get());
      defects.add(
          in.path("ohms"),
          in.object(),
          shown,
          FileWords.say("ohms.least"),
          ObjectReader.bad("ohms", shown, FileWords.say("ohms.least")));
      return Optional.empty();
    }
    return part.isPresent() && mode.isPresent()
        ? Optional.of(new ReadyCase.Fault(part.get(), mode.get(), ohms))
        : Optional.empty();
  }
}
