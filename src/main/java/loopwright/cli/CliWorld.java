package loopwright.cli;

import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import loopwright.casework.CardDesk;
import loopwright.casework.CaseDesk;
import loopwright.casework.CircuitLoops;
import loopwright.casework.PaperDesk;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.RulesElsewhere;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.ground.GroundDesk;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.prove.ProveDesk;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.KnownGood;
import loopwright.model.Vehicle;

/** What the commands need from outside; the program that starts them provides it. */
public interface CliWorld {

  /** How the opening of a vehicle went. */
  sealed interface Opening {
    /**
     * The vehicle can be used.
     *
     * @param vehicle the vehicle
     * @param name how it is found again later, for instance its file's absolute path
     * @param remarks what was noticed about it without stopping it, a sentence each
     */
    record Opened(Vehicle vehicle, String name, List<String> remarks) implements Opening {
      /** Copies the list. */
      public Opened {
        remarks = List.copyOf(remarks);
      }
    }

    /**
     * The vehicle can't be used.
     *
     * @param defects what is wrong, each naming object, value, limit and place; at least one
     */
    record Defective(List<String> defects) implements Opening {
      /** Copies the list. */
      public Defective {
        defects = List.copyOf(defects);
      }
    }
  }

  /**
   * Opens a vehicle.
   *
   * @param name a file, or the name of a demo vehicle
   */
  Opening openVehicle(String name);

  /**
   * Opens a vehicle that may not be finished, as one that is being planned.
   *
   * @param name a file, or the name of a demo vehicle
   */
  default Opening openDraft(String name) {
    return openVehicle(name);
  }

  /** Names of the demo vehicles. */
  List<String> demoVehicles();

  /**
   * The desk that opens cases. Made at the first call, since it may take seconds.
   *
   * @throws Problem if it can't be made, for instance for want of knowledge files
   */
  CaseDesk desk() throws Problem;

  /** The kept cases, to be looked at. */
  CaseArchive archive();

  /**
   * The ready-made cases to practise on.
   *
   * @throws Problem if they can't be read
   */
  List<ReadyCase> readyCases() throws Problem;

  /**
   * The practice meter of a ready-made case.
   *
   * @param ready the case
   * @param vehicle its vehicle
   * @throws Problem if the case doesn't fit the vehicle
   */
  SimulatedMeter practiceMeter(ReadyCase ready, Vehicle vehicle) throws Problem;

  /**
   * Where plans are checked on paper. Made at the first call, since it may take seconds.
   *
   * @throws Problem if it can't be made
   */
  PaperDesk paperDesk() throws Problem;

  /**
   * Where order-of-checks cards are made.
   *
   * @throws Problem if it can't be made
   */
  CardDesk cardDesk() throws Problem;

  /**
   * Where grounds are checked.
   *
   * @throws Problem if it can't be made
   */
  GroundDesk groundDesk() throws Problem;

  /**
   * Where vehicles are proven. Made at the first call, since it may take seconds.
   *
   * @throws Problem if it can't be made
   */
  ProveDesk proveDesk() throws Problem;

  /**
   * Rules that didn't come with the program; nothing of them is run yet.
   *
   * @throws Problem if the folder can't be read
   */
  default RulesElsewhere rulesFrom(Path folder) throws Problem {
    throw new Problem("--rules", folder.toString(), Speech.of("rules.none"));
  }

  /** Whether a person sits there who can be asked. */
  default boolean hasTerminal() {
    return false;
  }

  /**
   * What a vehicle reads when it is well.
   *
   * @throws Problem if what was proven of it can't be read
   */
  KnownGood knownGood(Vehicle vehicle) throws Problem;

  /**
   * Where drills are made.
   *
   * @throws Problem if it can't be made
   */
  PractiseDesk practiseDesk() throws Problem;

  /**
   * The explaining pages.
   *
   * @throws Problem if it can't be made
   */
  ExplainDesk explainDesk() throws Problem;

  /** The loops of a vehicle's circuits. */
  CircuitLoops loops(Vehicle vehicle);

  /** Where lines come from. */
  InputStream in();

  /** Where the conversation goes. */
  PrintStream out();

  /** Where messages about the running of the program go. */
  PrintStream err();

  /** Time and zone, for the dates shown. */
  Clock clock();
}
