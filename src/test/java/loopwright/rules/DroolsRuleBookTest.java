package loopwright.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Conclusion.AllowedBy;
import loopwright.diagnosis.rulebook.Conclusion.ClearedBy;
import loopwright.diagnosis.rulebook.Conclusion.CondemnedBy;
import loopwright.diagnosis.rulebook.Conclusion.Doubt;
import loopwright.diagnosis.rulebook.Conclusion.ForbiddenBy;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.Fact.CaseFact;
import loopwright.diagnosis.rulebook.Fact.CheckIdea;
import loopwright.diagnosis.rulebook.Fact.Conflict;
import loopwright.diagnosis.rulebook.Fact.Margin;
import loopwright.diagnosis.rulebook.Fact.Piece;
import loopwright.diagnosis.rulebook.Fact.ReadingFact;
import loopwright.diagnosis.rulebook.Fact.Standing;
import loopwright.diagnosis.rulebook.Fact.ValueClass;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Context;
import loopwright.model.PartKind;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for the book as a whole, whichever rules it has. */
class DroolsRuleBookTest {
  private static final CaseFact DEAD =
      new CaseFact(ComplaintKind.DEAD, Context.IN_SERVICE, 12, false, 12.3, "");

  private static final CaseFact BLOWS_FUSE =
      new CaseFact(ComplaintKind.BLOWS_FUSE, Context.IN_SERVICE, 12, false, 12.3, "");
  private static final CaseFact DRAINS =
      new CaseFact(ComplaintKind.DRAINS_BATTERY, Context.IN_SERVICE, 12, false, 12.3, "");

  private static DroolsRuleBook book;
  private static List<Fact> pool;

  @BeforeAll
  static void compile() {
    book = new DroolsRuleBook(RuleFiles.inFolder(RuleCases.FOLDER), Locale.ENGLISH);
    pool = RuleCases.allFacts();
  }

  private static List<Conclusion> conclusions(RuleBook book, Collection<? extends Fact> facts) {
    try (RuleBook.Session session = book.open()) {
      session.state(facts);
      return session.conclusions();
    }
  }

  private static IntStream seeds() {
    return IntStream.range(0, 60);
  }

  /**
   * A case made of what all cases state: one case fact, one piece for each part, four readings, and
   * margins, conflicts and checks that refer to them.
   */
  private static List<Fact> mixed(Random random) {
    List<Fact> facts = new ArrayList<>();
    facts.add(any(CaseFact.class, random));
    for (String part : List.of("F3", "X1", "L1", "BATT", "S1", "K1")) {
      PartKind kind = PartKind.values()[random.nextInt(PartKind.values().length)];
      facts.add(new Piece(part, kind, kind.word() + " " + part, Set.of()));
    }
    for (int id = 1; id <= 4; id++) {
      ReadingFact r = any(ReadingFact.class, random);
      facts.add(
          new ReadingFact(
              id,
              r.kind(),
              r.red(),
              r.black(),
              r.blackIsPost(),
              r.valueClass(),
              r.value(),
              r.error(),
              r.seen(),
              r.powered(),
              r.healthyLow(),
              r.healthyHigh(),
              r.sourceOhms(),
              r.loadOn(),
              r.explained(),
              r.whole()));
    }
    List<String> parts = List.of("X1", "F3", "L1", "W9", SuspectId.NONE);
    List<String> modes = List.of("open", "blown", "short-to-ground", "healthy", "unlisted");
    for (int i = 0; i < 25; i++) {
      int id = 1 + random.nextInt(4);
      SuspectId suspect =
          new SuspectId(
              parts.get(random.nextInt(parts.size())), modes.get(random.nextInt(modes.size())));
      facts.add(
          new Margin(
              suspect,
              random.nextBoolean() ? Set.of(id) : new HashSet<>(List.of(id, 4)),
              Standing.values()[random.nextInt(3)],
              random.nextInt(4) == 0));
      facts.add(any(CheckIdea.class, random));
    }
    for (int i = 0; i < 3; i++) {
      facts.add(any(Fact.Suspected.class, random));
    }
    facts.add(any(Fact.Isolated.class, random));
    facts.add(any(Fact.BlownFuse.class, random));
    if (random.nextInt(4) == 0) {
      facts.add(new Conflict(Set.of(1, 2)));
    }
    return facts;
  }

