package loopwright.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.casework.edit.VehicleStore.Version;
import loopwright.io.SafeFile.Step;
import loopwright.io.SafeFile.Watch;

/**
 * The previous versions of a vehicle file, beside it as {@code NAME.previous-NUMBER}.
 *
 * <p>The newest {@value #KEPT} are kept, and beyond them the newest one that is good, if none of
 * those is: however often something broken is saved, the last vehicle that held together stays.
 */
final class PreviousVersions {
  /** How many are kept. */
  static final int KEPT = 20;

  private static final String MARK = ".previous-";

  private final Path file;
  private final Watch watch;
  private final Pattern name;

  PreviousVersions(Path file, Watch watch) {
    this.file = file;
    this.watch = watch;
    this.name = Pattern.compile(Pattern.quote(file.getFileName() + MARK) + "([1-9][0-9]{0,8})");
  }

  /** All that are there, newest first. */
  List<Version> list() {
    try {
      return readList();
    } catch (IOException e) {
      return List.of();
    }
  }

  private List<Version> readList() throws IOException {
    List<Version> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(file.getParent())) {
      files.forEach(f -> version(f).ifPresent(all::add));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    all.sort(Comparator.comparingInt(Version::number).reversed());
    return List.copyOf(all);
  }

  private Optional<Version> version(Path candidate) {
    Matcher m = name.matcher(candidate.getFileName().toString());
    if (!m.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Version(
              Integer.parseInt(m.group(1)),
              Files.getLastModifiedTime(candidate).toInstant(),
              Files.size(candidate)));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /**
   * The file of a version.
   *
   * @throws Problem if it is gone
   */
  Path file(Version version) throws Problem {
    Path kept = path(version.number());
    if (!Files.exists(kept)) {
      throw new Problem(
          "version", FileWords.say("previous"), kept.toString(), FileWords.say("previous.gone"));
    }
    return kept;
  }

  private Path path(int number) {
    return file.resolveSibling(file.getFileName() + MARK + number);
  }

  /** Keeps what the file held as the newest, unless it is that already. */
  void add(byte[] bytes) throws IOException {
    List<Version> all = readList();
    if (!all.isEmpty()
        && all.get(0).bytes() == bytes.length
        && Arrays.equals(Files.readAllBytes(path(all.get(0).number())), bytes)) {
      return;
    }
    int number = all.isEmpty() ? 1 : all.get(0).number() + 1;
    SafeFile.replace(path(number), bytes, watch);
  }

  /** Deletes what the rule doesn't keep; what can't be deleted stays until the next time. */
  void prune() {
    List<Version> all = list();
    if (all.size() <= KEPT) {
      return;
    }
    boolean good = all.subList(0, KEPT).stream().anyMatch(this::good);
    for (Version old : all.subList(KEPT, all.size())) {
      if (!good && good(old)) {
        good = true;
        continue;
      }
      try {
        watch.before(Step.DELETE, path(old.number()));
        Files.deleteIfExists(path(old.number()));
      } catch (IOException e) {
        // One too many harms nobody.
      }
    }
  }

  private boolean good(Version version) {
    return VehicleFile.read(path(version.number())).found().isPresent();
  }
}
