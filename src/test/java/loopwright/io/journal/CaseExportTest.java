package loopwright.io.journal;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.FindCase;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.list.ListTable;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.Journals;
import loopwright.casework.record.KeptCases;
import loopwright.casework.record.RecordTables;
import loopwright.diagnosis.Seen;
import loopwright.io.sheet.ListSheet;
import loopwright.io.wire.SchemaCheck;
import loopwright.io.wire.Shapes;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every reading of every journal is in what is exported, as it was answered. */
class CaseExportTest {
  private static final Instant NOW = Instant.parse("2024-06-01T12:00:00Z");
  private static final int RANDOM = 60;

  @TempDir Path folder;
  private FileCaseStore store;
  private final Map<String, List<CaseEvent>> journals = new LinkedHashMap<>();

  @BeforeEach
  void keepCases() throws Problem {
    store = new FileCaseStore(folder);
    keep("every", FileCaseStoreTest.everyKind());
    keep("stud", Journals.begun("stud").stud().journal().events());
    keep("begun", Journals.begun("begun").journal().events());
    for (int i = 0; i < RANDOM; i++) {
      keep("random-" + i, random("random-" + i, new Random(i)));
    }
  }

  private void keep(String id, List<CaseEvent> events) throws Problem {
    journals.put(id, events);
    try (CaseStore.Journal journal = store.create(id)) {
      for (CaseEvent event : events) {
        journal.append(event);
      }
    }
  }

  /** A case in which anything happens at any time, corrections of earlier pieces among them. */
  private static List<CaseEvent> random(String id, Random dice) {
    List<CaseEvent> events = new ArrayList<>();
    events.add(Journals.begun(id).journal().events().get(0));
    CaseEvent.Told told =
        (CaseEvent.Told)
            Journals.begun(id).volts("G4.lug", "1 V").found().journal().events().get(2);
    CaseEvent.Taken taken = (CaseEvent.Taken) FileCaseStoreTest.everyKind().get(1);
    int readings = 0;
    for (int n = 0; n < 25; n++) {
      Instant at = Journals.AT.plusSeconds(n);
      int any = readings == 0 ? 0 : 1 + dice.nextInt(readings);
      switch (dice.nextInt(readings == 0 ? 1 : 9)) {
        case 4 -> events.add(new CaseEvent.Withdrawn(at, any));
        case 5 -> events.add(new CaseEvent.Corrected(at, any, answer(dice)));
        case 6 -> events.add(new CaseEvent.Repaired(at, "F" + any));
        case 7 ->
            events.add(
                dice.nextBoolean()
                    ? new CaseEvent.Swapped(at, "K1", FindCase.Helped.values()[dice.nextInt(2)])
                    : told);
        case 8 ->
            CaseEvent.counting(events).stream()
                .filter(CaseEvent.Deed.class::isInstance)
                .reduce((a, b) -> b)
                .ifPresent(d -> events.add(new CaseEvent.Undone(at, (CaseEvent.Deed) d)));
        default -> events.add(new CaseEvent.Taken(at, ++readings, taken.check(), answer(dice)));
      }
    }
    return events;
  }

  private static Answer answer(Random dice) {
    return switch (dice.nextInt(3)) {
      case 0 -> new Answer.Text(dice.nextInt(2000) / 100.0 + " V \u03a9");
      case 1 -> new Answer.Saw(Seen.values()[dice.nextInt(Seen.values().length)]);
      default ->
          new Answer.Within(new Band(dice.nextDouble(), Double.POSITIVE_INFINITY, Band.Unit.VOLT));
    };
  }

  /** What a journal says of one reading, told from its events alone. */
  private record Expected(CaseEvent.Taken taken, List<Answer> answers, boolean withdrawn) {}

  private static Map<Integer, Expected> expected(List<CaseEvent> events) {
    Map<Integer, List<Answer>> answers = new LinkedHashMap<>();
    Map<Integer, CaseEvent.Taken> taken = new LinkedHashMap<>();
    Set<Integer> withdrawn = new HashSet<>();
    for (CaseEvent event : events) {
      if (event instanceof CaseEvent.Taken t) {
        taken.put(t.reading(), t);
        answers.put(t.reading(), new ArrayList<>(List.of(t.answer())));
      } else if (event instanceof CaseEvent.Corrected c) {
        answers.get(c.reading()).add(c.answer());
      } else if (event instanceof CaseEvent.Withdrawn w) {
        withdrawn.add(w.reading());
      }
    }
    Map<Integer, Expected> all = new LinkedHashMap<>();
    taken.forEach(
        (number, t) ->
            all.put(number, new Expected(t, answers.get(number), withdrawn.contains(number))));
    return all;
  }

  private List<CaseRecord> records() {
    var shelf = new KeptCases(store, Clock.systemUTC()).shelf();
    assertThat(shelf.unread()).isEmpty();
    assertThat(shelf.records()).hasSameSizeAs(journals.keySet());
    return shelf.records();
  }

