package loopwright.evidence;

import java.util.Locale;
import java.util.Optional;
import loopwright.bench.HiddenTruth;
import loopwright.casework.Answer;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Reading;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Does what the check says on a vehicle with a hidden failure, and answers what it shows. */
public final class Player {
  private final Vehicle vehicle;
  private final HiddenTruth truth;
  private final LoadRef watched;

  /**
   * A player.
   *
   * @param watched the load that is watched while a part is swapped or moved
   */
  public Player(Vehicle vehicle, HiddenTruth truth, LoadRef watched) {
    this.vehicle = vehicle;
    this.truth = truth;
    this.watched = watched;
  }

  /** Plays until the case leaves the search or so many checks are done. */
  public CaseView play(FindCase find, int most) throws Problem {
    CaseView view = find.view();
    int checks = 0;
    while (view.move() == CaseView.Move.CHECK && checks++ < most) {
      CheckView next = view.next().orElseThrow();
      view = find.answer(next.id(), answer(next));
    }
    return view;
  }

  public Answer answer(CheckView check) {
    Setting setting = check.set().setting();
    if (check.kind() == CheckKind.OHMS) {
      return text(truth.ohms(ref(check.red()), ref(check.black()), setting), "ohm");
    }
    if (check.kind() == CheckKind.DIODE) {
      return text(truth.diode(ref(check.red()), ref(check.black()), setting), "V");
    }
    if (check.kind().metered()) {
      return text(truth.volts(ref(check.red()), ref(check.black()), setting), "V");
    }
    Check plain =
        new Check(check.kind(), Optional.empty(), Optional.empty(), check.lookAt(), setting);
    Reading.Value.Sight sight = (Reading.Value.Sight) Plays.measure(vehicle, truth, watched, plain);
    return new Answer.Saw(sight.seen());
  }

  private static TerminalRef ref(Optional<loopwright.casework.PointView> point) {
    return point.orElseThrow().ref();
  }

  private static Answer text(HiddenTruth.Display display, String unit) {
    if (display instanceof HiddenTruth.Display.Number n) {
      int places = (int) Math.max(0, Math.round(-Math.log10(n.step())));
      return new Answer.Text(String.format(Locale.ROOT, "%." + places + "f %s", n.value(), unit));
    }
    return new Answer.Text("OL");
  }
}
