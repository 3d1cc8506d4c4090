package loopwright.casework.record;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.Phrases;
import loopwright.casework.Picture;
import loopwright.casework.Problem;

/** The kept cases of a store. */
public final class KeptCases implements CaseArchive {
  private final CaseStore store;
  private final Clock clock;

  /** Reads nothing yet. */
  public KeptCases(CaseStore store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  @Override
  public Shelf shelf() {
    List<CaseRecord> records = new ArrayList<>();
    List<Unread> unread = new ArrayList<>();
    for (String id : store.ids()) {
      try {
        records.add(record(id));
      } catch (Problem p) {
        unread.add(new Unread(id, p.getMessage()));
      }
    }
    records.sort(Comparator.comparing(CaseRecord::last).reversed());
    return new Shelf(records, unread);
  }

  @Override
  public CaseRecord record(String caseId) throws Problem {
    CaseStore.Read journal = store.read(caseId);
    if (journal.events().isEmpty() || !(journal.events().get(0) instanceof CaseEvent.Opened)) {
      throw new Problem("case", caseId, Phrases.inUse().say("problem.headless"));
    }
    return RecordReader.read(journal);
  }

  @Override
  public void attach(String caseId, Path photo, String caption) throws Problem {
    try (CaseStore.Journal journal = store.load(caseId).journal()) {
      journal.append(new CaseEvent.Photographed(clock.instant(), journal.photo(photo), caption));
    }
  }

  @Override
  public Optional<Picture> picture(String file) {
    return store.picture(file);
  }
}
