package loopwright.evidence;

import java.util.Locale;
import loopwright.bench.HiddenTruth;
import loopwright.casework.Answer;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Does what the check says on a vehicle with a hidden failure, and answers what it shows. */
public final class Player {
  private final Vehicle vehicle;
  private final HiddenTruth truth;

  public Player(Vehicle vehicle, HiddenTruth truth) {
    this.vehicle = vehicle;
    this.truth = truth;
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
    if (check.kind().metered()) {
      return text(truth.volts(ref(check.red()), ref(check.black()), setting), "V");
    }
    LoadRef subject = LoadRef.parse(check.lookAt().orElseThrow());
    Part part = vehicle.requirePart(subject.part());
    if (part.kind() == PartKind.RELAY) {
      return new Answer.Saw(truth.clicks(part.id(), setting) ? Seen.CLICKS : Seen.SILENT);
    }
    if (part.kind() == PartKind.FUSE) {
      return new Answer.Saw(truth.fuseGone(part.id()) ? Seen.BROKEN : Seen.WHOLE);
    }
    return new Answer.Saw(
        switch (truth.look(subject, setting, vehicle.onSetting(subject, setting))) {
          case ON -> Seen.ON;
          case DIM -> Seen.DIM;
          case OFF -> Seen.OFF;
        });
  }

  private static TerminalRef ref(java.util.Optional<loopwright.casework.PointView> point) {
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
