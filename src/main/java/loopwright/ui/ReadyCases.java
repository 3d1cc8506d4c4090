package loopwright.ui;

import java.util.List;
import java.util.Optional;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.model.Vehicle;

/** Ready-made cases: a demo vehicle with a hidden fault and a meter that reads by itself. */
public interface ReadyCases {

  /** There are none. */
  ReadyCases NONE =
      new ReadyCases() {
        @Override
        public List<Entry> entries() {
          return List.of();
        }

        @Override
        public Opened open(String id, Vehicle vehicle, CaseDesk.Progress progress) throws Problem {
          throw new Problem("case", id, "a ready-made case; there are none");
        }
      };

  /**
   * A case that can be opened.
   *
   * @param id its id
   * @param title what it is about, giving nothing away
   * @param vehicleName how its vehicle is found
   * @param story what the owner tells
   */
  record Entry(String id, String title, String vehicleName, String story) {}

  /**
   * An opened case.
   *
   * @param findCase the case
   * @param meter reads its checks
   */
  record Opened(FindCase findCase, PracticeMeter meter) {}

  /** Does a check on the simulated vehicle. */
  @FunctionalInterface
  interface PracticeMeter {
    /**
     * What the check shows.
     *
     * @throws Problem if it can't do that kind of check
     */
    Answer read(CheckView check) throws Problem;
  }

  /** The cases there are. Quick; called on the window's thread. */
  List<Entry> entries();

  /** The one to begin with: short, and nothing in it is out of the ordinary. */
  default Optional<Entry> first() {
    return entries().stream().findFirst();
  }

  /**
   * Opens a case. Takes a while; called off the window's thread.
   *
   * @throws Problem if it can't be opened
   */
  Opened open(String id, Vehicle vehicle, CaseDesk.Progress progress) throws Problem;
}
