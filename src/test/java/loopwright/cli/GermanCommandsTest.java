package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.InGerman;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Language;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;

/** The commands speak German from their help to what they print, where German is in use. */
@ExtendWith(InGerman.class)
class GermanCommandsTest {
  private static final Path SOURCES = Path.of("src/main/java/loopwright/cli");
  private static final Pattern COMMENT = Pattern.compile("/\\*(?s:.*?)\\*/|(?m:^\\s*//.*$)");
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
  private static final Pattern KEY =
      Pattern.compile("Speech\\.(of|label)\\(\\s*\"([^\"]+)\"\\s*[,)]");

  private static final Pattern PROBLEM = Pattern.compile("new Problem\\(\\s*\"([^\"]+)\"");

  /** Two words beside each other, or one that begins as a sentence or heading does. */
  private static final Pattern WORDS =
      Pattern.compile("\\p{L}{2,}[,.:;]? \\p{L}{2,}|^\\W*\\p{Lu}\\p{Ll}+|^\\W*\\p{Lu}{3,}");

  /**
   * Literals that nobody reads: fields of problems, a format, a thread. What ends in a column is to
   * be typed.
   */
  private static final Set<String> UNREAD =
      Set.of("case file", "cases folder", "VEHICLE", "yyyy-MM-dd HH:mm", "getting ready");

