package loopwright.casework.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Account;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.CaseView;
import loopwright.casework.ClearedView;
import loopwright.casework.FirstPower;
import loopwright.casework.OwnCheck;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/** Journals written by hand: a beacon whose ground stud is mended and proven. */
public final class Journals {
  /** When all of them begin. */
  public static final Instant AT = Instant.parse("2024-05-17T18:04:05Z");

  /** What the stud had, as the case counted it. */
  public static final List<Account.Cause> ON_PAINT =
      List.of(
          new Account.Cause("G4", PartKind.GROUND, "on-paint", 0.75),
          new Account.Cause("G4", PartKind.GROUND, "open", 0.25));

  private final List<CaseEvent> events = new ArrayList<>();
  private int reading;
  private String value = "";

  private Journals(String id, String vehicle, boolean practice) {
    events.add(
        new CaseEvent.Opened(
            AT,
            id,
            vehicle,
            vehicle,
            "beacon",
            Optional.of("L5"),
            ComplaintKind.DEAD,
            Context.IN_SERVICE,
            "basic",
            practice,
            FirstPower.WHOLE));
  }

  /** A case just opened. */
  public static Journals begun(String id) {
    return new Journals(id, "pumper", false);
  }

  /** A case just opened, of a vehicle of that name. */
  public static Journals begun(String id, String vehicle, boolean practice) {
    return new Journals(id, vehicle, practice);
  }

  private Instant now() {
    return AT.plusSeconds(60L * events.size());
  }

  /** Volts from a terminal to the battery's negative post. */
  public Journals volts(String red, String value) {
    this.value = value;
    events.add(
        new CaseEvent.Taken(
            now(),
            ++reading,
            new OwnCheck(
                CheckKind.VOLTS,
                Optional.of(TerminalRef.parse(red)),
                Optional.of(TerminalRef.parse("BATT.neg")),
                Optional.empty(),
                Setting.of(Map.of("KEY", "on", "S5", "on"))),
            new Answer.Text(value)));
    return this;
  }

  /** Any other event. */
  public Journals and(CaseEvent event) {
    events.add(event);
    return this;
  }

  /** The case says that it is the stud, and by what F3 was ruled out. */
  public Journals found() {
    List<String> none = List.of();
    return told(
        CaseView.Status.ISOLATED,
        Optional.of(
            new Account.Fault(
                "beacon ground stud G4",
                List.of("ground bolted on paint, 4.5 ohm to 30 kohm"),
                0.995,
                ON_PAINT,
                none,
                none,
                none,
                List.of("Scrape to bright metal."),
                none,
                none)),
        Optional.empty());
  }

  /** The case says that the mend of a part is proven. */
  public Journals proven(String part) {
    return told(CaseView.Status.HEALTHY, Optional.empty(), Optional.of(part));
  }

  private Journals told(
      CaseView.Status status, Optional<Account.Fault> fault, Optional<String> proven) {
    events.add(
        new CaseEvent.Told(
            now(),
            new Account(
                "Beacon dead - Light pumper",
                status,
                6,
                List.of(
                    new Account.Line(
                        reading, "beacon ground stud G4", List.of(), value, "0 V", "said much")),
                List.of(
                    new ClearedView("F3", "beacon fuse F3", List.of(reading), "12.7 V at stud G4")),
                fault,
                proven)));
    return this;
  }

  /** A part was mended. */
  public Journals mended(String part) {
    return and(new CaseEvent.Repaired(now(), part));
  }

  /** The stud found, mended and proven. */
  public Journals stud() {
    return volts("G4.lug", "12.7 V").found().mended("G4").volts("L5.in", "12.1 V").proven("G4");
  }

  /** The journal as a store reads it. */
  public CaseStore.Read journal() {
    return new CaseStore.Read(events, "");
  }

  /** Its record. */
  public CaseRecord record() {
    return RecordReader.read(journal());
  }
}
