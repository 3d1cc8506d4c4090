package loopwright.io.wire;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/** Holds lines against the project's schemas. */
public final class SchemaCheck {
  /** Lines that programs write to us. */
  public static final SchemaCheck TO_PROGRAM = new SchemaCheck("find-lines-1", "#/$defs/toProgram");

  /** Lines that we write. */
  public static final SchemaCheck FROM_PROGRAM =
      new SchemaCheck("find-lines-1", "#/$defs/fromProgram");

  /** Lines of case files. */
  public static final SchemaCheck CASE = new SchemaCheck("case-1", "");

  /** Lines of proof files. */
  public static final SchemaCheck PROOF = new SchemaCheck("proof-1", "");

  /** Exported cases. */
  public static final SchemaCheck CASE_EXPORT = new SchemaCheck("case-export-1", "");

  private final Schema schema;

  private SchemaCheck(String name, String part) {
    String id = "urn:loopwright:" + name;
    SchemaRegistry registry =
        SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12, builder -> builder.schemas(Map.of(id, text(name))));
    schema = registry.getSchema(SchemaLocation.of(id + part));
  }

  /** The schema's own text. */
  public static String text(String name) {
    try (InputStream in =
        SchemaCheck.class.getResourceAsStream("/schema/" + name + ".schema.json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the schema finds wrong; empty if nothing. */
  public List<String> defects(String line) {
    try {
      JsonNode node = Shapes.JSON.readTree(line);
      return defects(node);
    } catch (IOException e) {
      return List.of(e.toString());
    }
  }

  /** What the schema finds wrong; empty if nothing. */
  public List<String> defects(JsonNode node) {
    return schema.validate(node).stream().map(Error::toString).toList();
  }
}
