package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Schemas printed for other tools; that files keep to them is tested in the room io. */
class SchemaCommandTest {
  @ParameterizedTest
  @ValueSource(
      strings = {"vehicle", "case", "case-export", "ready-case", "meter", "faults", "find-lines"})
  void theSchemaIsPrintedAsItIs(String kind) throws Exception {
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run("schema", kind)).isZero();
    Path file = Path.of("src/main/resources/schema", kind + "-1.schema.json");
    assertThat(world.outText()).isEqualTo(Files.readString(file));
  }

  @Test
  void anUnknownKindIsTold() {
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run("schema", "boat")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("vehicle, case");
  }
}
