package loopwright.casework.explain;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.casework.MeterInHand;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;

/** The explaining pages: listed, searched, opened and played with. */
public final class ExplainDesk {

  /**
   * A page in the list.
   *
   * @param id its name
   * @param title its title
   */
  public record Entry(String id, String title) {}

  private final Knowledge knowledge;
  private final Phrases phrases;

  /** Solves nothing yet. */
  public ExplainDesk(Knowledge knowledge, Phrases phrases) {
    this.knowledge = knowledge;
    this.phrases = phrases;
  }

  /**
   * The pages in their order that hold all words looked for, or words that begin with them.
   *
   * @param words in any order; all pages if empty
   */
  public List<Entry> find(String words) {
    List<String> wanted = wordsOf(words);
    return Lessons.ALL.stream()
        .filter(lesson -> holds(lesson, wanted))
        .map(lesson -> new Entry(lesson.id(), say(lesson, "title")))
        .toList();
  }

  private boolean holds(Lesson lesson, List<String> wanted) {
    List<String> own =
        wordsOf(lesson.id() + " " + say(lesson, "title") + " " + say(lesson, "find"));
    return wanted.stream().allMatch(w -> own.stream().anyMatch(o -> o.startsWith(w)));
  }

  private List<String> wordsOf(String text) {
    return Arrays.stream(text.toLowerCase(phrases.locale()).split("[^\\p{L}\\p{N}]+"))
        .filter(w -> !w.isEmpty())
        .toList();
  }

  /**
   * A page.
   *
   * @param id its name
   * @param set stops by control; the others stand where they stand when it is opened
   * @throws Problem if there is no such page, control or stop
   */
  public Explained open(String id, Map<String, String> set) throws Problem {
    Lesson lesson =
        Lessons.ALL.stream()
            .filter(l -> l.id().equals(id))
            .findFirst()
            .orElseThrow(
                () ->
                    new Problem("page", id, oneOf(Lessons.ALL.stream().map(Lesson::id).toList())));
    check(lesson, set);
    Stand stand = Stand.of(lesson.controls(), c -> set.getOrDefault(c.id(), c.start()));
    Board board = lesson.builder().apply(new Board(phrases), stand);
    Probe probe = probe(lesson, stand, board);
    lesson.teller().accept(probe, stand);
    Stand well = Stand.of(lesson.controls(), c -> c.fault() ? c.stops().get(0) : stand.at(c.id()));
    Probe sound = probe(lesson, well, lesson.builder().apply(new Board(phrases), well));
    Object[] told = probe.figures().stream().map(Figure::text).toArray();
    return new Explained(
        id,
        say(lesson, "title"),
        say(lesson, "words", told),
        say(lesson, "try", told),
        lesson.controls().stream().map(c -> moved(lesson, c, stand)).toList(),
        probe.figures(),
        probe.loop(sound),
        board.red(),
        board.black());
  }

  private Probe probe(Lesson lesson, Stand stand, Board board) throws Problem {
    String meter = stand.stops().getOrDefault(Lessons.METER, MeterInHand.USUAL);
    MeterSpec spec = MeterInHand.of(knowledge, meter);
    return new Probe(lesson.id(), board, spec, knowledge, phrases);
  }

  private static void check(Lesson lesson, Map<String, String> set) throws Problem {
    Map<String, Control> byId =
        lesson.controls().stream().collect(Collectors.toMap(Control::id, c -> c));
    for (Map.Entry<String, String> one : set.entrySet()) {
      Control control = byId.get(one.getKey());
      if (control == null) {
        throw new Problem("control", one.getKey(), oneOf(byId.keySet().stream().sorted().toList()));
      }
      if (!control.stops().contains(one.getValue())) {
        throw new Problem(control.id(), one.getValue(), oneOf(control.stops()));
      }
    }
  }

  private static String oneOf(List<String> names) {
    return Phrases.inUse().oneOf(names);
  }

  private Explained.Moved moved(Lesson lesson, Control control, Stand stand) {
    List<Explained.Stop> stops =
        control.stops().stream().map(s -> new Explained.Stop(s, stop(s))).toList();
    return new Explained.Moved(
        control.id(),
        say(lesson, "control." + control.id()),
        stops,
        control.stops().indexOf(stand.at(control.id())));
  }

  private String stop(String stop) {
    return Character.isDigit(stop.charAt(0))
        ? Probe.ohmsInWords(Double.parseDouble(stop))
        : phrases.say("explain.stop." + stop);
  }

  private String say(Lesson lesson, String key, Object... args) {
    return phrases.say("explain." + lesson.id() + "." + key, args);
  }
}
