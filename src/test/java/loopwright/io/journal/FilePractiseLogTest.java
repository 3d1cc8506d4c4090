package loopwright.io.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import loopwright.casework.Problem;
import loopwright.casework.practise.FaultKind;
import loopwright.casework.practise.Level;
import loopwright.casework.practise.Practised;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilePractiseLogTest {
  @TempDir Path folder;

  private static Practised drill(int score) {
    return new Practised(
        Instant.parse("2024-05-01T10:00:00Z"),
        "4F7K",
        Level.TWO_FAULTS,
        List.of(FaultKind.OPEN, FaultKind.HIGH_RESISTANCE),
        score,
        12.5,
        9.25);
  }

  @Test
  void whatWasPlayedIsReadBackInOrder() throws Problem {
    FilePractiseLog log = new FilePractiseLog(folder.resolve("practice"));
    assertThat(log.read()).isEmpty();
    log.append(drill(40));
    log.append(drill(100));
    assertThat(new FilePractiseLog(folder.resolve("practice")).read())
        .containsExactly(drill(40), drill(100));
  }

  @Test
  void drillsThatEndInTwoWindowsAtOnceAreAllKept() throws Exception {
    Callable<Void> window =
        () -> {
          FilePractiseLog log = new FilePractiseLog(folder);
          for (int score = 0; score < 20; score++) {
            log.append(drill(score));
          }
          return null;
        };
    ExecutorService windows = Executors.newFixedThreadPool(2);
    try {
      for (Future<Void> ended : windows.invokeAll(List.of(window, window))) {
        ended.get();
      }
    } finally {
      windows.shutdownNow();
    }
    assertThat(new FilePractiseLog(folder).read()).hasSize(40);
  }

  @Test
  void aLineThatWasCutOffHarmsNoOther() throws Exception {
    FilePractiseLog log = new FilePractiseLog(folder);
    log.append(drill(40));
    Files.writeString(
        folder.resolve("drills.practice.jsonl"), "{\"crc\":\"00", StandardOpenOption.APPEND);
    assertThat(log.read()).containsExactly(drill(40));
    log.append(drill(60));
    assertThat(log.read()).containsExactly(drill(40), drill(60));
  }
}
