package loopwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Arrays;
import java.util.List;

/** The rooms of the program, what each may use, and which libraries are kept in one room. */
@AnalyzeClasses(packages = "loopwright", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  private static final List<String> ROOMS =
      List.of(
          "model",
          "meter",
          "solver",
          "diagnosis",
          "rules",
          "paper",
          "ground",
          "knowledge",
          "io",
          "bench",
          "casework",
          "report",
          "ui",
          "cli",
          "app");

  @ArchTest
  static final ArchRule EVERY_CLASS_LIVES_IN_A_ROOM =
      classes()
          .should()
          .resideInAnyPackage(inside(ROOMS))
          .because("a class outside the known rooms escapes every rule here")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule NO_CYCLES_BETWEEN_ROOMS =
      slices()
          .matching("loopwright.(*)..")
          .should()
          .beFreeOfCycles()
          .because("rooms that need each other cannot be understood or tested apart")
          .allowEmptyShould(true);

  // What each room may use.

  @ArchTest
  static final ArchRule MODEL_USES_ONLY_THE_JDK =
      classes()
          .that()
          .resideInAPackage("loopwright.model..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("loopwright.model..", "java..")
          .because("the circuit is the shared language of all rooms and must need nothing itself")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule METER_ROOM =
      room("meter", "model")
          .because("a reading is a fact about a circuit, whoever makes use of it later");

  @ArchTest
  static final ArchRule SOLVER_ROOM =
      room("solver", "model", "meter", "knowledge")
          .because("computing voltages must not depend on why someone wants to know them");

  @ArchTest
  static final ArchRule DIAGNOSIS_ROOM =
      room("diagnosis", "model", "meter", "knowledge", "solver")
          .because("the search for faults must run without files, windows, rule engine or truth");

  @ArchTest
  static final ArchRule PLAN_USES_ONLY_THE_JDK =
      classes()
          .that()
          .resideInAPackage("loopwright.diagnosis.plan..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("loopwright.diagnosis.plan..", "java..")
          .because(
              "planning knows hypotheses, outcomes and minutes as numbers, so that it can be held "
                  + "against published results that have nothing electrical in them");

  @ArchTest
  static final ArchRule BELIEF_USES_ONLY_THE_JDK =
      classes()
          .that()
          .resideInAPackage("loopwright.diagnosis.belief..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("loopwright.diagnosis.belief..", "java..")
          .because(
              "conflicts and candidates follow from what is consistent with what, whoever finds "
                  + "that out")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule RULES_ROOM =
      room("rules", "model", "meter", "knowledge", "diagnosis")
          .because("the rule engine only adds to a diagnosis and must stay replaceable");

  @ArchTest
  static final ArchRule PAPER_ROOM =
      room("paper", "model", "meter", "knowledge", "solver")
          .because("what is laid out on paper follows from the circuit and its solution alone");

  @ArchTest
  static final ArchRule GROUND_ROOM =
      room("ground", "model", "meter", "knowledge", "solver", "paper")
          .because("whether a ground is good follows from the circuit and one reading alone");

  @ArchTest
  static final ArchRule KNOWLEDGE_ROOM =
      room("knowledge", "model", "meter")
          .because("what is known about parts and faults is independent of how it is stored");

  @ArchTest
  static final ArchRule IO_ROOM =
      room("io", "model", "meter", "diagnosis", "knowledge", "casework")
          .because("reading and writing files must not compute, draw or ask");

  @ArchTest
  static final ArchRule BENCH_ROOM =
      room("bench", "model", "meter", "knowledge", "solver")
          .because("the bench holds the hidden truth, and diagnosis must not be mixed with it");

  @ArchTest
  static final ArchRule CASEWORK_ROOM =
      room(
              "casework",
              "model",
              "meter",
              "solver",
              "paper",
              "ground",
              "diagnosis",
              "knowledge",
              "bench")
          .because("use cases must run the same from the window, the command line and a test");

  @ArchTest
  static final ArchRule REPORT_ROOM =
      room("report", "casework", "model", "diagnosis")
          .because("a report shows what a case already holds and computes nothing new");

  @ArchTest
  static final ArchRule UI_ROOM =
      noClasses()
          .that()
          .resideInAPackage("loopwright.ui..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(inside(List.of("io", "rules", "cli", "app")))
          .because("the window shows cases; files, rule engine and start-up are handed to it")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule CLI_ROOM =
      room("cli", "casework", "model", "meter", "knowledge", "diagnosis", "io", "report")
          .because("the command line must work on a machine without a display");

  @ArchTest
  static final ArchRule NOBODY_DEPENDS_ON_APP =
      noClasses()
          .that()
          .resideOutsideOfPackage("loopwright.app..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("loopwright.app..")
          .because("app puts the rooms together, so no room may know it")
          .allowEmptyShould(true);

  // Which libraries are kept in one room.

  @ArchTest
  static final ArchRule ONLY_SOLVER_KNOWS_EJML =
      onlyIn(List.of("solver"), "org.ejml..")
          .because("the matrix library may be replaced without touching anything but the solver");

  @ArchTest
  static final ArchRule ONLY_RULES_KNOWS_DROOLS =
      onlyIn(List.of("rules"), "org.drools..", "org.kie..", "org.mvel..")
          .because("the rule engine is heavy and must stay replaceable");

  @ArchTest
  static final ArchRule ONLY_IO_KNOWS_JSON =
      onlyIn(List.of("io"), "com.fasterxml.jackson..", "tools.jackson..", "com.networknt..")
          .because("file formats change at another pace than what they hold");

  @ArchTest
  static final ArchRule ONLY_REPORT_KNOWS_PDFBOX =
      onlyIn(List.of("report"), "org.apache.pdfbox..", "org.apache.fontbox..")
          .because("how a page is written to PDF concerns the report alone");

  @ArchTest
  static final ArchRule ONLY_CLI_KNOWS_PICOCLI =
      onlyIn(List.of("cli"), "picocli..")
          .because("how arguments are parsed concerns the command line alone");

  @ArchTest
  static final ArchRule ONLY_INSTRUMENTS_CONNECT =
      noClasses()
          .that()
          .resideOutsideOfPackage("loopwright.io.instrument..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.fazecast..", "javax.net..", "java.net.http..")
          .orShould()
          .dependOnClassesThat()
          .belongToAnyOf(
              java.net.Socket.class,
              java.net.ServerSocket.class,
              java.net.DatagramSocket.class,
              java.net.URLConnection.class,
              java.nio.channels.SocketChannel.class,
              java.nio.channels.DatagramChannel.class)
          .because("nothing but a meter that a person names is ever connected to");

  @ArchTest
  static final ArchRule ONLY_COMMAND_AND_START_UP_KNOW_INSTRUMENTS =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              "loopwright.io.instrument..", "loopwright.cli..", "loopwright.app..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("loopwright.io.instrument..")
          .because("what reads files must not be able to connect, whatever a file says");

  @ArchTest
  static final ArchRule ONLY_THE_WINDOW_KNOWS_JAVAFX =
      onlyIn(List.of("ui", "app"), "javafx..", "atlantafx..", "org.kordamp.ikonli..")
          .because("everything but the window must run without a display");

  @ArchTest
  static final ArchRule VIEW_MODELS_KNOW_NO_SCENE =
      noClasses()
          .that()
          .haveNameMatching(".*ViewModel(\\$.*)?")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("javafx.scene..")
          .because("what the window decides is tested without opening a window")
          .allowEmptyShould(true);

  /** The room may use itself and the named rooms, and no other room. */
  private static ArchRule room(String room, String... mayUse) {
    List<String> forbidden =
        ROOMS.stream().filter(r -> !r.equals(room) && !Arrays.asList(mayUse).contains(r)).toList();
    return noClasses()
        .that()
        .resideInAPackage("loopwright." + room + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(inside(forbidden))
        .allowEmptyShould(true);
  }

  /** No class outside the named rooms uses the library packages. */
  private static ArchRule onlyIn(List<String> rooms, String... libraryPackages) {
    return noClasses()
        .that()
        .resideOutsideOfPackages(inside(rooms))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(libraryPackages)
        .allowEmptyShould(true);
  }

  private static String[] inside(List<String> rooms) {
    return rooms.stream().map(r -> "loopwright." + r + "..").toArray(String[]::new);
  }
}
