package loopwright.casework.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Account;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.FindCase;
import loopwright.casework.OwnRate;

/** Makes a record of a journal's events. */
final class RecordReader {
  private final List<CaseRecord.Stage> stages = new ArrayList<>();
  private final List<CaseEvent> remarks = new ArrayList<>();
  private final List<CaseEvent.Photographed> photos = new ArrayList<>();
  private List<OwnRate> rates = List.of();

  private Map<Integer, CaseRecord.Taken> readings = new LinkedHashMap<>();
  private Optional<Account> account = Optional.empty();
  private boolean settled;

  private RecordReader() {}

  /** The record of a journal; its first event is the case's opening. */
  static CaseRecord read(CaseStore.Read journal) {
    RecordReader reader = new RecordReader();
    CaseEvent.counting(journal.events()).forEach(reader::add);
    reader.end(Optional.empty());
    List<CaseEvent> events = journal.events();
    return new CaseRecord(
        (CaseEvent.Opened) events.get(0),
        reader.stages,
        reader.remarks,
        reader.photos,
        reader.rates,
        events.get(events.size() - 1).at(),
        journal.missing());
  }

  private void add(CaseEvent event) {
    if (event instanceof CaseEvent.Taken t) {
      readings.put(
          t.reading(),
          new CaseRecord.Taken(t.reading(), t.at(), t.check(), t.answer(), List.of(), false));
      settled = false;
    } else if (event instanceof CaseEvent.Withdrawn w) {
      change(w.reading(), null);
    } else if (event instanceof CaseEvent.Corrected c) {
      change(c.reading(), c.answer());
    } else if (event instanceof CaseEvent.Told t) {
      account = Optional.of(t.account());
      settled = true;
    } else if (event instanceof CaseEvent.Repaired r) {
      end(Optional.of(new CaseRecord.Mend(r.part(), r.at(), false)));
    } else if (event instanceof CaseEvent.Swapped s && s.helped() == FindCase.Helped.YES) {
      end(Optional.of(new CaseRecord.Mend(s.part(), s.at(), true)));
    } else if (event instanceof CaseEvent.Photographed p) {
      photos.add(p);
    } else if (event instanceof CaseEvent.Weighed w) {
      rates = w.rates();
    } else if (event instanceof CaseEvent.Undone u) {
      settled = false;
      remarks.add(u);
    } else if (!(event instanceof CaseEvent.Opened) && !(event instanceof CaseEvent.Stopped)) {
      remarks.add(event);
    }
  }

  /** Puts a reading right, or takes it back where there is no answer; it may be an older one. */
  private void change(int number, Answer answer) {
    settled = false;
    if (readings.containsKey(number)) {
      readings.computeIfPresent(number, (n, old) -> changed(old, answer));
      return;
    }
    stages.replaceAll(
        stage ->
            new CaseRecord.Stage(
                stage.readings().stream()
                    .map(r -> r.number() == number ? changed(r, answer) : r)
                    .toList(),
                stage.account(),
                stage.settled(),
                stage.mend()));
  }

  private static CaseRecord.Taken changed(CaseRecord.Taken old, Answer answer) {
    if (answer == null) {
      return new CaseRecord.Taken(
          old.number(), old.at(), old.check(), old.answer(), old.corrected(), true);
    }
    List<Answer> before = new ArrayList<>(old.corrected());
    before.add(old.answer());
    return new CaseRecord.Taken(
        old.number(), old.at(), old.check(), answer, before, old.withdrawn());
  }

  private void end(Optional<CaseRecord.Mend> mend) {
    stages.add(new CaseRecord.Stage(new ArrayList<>(readings.values()), account, settled, mend));
    readings = new LinkedHashMap<>();
    account = Optional.empty();
    settled = false;
  }
}
