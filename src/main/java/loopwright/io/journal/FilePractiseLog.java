package loopwright.io.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.casework.practise.FaultKind;
import loopwright.casework.practise.Level;
import loopwright.casework.practise.PractiseLog;
import loopwright.casework.practise.Practised;
import loopwright.io.FileWords;
import loopwright.io.wire.Fields;
import loopwright.io.wire.Shapes;

/** Keeps the drills that were played in one file, {@code drills.practice.jsonl}. */
public final class FilePractiseLog implements PractiseLog {
  private static final String ID = "drills";

  private final JournalFolder<Practised> folder;

  /**
   * A log in a folder; the folder is made when the first drill is kept.
   *
   * @param folder where the file is
   */
  public FilePractiseLog(Path folder) {
    this.folder =
        new JournalFolder<>(folder, Disk.REAL, new DrillContents(), JournalFolder.FOR_A_LINE);
  }

  @Override
  public synchronized void append(Practised practised) throws Problem {
    folder.append(ID, practised);
  }

  @Override
  public synchronized List<Practised> read() throws Problem {
    return folder.has(ID) ? folder.read(ID).events() : List.of();
  }

  private static final class DrillContents implements Contents<Practised> {
    private static final int MOST_SCORE = 100;

    @Override
    public String about() {
      return "practice";
    }

    @Override
    public String ending() {
      return ".practice.jsonl";
    }

    @Override
    public String idWords() {
      return FileWords.say("practice.id");
    }

    @Override
    public ObjectNode write(Practised drill) {
      ObjectNode node = Shapes.JSON.createObjectNode();
      node.put("type", "drill").put("at", drill.at().toString()).put("code", drill.code());
      node.put("level", drill.level().word());
      ArrayNode kinds = node.putArray("kinds");
      drill.kinds().forEach(kind -> kinds.addObject().put("kind", kind.word()));
      node.put("score", drill.score());
      Shapes.limit(node, "minutes", drill.minutes());
      Shapes.limit(node, "best", drill.best());
      return node;
    }

    @Override
    public Practised read(JsonNode node) throws Problem {
      Fields fields = Fields.ofOwn(node, "event.");
      String type = fields.name("type", "drill");
      if (!type.equals("drill")) {
        throw new Problem("event.type", Fields.cut(type), "drill");
      }
      Instant at = EventCodec.at(fields);
      String code = fields.name("code", "a drill's code");
      Level level = Shapes.word(fields, "level", Level.values(), Level::word);
      List<FaultKind> kinds = new ArrayList<>();
      for (JsonNode one : fields.need("kinds", "the kinds of fault")) {
        Fields kind = Fields.ofOwn(one, "event.kinds.");
        kinds.add(Shapes.word(kind, "kind", FaultKind.values(), FaultKind::word));
        kind.done();
      }
      Practised drill =
          new Practised(
              at,
              code,
              level,
              kinds,
              fields.whole("score", 0, MOST_SCORE, "a score from 0 to 100"),
              Shapes.limit(fields, "minutes"),
              Shapes.limit(fields, "best"));
      fields.done();
      return drill;
    }
  }
}
