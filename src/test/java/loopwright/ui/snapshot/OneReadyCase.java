package loopwright.ui.snapshot;

import java.util.List;
import java.util.Locale;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.evidence.Bench;
import loopwright.io.ReadyCaseFile;
import loopwright.model.Language;
import loopwright.model.Vehicle;
import loopwright.ui.ReadyCases;

/** One ready-made case over the real search, with the meter that answers its checks. */
final class OneReadyCase implements ReadyCases {
  private final ReadyCase ready;
  private final String vehicleName;
  private final CaseDesk desk;
  private volatile FindCase opened;
  private volatile SimulatedMeter meter;

  /**
   * Opens nothing yet.
   *
   * @param id its id
   * @param vehicleName the name by which the window finds its vehicle
   * @param desk where it is opened
   */
  OneReadyCase(String id, String vehicleName, CaseDesk desk) {
    this.ready =
        ReadyCaseFile.readBundled().orThrow().stream()
            .filter(c -> c.id().equals(id))
            .findFirst()
            .orElseThrow();
    this.vehicleName = vehicleName;
    this.desk = desk;
  }

  @Override
  public List<Entry> entries() {
    return List.of(new Entry(ready.id(), ready.title(), vehicleName, ready.story()));
  }

  @Override
  public Opened open(String id, Vehicle vehicle, CaseDesk.Progress progress) throws Problem {
    meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, 1);
    opened = meter.following(desk.open(CaseDesk.NewCase.practice(ready, vehicle), progress));
    return new Opened(opened, meter::read);
  }

  /** How it stands, once it is open. */
  CaseView view() {
    return opened.view();
  }

  /** What the meter shows. */
  Answer read(CheckView check) throws Problem {
    return meter.read(check);
  }

  /** What is pressed for a display such as {@code 12.31 V}. */
  static String keysOf(String display) {
    return display.equals("OL")
        ? "l"
        : Language.marked(display.replace(" ", "").replace("ohm", "o")).toLowerCase(Locale.ROOT);
  }
}
