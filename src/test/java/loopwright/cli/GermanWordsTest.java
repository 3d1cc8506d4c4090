package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.FindCase;
import loopwright.diagnosis.Seen;
import loopwright.model.Language;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A case in plain lines is obeyed by German words as well as by the English ones. */
class GermanWordsTest {
  private final MemoryStore store = new MemoryStore();

  @BeforeEach
  void inGerman() {
    Language.use(Language.GERMAN);
  }

  @AfterEach
  void backToEnglish() {
    Language.use(Language.ENGLISH);
  }

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
  void theHelpNamesTheGermanWordsAndEachIsObeyed() {
    String text = find("hilfe");
    for (String word : Obeyed.COMMANDS) {
      for (String german : Obeyed.said(word)) {
        assertThat(Obeyed.line(german + " K1")).isEqualTo(word + " K1");
      }
    }
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

  /** English words keep their meaning, and what is seen is no word to be obeyed. */
  @ParameterizedTest
  @EnumSource(Language.class)
  void noWordMeansTwoThings(Language language) {
    Language.use(language);
    List<String> taken = new ArrayList<>(Stream.of(Seen.values()).map(Entry::word).toList());
    Stream.of(Seen.values()).map(Seen::word).forEach(taken::add);
    for (String word : Obeyed.COMMANDS) {
      assertThat(Obeyed.line(word)).isEqualTo(word);
      for (String said : Obeyed.said(word)) {
        assertThat(taken).as(word).doesNotContain(said);
        assertThat(said.equals(word) || !Obeyed.COMMANDS.contains(said.toLowerCase(Locale.ROOT)))
            .as(said)
            .isTrue();
        taken.add(said);
      }
    }
  }
}