  private static <T extends Fact> T any(Class<T> type, Random random) {
    List<T> all = pool.stream().filter(type::isInstance).map(type::cast).toList();
    return all.get(random.nextInt(all.size()));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void takingFactsBackLeavesTheStateAsIfTheyHadNeverBeenStated(int seed) {
    Random random = new Random(seed);
    try (RuleBook.Session session = book.open()) {
      for (int step = 0; step < 6; step++) {
        List<Fact> facts = mixed(random);
        session.state(facts);
        List<Fact> kept = facts.stream().filter(f -> random.nextInt(3) > 0).toList();
        session.state(kept);

        assertThat(session.conclusions()).isEqualTo(conclusions(book, kept));
      }
      session.state(List.of());
      assertThat(session.conclusions()).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void theOrderOfFactsDoesNotMatter(int seed) {
    Random random = new Random(seed);
    List<Fact> facts = mixed(random);
    List<Conclusion> expected = conclusions(book, facts);
    assertThat(expected).isNotEmpty();
    Collections.shuffle(facts, random);

    assertThat(conclusions(book, facts)).isEqualTo(expected);
    try (RuleBook.Session session = book.open()) {
      for (int i = 1; i <= facts.size(); i++) {
        session.state(facts.subList(0, i));
      }
      assertThat(session.conclusions()).as("one at a time").isEqualTo(expected);
    }
  }

  @Test
  void withoutTheNarrowingRulesNothingIsClearedOrCondemned() {
    DroolsRuleBook others =
        new DroolsRuleBook(
            RuleFiles.inFolder(RuleCases.FOLDER).without(folder -> folder.startsWith("narrow/")),
            Locale.ENGLISH);

    int cleared = 0;
    int condemned = 0;
    for (List<Fact> facts : narrowingCases()) {
      List<Conclusion> with = conclusions(book, facts);
      cleared += count(with, ClearedBy.class);
      condemned += count(with, CondemnedBy.class);
      assertThat(conclusions(others, facts))
          .doesNotHaveAnyElementsOfTypes(ClearedBy.class, CondemnedBy.class);
    }
    assertThat(cleared).as("clearings with all rules").isPositive();
    assertThat(condemned).as("condemnations with all rules").isPositive();
  }

  /** What fires the narrowing rules, and mixed facts. */
  private static List<List<Fact>> narrowingCases() {
    List<List<Fact>> cases = new ArrayList<>();
    seeds().forEach(seed -> cases.add(mixed(new Random(seed))));
    RuleCases.folders().stream()
        .filter(folder -> folder.getParent().endsWith("narrow"))
        .flatMap(folder -> RuleCases.firing(folder).stream())
        .forEach(c -> cases.add(c.facts()));
    return cases;
  }

  private static int count(List<Conclusion> conclusions, Class<? extends Conclusion> type) {
    return (int) conclusions.stream().filter(type::isInstance).count();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void nothingIsClearedWithoutAnOutMarginOrByADoubtedReading(int seed) {
    List<Fact> facts = mixed(new Random(seed));
    List<Conclusion> conclusions = conclusions(book, facts);
    Set<Integer> doubted = new HashSet<>();
    conclusions.forEach(
        c -> {
          if (c instanceof Doubt d) {
            doubted.add(d.reading());
          }
        });
    for (Conclusion conclusion : conclusions) {
      if (conclusion instanceof ClearedBy cleared) {
        assertThat(facts)
            .anySatisfy(
                f -> {
                  assertThat(f).isInstanceOf(Margin.class);
                  Margin margin = (Margin) f;
                  assertThat(margin.suspect()).isEqualTo(cleared.suspect());
                  assertThat(margin.readings()).isEqualTo(cleared.readings());
                  assertThat(margin.standing()).isEqualTo(Standing.OUT);
                });
        assertThat(doubted).doesNotContainAnyElementsOf(cleared.readings());
      }
    }
  }

  private static ReadingFact healthy(int id) {
    return new ReadingFact(
        id,
        CheckKind.VOLTS,
        "F3",
        "BATT",
        true,
        ValueClass.NUMBER,
        12.6,
        0.1,
        null,
        true,
        12.2,
        12.8,
        0.1,
        true,
        true,
        true);
  }

  @ParameterizedTest
  @EnumSource(PartKind.class)
  void anOutMarginClearsEveryKindOfPartExactlyOnce(PartKind kind) {
    SuspectId suspect = new SuspectId("X1", "high-resistance");
    Piece piece = new Piece("X1", kind, "the " + kind.word(), Set.of());
    for (boolean direct : new boolean[] {true, false}) {
      for (Set<Integer> readings : List.of(Set.of(1), Set.of(1, 2))) {
        assertThat(
                conclusions(
                    book,
                    List.of(
                        DEAD,
                        piece,
                        healthy(1),
                        healthy(2),
                        new Margin(suspect, readings, Standing.OUT, direct))))
            .filteredOn(ClearedBy.class::isInstance)
            .singleElement()
            .satisfies(
                c -> {
                  ClearedBy cleared = (ClearedBy) c;
                  assertThat(cleared.suspect()).isEqualTo(suspect);
                  assertThat(cleared.readings()).isEqualTo(readings);
                  assertThat(book.words(cleared.rule(), cleared.key(), cleared.args()))
                      .contains("the " + kind.word());
                });
      }
    }
  }

  @Test
  void aLookAtAFuseNeverClears() {
    for (Seen seen : EnumSet.of(Seen.WHOLE, Seen.BROKEN)) {
      ReadingFact look =
          new ReadingFact(
              1,
              CheckKind.LOOK,
              "F3",
              "",
              false,
              ValueClass.SEEN,
              0,
              0,
              seen,
              true,
              0,
              0,
              0,
              true,
              true,
              true);
      Stream.of(true, false)
          .forEach(
              direct ->
                  assertThat(
                          conclusions(
                              book,
                              List.of(
                                  DEAD,
                                  new Piece("F3", PartKind.FUSE, "fuse F3", Set.of()),
                                  look,
                                  healthy(2),
                                  new Margin(
                                      new SuspectId("F3", "blown"),
                                      Set.of(1),
                                      Standing.OUT,
                                      direct),
                                  new Margin(
                                      new SuspectId("F3", "high-resistance"),
                                      Set.of(1, 2),
                                      Standing.OUT,
                                      direct))))
                      .doesNotHaveAnyElementsOfTypes(ClearedBy.class));
    }
  }

  @Test
  void whileItWorksAReadingOfAFaultThatComesAndGoesClearsNothing() {
    CaseFact sometimes =
        new CaseFact(ComplaintKind.WORKS_SOMETIMES, Context.IN_SERVICE, 12, false, 12.3, "");
    List<Fact> rest =
        List.of(
            new Piece("W7", PartKind.WIRE, "wire W7", Set.of()),
            healthy(1),
            new Margin(new SuspectId("W7", "open"), Set.of(1), Standing.OUT, false));

    List<Fact> comesAndGoes = new ArrayList<>(rest);
    comesAndGoes.add(sometimes);
    List<Fact> stays = new ArrayList<>(rest);
    stays.add(DEAD);

    assertThat(conclusions(book, comesAndGoes)).doesNotHaveAnyElementsOfTypes(ClearedBy.class);
    assertThat(conclusions(book, stays)).hasAtLeastOneElementOfType(ClearedBy.class);
  }

  @Test
  void ohmsAreAdmittedInNoSettingButDeadProvenIsolatedAndWithinReach() {
    for (CheckKind kind : List.of(CheckKind.OHMS, CheckKind.DIODE)) {
      for (int bits = 0; bits < 32; bits++) {
        boolean powered = (bits & 1) > 0;
        boolean isolated = (bits & 2) > 0;
        boolean dead = (bits & 4) > 0;
        boolean reachable = (bits & 8) > 0;
        boolean bridges = (bits & 16) > 0;
        List<Conclusion> conclusions =
            conclusions(
                book,
                List.of(
                    DEAD,
                    new CheckIdea(
                        "c1", kind, "L1", "L1", powered, isolated, false, dead, reachable, 1, false,
                        bridges, false)));
        boolean admitted =
            conclusions.stream().anyMatch(AllowedBy.class::isInstance)
                && conclusions.stream().noneMatch(ForbiddenBy.class::isInstance);
        assertThat(admitted)
            .as(
                "%s powered %s isolated %s dead %s reach %s",
                kind, powered, isolated, dead, reachable)
            .isEqualTo(!powered && isolated && dead && reachable && !bridges);
      }
    }
  }

  /** A complaint for which a kind of check is there. */
  private static CaseFact complaint(CheckKind kind) {
    return switch (kind) {
      case LAMP_FOR_FUSE -> BLOWS_FUSE;
      case DRAIN -> DRAINS;
      default -> DEAD;
    };
  }

  @ParameterizedTest
  @EnumSource(CheckKind.class)
  void everyKindOfCheckCanBeAdmitted(CheckKind kind) {
    boolean driven = Trade.drives(kind);
    boolean load = kind == CheckKind.MILLIVOLTS;
    assertThat(
            conclusions(
                book,
                List.of(
                    complaint(kind),
                    new Piece("L1", PartKind.LAMP, "lamp L1", Set.of()),
                    new CheckIdea(
                        "c1", kind, "L1", "", !driven, true, load, true, true, 1, false, false,
                        false))))
        .hasAtLeastOneElementOfType(AllowedBy.class)
        .doesNotHaveAnyElementsOfTypes(ForbiddenBy.class);
  }

  @Test
  void titlesComeFromThePiecesStatedNow() {
    ReadingFact look =
        new ReadingFact(
            1,
            CheckKind.LOOK,
            "F3",
            "",
            false,
            ValueClass.SEEN,
            0,
            0,
            Seen.WHOLE,
            true,
            0,
            0,
            0,
            true,
            true,
            true);
    try (RuleBook.Session session = book.open()) {
      session.state(List.of(look));
      assertThat(words(session)).contains("F3 looks whole");
      session.state(List.of(look, new Piece("F3", PartKind.FUSE, "beacon fuse F3", Set.of())));
      assertThat(words(session)).contains("beacon fuse F3 looks whole");
    }
  }

  private static String words(RuleBook.Session session) {
    return session.conclusions().stream()
        .filter(Conclusion.Sense.class::isInstance)
        .map(Conclusion.Sense.class::cast)
        .map(s -> book.words(s.rule(), s.key(), s.args()))
        .reduce("", (a, b) -> a + b);
  }

  @Test
  void numbersAreWrittenAsTheReaderWritesThem() {
    DroolsRuleBook german = new DroolsRuleBook(RuleFiles.inFolder(RuleCases.FOLDER), Locale.GERMAN);

    assertThat(conclusions(german, List.of(DEAD, healthy(1))))
        .anySatisfy(c -> assertThat(c.toString()).contains("12,60 V"));
    assertThat(conclusions(book, List.of(DEAD, healthy(1))))
        .anySatisfy(c -> assertThat(c.toString()).contains("12.60 V"));
  }

  @Test
  void oneBookServesSeveralThreads() throws Exception {
    List<List<Fact>> sets = seeds().mapToObj(s -> mixed(new Random(s))).toList();
    List<List<Conclusion>> alone = sets.stream().map(f -> conclusions(book, f)).toList();
    ExecutorService pool = Executors.newFixedThreadPool(4);
    try {
      List<Callable<List<Conclusion>>> jobs = new ArrayList<>();
      sets.forEach(facts -> jobs.add(() -> conclusions(book, facts)));
      List<List<Conclusion>> together = new ArrayList<>();
      for (Future<List<Conclusion>> job : pool.invokeAll(jobs)) {
        together.add(job.get());
      }
      assertThat(together).isEqualTo(alone);
    } finally {
      pool.shutdownNow();
    }
  }
}