  private static JsonNode answer(Answer answer) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    Shapes.answer(node, answer);
    return node;
  }

  @Test
  void everyReadingOfEveryJournalIsInTheJson() throws Exception {
    JsonNode json = new ObjectMapper().readTree(CaseExport.json(records(), NOW));
    assertThat(SchemaCheck.CASE_EXPORT.defects(json)).isEmpty();
    Set<String> cases = new HashSet<>();
    int checked = 0;
    for (JsonNode one : json.get("cases")) {
      // The opening of every kind of event names another case than its file.
      String id = one.get("case").asText().equals("beacon-1") ? "every" : one.get("case").asText();
      cases.add(id);
      Map<Integer, Expected> expected = expected(journals.get(id));
      List<Integer> numbers = new ArrayList<>();
      for (JsonNode stage : one.get("stages")) {
        for (JsonNode reading : stage.get("readings")) {
          int number = reading.get("reading").asInt();
          numbers.add(number);
          Expected e = expected.get(number);
          assertThat(reading.get("at").asText()).isEqualTo(e.taken().at().toString());
          assertThat(reading.get("check").toString())
              .isEqualTo(Shapes.check(e.taken().check()).toString());
          assertThat(reading.get("withdrawn").asBoolean()).isEqualTo(e.withdrawn());
          List<String> answers = new ArrayList<>();
          reading.get("corrected").forEach(before -> answers.add(before.toString()));
          ObjectNode last = new ObjectMapper().createObjectNode();
          for (String way : List.of("value", "seen", "band")) {
            if (reading.has(way)) {
              last.set(way, reading.get(way));
            }
          }
          answers.add(last.toString());
          assertThat(answers)
              .containsExactlyElementsOf(
                  e.answers().stream().map(a -> answer(a).toString()).toList());
          checked++;
        }
      }
      assertThat(numbers).containsExactlyInAnyOrderElementsOf(expected.keySet());
    }
    assertThat(cases).isEqualTo(journals.keySet());
    assertThat(checked).isGreaterThan(10 * RANDOM);
  }

  /** What a case file may hold an export may hold too. */
  @Test
  void theSchemaSaysTheSameAsThatOfTheCaseFile() throws Exception {
    ObjectMapper mapper = new ObjectMapper();
    JsonNode ofCase = mapper.readTree(SchemaCheck.text("case-1")).get("$defs");
    JsonNode ofExport = mapper.readTree(SchemaCheck.text("case-export-1")).get("$defs");
    int same = 0;
    for (Map.Entry<String, JsonNode> def : ofExport.properties()) {
      if (ofCase.has(def.getKey())) {
        assertThat(def.getValue()).as(def.getKey()).isEqualTo(ofCase.get(def.getKey()));
        same++;
      }
    }
    assertThat(same).isGreaterThan(10);
    for (String name : List.of("complaint", "context")) {
      assertThat(ofExport.at("/case/properties/" + name))
          .isEqualTo(ofCase.at("/opened/properties/" + name));
    }
  }

  @Test
  void everyReadingOfEveryJournalIsARowOfTheTable() throws Exception {
    ListTable table = RecordTables.readings(records(), new Phrases(Locale.ENGLISH));
    List<String> headings = table.columns().stream().map(ListTable.Column::heading).toList();
    assertThat(headings).doesNotHaveDuplicates();
    List<String> rows = new ArrayList<>();
    table
        .rows()
        .forEach(
            row ->
                rows.add(
                    row.get(headings.indexOf("case"))
                        + " "
                        + row.get(headings.indexOf("reading"))
                        + " "
                        + row.get(headings.indexOf("entered"))
                        + " "
                        + row.get(headings.indexOf("counts"))));
    List<String> wanted = new ArrayList<>(List.of("begun   "));
    journals.forEach(
        (id, events) ->
            expected(events)
                .forEach(
                    (number, e) ->
                        wanted.add(
                            (id.equals("every") ? "beacon-1" : id)
                                + " "
                                + number
                                + " "
                                + String.join(
                                    " > ", e.answers().stream().map(Answer::words).toList())
                                + " "
                                + (e.withdrawn() ? "no" : "yes"))));
    assertThat(rows).containsExactlyInAnyOrderElementsOf(wanted);
    List<List<String>> read = new ArrayList<>();
    try (MappingIterator<String[]> lines =
        new CsvMapper()
            .readerFor(String[].class)
            .with(CsvParser.Feature.WRAP_AS_ARRAY)
            .readValues(ListSheet.text(table))) {
      // A cell that a spreadsheet would take for a formula has an apostrophe in front.
      lines.forEachRemaining(
          line -> read.add(Stream.of(line).map(c -> c.replaceFirst("^'", "")).toList()));
    }
    assertThat(read.get(0)).isEqualTo(headings);
    assertThat(read.subList(1, read.size())).isEqualTo(table.rows());
  }
}