  /** English words that no German line and no name on the vehicles has. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "(?<![\\w-])(the|and|with|is|are|not|you|this|that|what|says?|which)(?![\\w-])");

  @TempDir Path folder;

  private static Map<String, String> sources() throws IOException {
    Map<String, String> sources = new TreeMap<>();
    try (Stream<Path> files = Files.list(SOURCES)) {
      for (Path file : files.toList()) {
        sources.put(
            file.getFileName().toString(), COMMENT.matcher(Files.readString(file)).replaceAll(""));
      }
    }
    return sources;
  }

  @Test
  void noSentenceStandsInTheCode() throws IOException {
    Set<String> sentences = new TreeSet<>();
    int literals = 0;
    for (Map.Entry<String, String> source : sources().entrySet()) {
      Matcher all = LITERAL.matcher(source.getValue());
      while (all.find()) {
        literals++;
        String literal = all.group(1);
        boolean typed = literal.endsWith("  ");
        if (WORDS.matcher(literal).find() && !typed && !UNREAD.contains(literal)) {
          sentences.add(source.getKey() + ": " + literal);
        }
      }
    }
    assertThat(literals).isGreaterThan(500);
    assertThat(sentences).isEmpty();
  }

  @Test
  void everyKeyInTheCodeIsInTheBundle() throws IOException {
    ResourceBundle texts = ResourceBundle.getBundle("loopwright.cli.terminal");
    Set<String> missing = new TreeSet<>();
    for (String source : sources().values()) {
      Matcher keys = KEY.matcher(source);
      while (keys.find()) {
        String key = (keys.group(1).equals("label") ? "label." : "") + keys.group(2);
        if (!texts.containsKey(key)) {
          missing.add(key);
        }
      }
    }
    assertThat(missing).isEmpty();
  }

  /** Fields of a journal's lines and of programs' are the same in every language. */
  @Test
  void everyFieldThatAProblemOfACaseIsAboutIsNamed() throws IOException {
    ResourceBundle texts = ResourceBundle.getBundle("loopwright.cli.terminal");
    Set<String> unnamed = new TreeSet<>();
    int fields = 0;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/loopwright/casework"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        Matcher problems = PROBLEM.matcher(Files.readString(file));
        while (problems.find()) {
          fields++;
          if (!texts.containsKey("field." + problems.group(1).replace(' ', '-'))) {
            unnamed.add(file.getFileName() + ": " + problems.group(1));
          }
        }
      }
    }
    assertThat(fields).isGreaterThan(50);
    assertThat(unnamed).containsExactly("MeterPort.java: meter port");
  }

  @Test
  void everyCommandOptionAndWordOfItIsExplained() {
    Map<String, String> german = explained();
    Language.use(Language.ENGLISH);
    Map<String, String> english = explained();
    assertThat(german).hasSizeGreaterThan(150).hasSameSizeAs(english);
    german.forEach(
        (what, words) -> assertThat(words).as(what).isNotBlank().isNotEqualTo(english.get(what)));
  }

  /** What is said of each command and of each of its options and parameters. */
  private static Map<String, String> explained() {
    Map<String, String> explained = new TreeMap<>();
    CommandLine root = Cli.line(new TestWorld(new MemoryStore()));
    Stream.concat(Stream.of(root), root.getSubcommands().values().stream())
        .map(CommandLine::getCommandSpec)
        .forEach(
            command -> {
              explained.put(
                  command.qualifiedName(), String.join(" ", command.usageMessage().description()));
              List<ArgSpec> args = command.args();
              for (int i = 0; i < args.size(); i++) {
                explained.put(
                    command.qualifiedName() + " " + i, String.join(" ", args.get(i).description()));
              }
            });
    return explained;
  }

  @Test
  void theHelpOfEveryCommandIsGerman() {
    List<String> commands =
        List.copyOf(Cli.line(new TestWorld(new MemoryStore())).getSubcommands().keySet());
    assertThat(commands).hasSizeGreaterThan(17);
    for (String command : commands) {
      assertThat(german(0, new TestWorld(new MemoryStore()), command, "--help"))
          .as(command)
          .startsWith("Aufruf: loopwright " + command)
          .contains("Rückgabewerte:")
          .doesNotContain("${");
    }
    assertThat(german(0, new TestWorld(new MemoryStore()), "--help"))
        .startsWith("Aufruf: loopwright [")
        .contains("[BEFEHL]", "Befehle:");
  }

  @Test
  void whatIsNotUnderstoodIsToldInGerman() {
    assertThat(refused("vehicle")).startsWith("Es fehlt: FAHRZEUG");
    assertThat(refused("find", "--colour")).startsWith("Unbekannte Option: --colour");
    assertThat(refused("dance")).startsWith("Damit ist hier nichts anzufangen: dance");
    assertThat(refused("cases", "--since", "gestern"))
        .startsWith("--since TAG kann nicht „gestern“ sein. Erster Tag, etwa");
    assertThat(refused("cases", "--since")).startsWith("Es fehlt: --since TAG");
    assertThat(refused("check", "pumper", "--width=80", "--width=90"))
        .startsWith("--width SPALTEN darf nur einmal dastehen");
    assertThat(refused("add", "pumper", "--set", "watts")).startsWith("--set FRAGE=ANTWORT");
    assertThat(refused()).startsWith("Sag, was zu tun ist: find, cases");
    assertThat(refused("practise", "pumper", "--level", "hard")).startsWith("Stufe „hard“: ");
  }

  private static String refused(String... args) {
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run(args)).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).doesNotContainPattern(ENGLISH);
    return world.errText();
  }

  @Test
  void vehiclesAndListsAreShownInGerman() throws IOException {
    assertThat(german(0, world(), "vehicle", "pumper"))
        .contains(
            "12 V, Minus an Masse", "geht mit S5 on", "F3, Sicherung", "Keine Mängel gefunden.");
    TestWorld lorry = world();
    lorry.run("vehicle", "lorry");
    assertThat(lorry.outText()).contains("lässt sich nicht verwenden", "Demofahrzeuge: pumper.");
    assertThat(german(2, world(), "good-readings", "pumper")).contains("--out DATEI.pdf");
    Path card = folder.resolve("gut.pdf");
    assertThat(german(0, world(), "good-readings", "pumper", "--out", card.toString()))
        .contains("Geschrieben: " + card);
    assertThat(german(2, world(), "labels", "pumper", "--out", "x.doc"))
        .contains("muss auf .pdf oder .csv enden");
    assertThat(german(2, world(), "making", "pumper", "--more", "101")).contains("1,01-Fache");
    assertThat(said(0, world(), "making", "pumper", "--more", "12,5", "--table", "cutting"))
        .isEqualTo(said(0, world(), "making", "pumper", "--more", "12.5", "--table", "cutting"));
    TestWorld tractor = world();
    tractor.vehicle = Bench.vehicle("tractor");
    assertThat(said(0, tractor, "check", "pumper")).contains("Nichts zu beanstanden");
    Path list = folder.resolve("leitungen.csv");
    Files.writeString(list, "wire,colour\n" + wire() + ",plaid\n");
    assertThat(
            german(0, world(), "wires", "pumper", "--in", list.toString(), "--column", "Farbe=2"))
        .contains(
            "Gelesene Spalten: 1 wire = Leitung, 2 colour = Farbe",
            "0 neu, 1 geändert",
            "Um es zu übernehmen");
    assertThat(german(0, world(), "cases")).contains("Es sind keine Fälle aufbewahrt.");
    assertThat(german(0, world(), "ready")).contains("find --ready KENNUNG");
    assertThat(german(2, world(), "schema", "x")).contains("Schema „x“: sag eines von vehicle");
  }

  private static String wire() {
    return world().vehicle.parts().stream()
        .filter(p -> p.spec() instanceof PartSpec.Wire)
        .findFirst()
        .orElseThrow()
        .id();
  }

  @Test
  void newCircuitsAreAskedForInGerman() {
    Path file = folder.resolve("neu.json");
    assertThat(said(2, world("7000", "zurück", "stopp"), "new", file.toString()))
        .contains("„zurück“ geht zurück", "„7000“ ist hier unverständlich: ")
        .contains("Abgebrochen; nichts ist geschrieben.");
    assertThat(said(0, world(), "new", file.toString(), "--usual"))
        .contains("Hinzugefügt: ", "Gespeichert: " + file);
    assertThat(said(0, world(), "add", "pumper", "horn", "--usual"))
        .contains("Hinzugefügt: ", "weil ", "noch ist nichts geschrieben");
    assertThat(german(2, world(), "add", "pumper", "teapot")).contains("kein Muster „teapot“");
  }

  @Test
  void groundsAndFirstPowerAreProvenInGerman() {
    assertThat(said(0, world("hilfe", "7", "6,9 mV", "stopp"), "ground", "pumper", "G4"))
        .contains("  ROT      G4.lug: ", "  GRENZE   ", "zeigt> „7“ gilt hier nicht: mit Einheit")
        .contains("mehr                      ein Nachweis mit einem größeren Verbraucher");
    assertThat(german(0, world(), "ground", "pumper", "--list")).contains("nachzuweisen");
    assertThat(said(0, world("hilfe", "vielleicht", "ja", "stopp"), "prove", "pumper"))
        .contains("Batterie und Massen, Schritt 1 von 6", "  VORSICHT Batterie ab vor Ohm")
        .contains("Nicht übernommen: Eingabe „vielleicht“: 1 oder ja, 2 oder nein")
        .contains("Alle Antworten sind aufbewahrt.");
  }

  @Test
  void pagesAndDrillsAreGerman() {
    assertThat(german(0, world(), "explain", "loop"))
        .contains("Volt gegen den Massepol", "Probier das: ");
    assertThat(german(0, world(), "practise"))
        .contains("Noch ist keine Übung gespielt. Zum Anfangen: loopwright practise");
  }

  private static TestWorld world(String... lines) {
    return new TestWorld(new MemoryStore(), lines);
  }

  /** What a command says, asked that nothing of it but the vehicle's own names is English. */
  private static String german(int code, TestWorld world, String... args) {
    String said = said(code, world, args);
    String own = said.replaceAll("\\s+", " ");
    for (String name : names(world.vehicle)) {
      own = own.replace(name, "");
    }
    assertThat(own).as(Arrays.toString(args)).doesNotContainPattern(ENGLISH);
    return said;
  }

  private static List<String> names(Vehicle vehicle) {
    return Stream.concat(
            vehicle.parts().stream().flatMap(p -> Stream.of(p.name(), p.label(), p.where())),
            vehicle.circuits().stream().map(Circuit::name))
        .filter(name -> !name.isEmpty())
        .sorted(Comparator.comparing(String::length).reversed())
        .toList();
  }

  /** What a command says, wherever; rules and lists may speak English in between. */
  private static String said(int code, TestWorld world, String... args) {
    assertThat(world.run(args)).as(world.errText()).isEqualTo(code);
    return world.outText() + world.errText();
  }
}
