package loopwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.Problem;

/** Keeps cases in memory; can be told to be full. */
final class MemoryStore implements CaseStore {
  final Map<String, List<CaseEvent>> cases = new LinkedHashMap<>();
  boolean full;

  @Override
  public Journal create(String caseId) {
    cases.put(caseId, new ArrayList<>());
    return journal(caseId);
  }

  @Override
  public Loaded load(String caseId) throws Problem {
    if (!cases.containsKey(caseId)) {
      throw new Problem("case", caseId, "no case of this id");
    }
    return new Loaded(List.copyOf(cases.get(caseId)), "", journal(caseId));
  }

  @Override
  public Read read(String caseId) throws Problem {
    if (!cases.containsKey(caseId)) {
      throw new Problem("case", caseId, "no case of this id");
    }
    return new Read(cases.get(caseId), "");
  }

  @Override
  public List<String> ids() {
    return List.copyOf(cases.keySet());
  }

  private Journal journal(String caseId) {
    return new Journal() {
      @Override
      public void append(CaseEvent event) throws Problem {
        if (full) {
          throw new Problem("case file", caseId, "can't be written: the disk is full");
        }
        cases.get(caseId).add(event);
      }

      @Override
      public String photo(Path photo) {
        return "photos/" + photo.getFileName();
      }

      @Override
      public void close() {}
    };
  }
}
