package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.InGerman;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.FindCase;
import loopwright.casework.practise.DrillCode;
import loopwright.casework.practise.Level;
import loopwright.diagnosis.Seen;
import loopwright.evidence.Bench;
import loopwright.model.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every conversation in lines is obeyed by German words as well as by the English ones. */
@ExtendWith(InGerman.class)
class GermanWordsTest {
  private final MemoryStore store = new MemoryStore();

  private String find(String... lines) {
    TestWorld world = new TestWorld(store, lines);
    assertThat(world.run("find", "pumper", "--complaint", "beacon dead"))
        .as(world.errText())
        .isZero();
    return world.outText().replaceAll("\\s+", " ");
  }

  private List<CaseEvent> events() {
    return store.cases.get("beacon-1");
  }

  @Test
  void aCaseIsPlayedInGermanToItsProof() {
    String text = find("12,4 V", "aus", "Zurück", "aus", "12,3", "repariert", "geht");
    assertThat(text).contains("repariert?> ", "Sag hilfe");
    assertThat(events().get(2)).isInstanceOf(CaseEvent.Taken.class);
    assertThat(((CaseEvent.Taken) events().get(2)).answer()).isEqualTo(new Answer.Saw(Seen.OFF));
    assertThat(events().get(3)).isInstanceOf(CaseEvent.Withdrawn.class);
    assertThat(events()).anyMatch(CaseEvent.Repaired.class::isInstance);
  }

  @Test
  void wordsBehindTheFirstAreGermanToo() {
    String text = find("messen F3.load ohm", "nein", "unerreichbar nie", "liste alle", "stopp");
    assertThat(text).contains("GERÄT Ohm", "Verdächtig");
    assertThat(events())
        .filteredOn(CaseEvent.Refused.class::isInstance)
        .extracting(e -> ((CaseEvent.Refused) e).refusal())
        .containsExactly(FindCase.Refusal.NEVER);
  }

  @Test
  void theHelpNamesTheGermanWords() {
    String text = find("hilfe");
    assertThat(text)
        .contains("warum G4", "messen F3.load BATT.neg", "getauscht K1 nein", "stopp")
        .doesNotContain("measure", "swapped", "mended");
  }

  @Test
  void aRefusalIsGerman() {
    assertThat(find("messen", "berichtigen 9 12", "Unfug"))
        .contains("Nicht übernommen: messen: sag: messen ROT SCHWARZ")
        .contains("Messwert „9“")
        .contains("Eingabe „Unfug“");
  }

  @Test
  void questionsOfAPatternAreLeftInGerman() {
    TestWorld world = new TestWorld(store, "", "zurück", "stopp");
    world.run("add", "pumper", "lamp-switch");
    assertThat(world.errText()).contains("Abgebrochen");
  }

  private static TestWorld on(String vehicle, String... lines) {
    TestWorld world = new TestWorld(new MemoryStore(), lines);
    world.vehicle = Bench.vehicle(vehicle);
    return world;
  }

  private static String said(TestWorld world, String... args) {
    assertThat(world.run(args)).as(world.errText()).isZero();
    return world.outText().replaceAll("\\s+", " ");
  }

  @Test
  void aGroundIsProvenInGerman() {
    TestWorld world =
        on("pumper", "hilfe", "0,5 V", "zeige", "mehr", "ohm", "0,3", "0,4", "liste", "7,0 mV");
    assertThat(said(world, "ground", "pumper", "G4"))
        .contains("mehr ein Nachweis mit einem größeren Verbraucher")
        .contains("Schlecht: ", "Ohm nur am spannungsfreien Fahrzeug")
        .contains("- engine strap STR2, ")
        .contains("Gut: 1,3 bis 1,8 mOhm")
        .containsOnlyOnce("gilt hier nicht");
    assertThat(world.proofs.read("pumper").events()).hasSize(2);
  }

  @Test
  void aGroundIsLeftInGerman() {
    for (String leaves : List.of("weiter", "Übergehen", "stopp", "Ende")) {
      assertThat(said(on("pumper", leaves, "7,0 mV"), "ground", "pumper", "G4"))
          .contains("zeigt> ")
          .doesNotContain("gilt hier nicht", "Gut: ");
    }
    assertThat(said(on("pumper", "ohm", "stopp", "0,3"), "ground", "pumper", "G4"))
        .contains("Was gemessen ist, bleibt aufbewahrt.")
        .doesNotContain("über der Masse, in Ohm");
  }

