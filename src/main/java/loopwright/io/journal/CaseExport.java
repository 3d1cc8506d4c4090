package loopwright.io.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.record.CaseRecord;
import loopwright.io.wire.Shapes;

/** Kept cases as one JSON file for other programs, {@code schema/case-export-1.schema.json}. */
public final class CaseExport {
  /** Version of the file written. */
  public static final int VERSION = 1;

  private CaseExport() {}

  /**
   * The file.
   *
   * @param records the cases
   * @param now when it is written
   */
  public static byte[] json(List<CaseRecord> records, Instant now) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("format", "loopwright-case-export");
    node.put("version", VERSION);
    node.put("written", now.toString());
    ArrayNode cases = node.putArray("cases");
    records.forEach(record -> cases.add(write(record)));
    try {
      return (Shapes.JSON.writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n")
          .getBytes(StandardCharsets.UTF_8);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the cases could not be written", e);
    }
  }

  private static ObjectNode write(CaseRecord record) {
    CaseEvent.Opened opened = record.opened();
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("case", opened.caseId());
    node.put("title", record.title());
    node.put("state", record.state().word());
    node.put("vehicle", opened.vehicleName());
    node.put("vehicleId", opened.vehicleId());
    node.put("circuit", opened.circuit());
    opened.load().ifPresent(load -> node.put("load", load));
    node.put("complaint", opened.kind().words());
    node.put("context", opened.context().word());
    node.put("meter", opened.meter());
    node.put("practice", opened.practice());
    node.put("opened", opened.at().toString());
    node.put("last", record.last().toString());
    node.put("missing", record.missing());
    ArrayNode stages = node.putArray("stages");
    for (int i = 0; i < record.stages().size(); i++) {
      stages.add(stage(record, i));
    }
    ArrayNode remarks = node.putArray("remarks");
    record.remarks().forEach(event -> remarks.add(EventCodec.write(event)));
    ArrayNode photos = node.putArray("photos");
    record.photos().forEach(photo -> photos.add(EventCodec.write(photo)));
    AccountCodec.write(node, record.rates());
    return node;
  }

  private static ObjectNode stage(CaseRecord record, int number) {
    CaseRecord.Stage stage = record.stages().get(number);
    ObjectNode node = Shapes.JSON.createObjectNode();
    ArrayNode readings = node.putArray("readings");
    for (CaseRecord.Taken reading : stage.readings()) {
      ObjectNode one = readings.addObject();
      one.put("reading", reading.number());
      one.put("at", reading.at().toString());
      one.set("check", Shapes.check(reading.check()));
      Shapes.answer(one, reading.answer());
      ArrayNode before = one.putArray("corrected");
      for (Answer answer : reading.corrected()) {
        Shapes.answer(before.addObject(), answer);
      }
      one.put("withdrawn", reading.withdrawn());
    }
    stage.account().ifPresent(account -> node.set("account", AccountCodec.write(account)));
    node.put("settled", stage.settled());
    stage
        .mend()
        .ifPresent(
            mend -> {
              ObjectNode one = node.putObject("mend");
              one.put("part", mend.part());
              one.put("at", mend.at().toString());
              one.put("swapped", mend.swapped());
              one.put("proven", record.repairs().get(number).proven());
            });
    return node;
  }
}
