package loopwright.io.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import loopwright.casework.CaseEvent;
import loopwright.casework.FirstPower;
import loopwright.casework.Problem;
import loopwright.io.FileWords;

/** Journals of cases, {@code schema/case-1.schema.json}. */
final class CaseContents implements Contents<CaseEvent> {

  @Override
  public String about() {
    return "case";
  }

  @Override
  public String ending() {
    return ".case.jsonl";
  }

  @Override
  public String idWords() {
    return FileWords.say("case.id");
  }

  @Override
  public int latest() {
    return 4;
  }

  @Override
  public int version(CaseEvent event) {
    if (event instanceof CaseEvent.Undone) {
      return 4;
    }
    if (event instanceof CaseEvent.Proposing || event instanceof CaseEvent.Settled) {
      return 3;
    }
    boolean second =
        event instanceof CaseEvent.Told
            || event instanceof CaseEvent.Photographed
            || event instanceof CaseEvent.Weighed
            || event instanceof CaseEvent.Opened o
                && (o.practice() || !o.power().equals(FirstPower.WHOLE));
    return second ? 2 : 1;
  }

  @Override
  public ObjectNode write(CaseEvent event) {
    return EventCodec.write(event);
  }

  @Override
  public CaseEvent read(JsonNode node) throws Problem {
    return EventCodec.read(node);
  }

  /** Those that speak of a reading, or of something told, that isn't there. */
  @Override
  public Predicate<CaseEvent> orphans() {
    Set<Integer> readings = new HashSet<>();
    List<CaseEvent.Deed> deeds = new ArrayList<>();
    return event -> {
      if (event instanceof CaseEvent.Deed deed) {
        deeds.add(deed);
        return false;
      }
      if (event instanceof CaseEvent.Undone undone) {
        return !deeds.remove(undone.what());
      }
      if (event instanceof CaseEvent.Taken taken) {
        readings.add(taken.reading());
        return false;
      }
      if (event instanceof CaseEvent.Withdrawn withdrawn) {
        return !readings.contains(withdrawn.reading());
      }
      if (event instanceof CaseEvent.Corrected corrected) {
        return !readings.contains(corrected.reading());
      }
      return false;
    };
  }

  @Override
  public void ensureUsable(String id, List<CaseEvent> events, String missing) throws Problem {
    if (events.isEmpty() || !(events.get(0) instanceof CaseEvent.Opened)) {
      throw problem(Matter.ONE, id, FileWords.say("case.headless", missing));
    }
  }
}