  @Test
  void firstPowerIsProvenInGerman() {
    TestWorld world =
        on(
            "pumper",
            "hilfe",
            "nein",
            "suchen",
            "gemacht",
            "0,00 V",
            "OL",
            "0,00 V",
            "0,2 Ohm",
            "nochmal",
            "ja",
            "0,00 V",
            "OL",
            "0,00 V",
            "0,2 Ohm",
            "warum",
            "0,00 V",
            "0,2 Ohm",
            "Gemacht",
            "12,6 V",
            "12,6 V",
            "liste",
            "wählen beacon",
            "halt",
            "nein");
    assertThat(said(world, "prove", "pumper"))
        .contains("suchen sucht den Fehler hinter dem, was nicht ist")
        .contains("FALSCH")
        .contains("Sie hängen zusammen.")
        .contains("[x] @supply: Batterie und Massen")
        .contains("Beacon, Schritt 1 von ")
        .endsWith("gemacht?> Alle Antworten sind aufbewahrt. ");
  }

  @Test
  void aDrillIsPlayedInGerman() {
    String code = new DrillCode(Level.DEAD_LAMP, 1, 4, "").toString();
    TestWorld world =
        on(
            "motorcycle",
            "hilfe",
            "schaltbild",
            "punkte",
            "an",
            "volt BATT.pos",
            "12 bis 13 V",
            "",
            "ansehen L1:dip",
            "Unfug",
            "ansehen L1:dip",
            "tut nichts",
            "",
            "ziehen F1",
            "zurück F1",
            "stellen KEY=on",
            "sicherung",
            "an",
            "defekt W12 als Unfug",
            "defekt W12 als hängt fest",
            "ansehen L1:dip",
            "geht",
            "fertig",
            "hilfe");
    assertThat(said(world, "practise", code, "--expect"))
        .contains("Wie du erwartet hast: 12")
        .contains("„Unfug“ gilt hier nicht: was zu sehen ist: ")
        .contains("„Unfug“ gilt hier nicht: Unterbrechung, Übergangswiderstand, ")
        .contains("F1 heraus")
        .contains("Es geht wieder. Sag fertig")
        .contains("Der beste Plan: ")
        .doesNotContain("gilt hier nicht: hilfe", "Ein Fehler blieb drin.");
    assertThat(world.drills.read()).hasSize(1);
  }

  @Test
  void aNewVehicleIsDoneWithTheWordThatThePromptOffers(@TempDir Path folder) {
    Path file = folder.resolve("neu.json");
    String[] usual = Stream.generate(() -> "").limit(40).toArray(String[]::new);
    int asked = said(on("pumper", usual), "new", file.toString()).split("> ", -1).length - 1;
    String[] lines = Arrays.copyOf(usual, asked);
    lines[asked - 1] = "Fertig";
    Path other = folder.resolve("anders.json");
    assertThat(said(on("pumper", lines), "new", other.toString()))
        .contains("fertig> ", "Gespeichert: " + other)
        .doesNotContain("„Fertig“");
  }

  private static final Map<String, Obeyed> TALKS =
      Map.of(
          "",
          Obeyed.FIND,
          "ground.",
          Obeyed.GROUND,
          "prove.",
          Obeyed.PROVE,
          "practise.",
          Obeyed.DRILL);

  private static Obeyed talk(String key) {
    return TALKS.getOrDefault(key.replaceFirst("^(\\w+\\.).*", "$1"), Obeyed.FIND);
  }

  private static Map<String, String> texts(Language language) {
    ResourceBundle texts =
        ResourceBundle.getBundle(
            "loopwright.cli.terminal",
            language.locale(),
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    return texts.keySet().stream()
        .collect(Collectors.toMap(k -> k, k -> texts.getString(k).replace("''", "'")));
  }

  /** What stands in the help for a word to type is obeyed as the English word in its place is. */
  @Test
  void eachWordThatAHelpOffersIsObeyed() {
    Map<String, String> english = texts(Language.ENGLISH);
    Map<String, String> german = texts(Language.GERMAN);
    int words = 0;
    for (String key : english.keySet().stream().filter(k -> k.startsWith("typed.")).toList()) {
      String row = key.substring("typed.".length());
      if (!row.matches("(.*\\.)?(value|choice|a-b|1-2-or-the-word)|prove.show")) {
        String[] offered = english.get(key).split(", ");
        String[] inGerman = german.get(key).split(", ");
        assertThat(inGerman).as(key).hasSameSizeAs(offered);
        for (int i = 0; i < offered.length; i++) {
          String obeyed = talk(row).line(offered[i].split(" ")[0]);
          assertThat(obeyed).as(key).isIn(talk(row).commands());
          assertThat(talk(row).line(inGerman[i]).split(" ")[0]).as(key).isEqualTo(obeyed);
          words++;
        }
      }
    }
    assertThat(words).isGreaterThan(60);
  }

  /** What else is offered: no German text asks for an English word, and what it asks for is one. */
  @Test
  void noGermanTextAsksForAnEnglishWord() {
    Set<String> english = new TreeSet<>();
    Set<String> german = new TreeSet<>(List.of("ja", "nein"));
    for (Obeyed talk : TALKS.values()) {
      Stream.of(talk.commands(), talk.details())
          .flatMap(List::stream)
          .forEach(
              word -> {
                english.add(word);
                Obeyed.said(word).forEach(said -> german.add(said.toLowerCase(Locale.ROOT)));
              });
    }
    english.removeAll(german);
    Pattern word = Pattern.compile("(?<![\\w.=-])(\\p{Ll}+)(?![\\w-]| --)");
    Pattern asked = Pattern.compile("(?i:\\bsag):? (?!mit |erst |eines |jeden )(\\p{Ll}+)");
    Set<String> bad = new TreeSet<>();
    int offers = 0;
    for (Map.Entry<String, String> text : texts(Language.GERMAN).entrySet()) {
      if (text.getKey().matches("(what-to-do|explain|language|units|ready|practise.none).*")) {
        continue;
      }
      word.matcher(text.getValue())
          .results()
          .map(m -> m.group(1))
          .filter(english::contains)
          .forEach(w -> bad.add(text.getKey() + ": " + w));
      Matcher offer = asked.matcher(text.getValue());
      while (offer.find()) {
        offers++;
        if (!german.contains(offer.group(1))) {
          bad.add(text.getKey() + " asks for " + offer.group(1));
        }
      }
    }
    assertThat(bad).isEmpty();
    assertThat(offers).isGreaterThan(25);
  }

  /** English words keep their meaning, and what is seen is no word to be obeyed. */
  @ParameterizedTest
  @EnumSource(Language.class)
  void noWordMeansTwoThings(Language language) {
    Language.use(language);
    for (Obeyed talk : List.of(Obeyed.FIND, Obeyed.GROUND, Obeyed.PROVE)) {
      List<String> seen = new ArrayList<>(Stream.of(Seen.values()).map(Entry::word).toList());
      Stream.of(Seen.values()).map(Seen::word).forEach(seen::add);
      unequivocal(talk, talk.commands(), talk::line, seen);
    }
    unequivocal(Obeyed.DRILL, Obeyed.DRILL.commands(), Obeyed.DRILL::line, List.of());
    for (Obeyed talk : TALKS.values()) {
      unequivocal(talk, talk.details(), talk::detail, List.of());
    }
  }

  private static void unequivocal(
      Obeyed talk, List<String> words, UnaryOperator<String> obeyed, List<String> others) {
    List<String> taken = new ArrayList<>(others);
    for (String word : words) {
      assertThat(obeyed.apply(word)).isEqualTo(word);
      for (String said : Obeyed.said(word)) {
        String small = said.toLowerCase(Locale.ROOT);
        assertThat(taken).as(talk + " " + word).doesNotContain(small);
        assertThat(small.equals(word) || !words.contains(small)).as(said).isTrue();
        assertThat(obeyed.apply(said)).isEqualTo(word);
        taken.add(small);
      }
    }
  }
}
