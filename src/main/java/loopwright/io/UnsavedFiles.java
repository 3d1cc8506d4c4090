package loopwright.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.casework.edit.UnsavedWork;
import loopwright.model.Vehicle;

/**
 * Unsaved work in a folder: for each vehicle a file {@code <process>-<hash of the name>.json} as
 * any other vehicle, and beside it one with its name. The process tells which copies belong to a
 * window that is still open.
 */
public final class UnsavedFiles implements UnsavedWork {
  private static final String VEHICLE = ".json";
  private static final String NAME = ".name";

  private final Path folder;
  private final long process;

  /** Keeps copies in a folder, which is made when it is needed. */
  public UnsavedFiles(Path folder) {
    this(folder, ProcessHandle.current().pid());
  }

  UnsavedFiles(Path folder, long process) {
    this.folder = folder;
    this.process = process;
  }

  private Path file(String name) {
    return folder.resolve(process + "-" + Integer.toHexString(name.hashCode()) + VEHICLE);
  }

  private static Path nameOf(Path file) {
    String plain = file.getFileName().toString();
    return file.resolveSibling(plain.substring(0, plain.length() - VEHICLE.length()) + NAME);
  }

  @Override
  public void keep(String name, Vehicle vehicle) throws Problem {
    Path file = file(name);
    try {
      Files.createDirectories(folder);
      Files.writeString(nameOf(file), name);
      SafeFile.replace(
          file, VehicleFile.text(vehicle).getBytes(StandardCharsets.UTF_8), SafeFile.Watch.NONE);
    } catch (IOException e) {
      throw new Problem(FileWords.say("unsaved"), file.toString(), DiskWords.of(e));
    }
  }

  @Override
  public void drop(String name) {
    for (Path file : files()) {
      if (name.equals(name(file).orElse("")) && !elsewhere(file)) {
        try {
          Files.deleteIfExists(file);
          Files.deleteIfExists(nameOf(file));
        } catch (IOException e) {
          // It is offered again next time, which does no harm.
          System.err.println(FileWords.say("unsaved.left", file, e.getMessage()));
        }
      }
    }
  }

  @Override
  public List<Kept> kept() {
    List<Kept> kept = new ArrayList<>();
    for (Path file : files()) {
      if (!elsewhere(file)) {
        read(file).ifPresent(kept::add);
      }
    }
    kept.sort(Comparator.comparing(Kept::at).reversed());
    return kept;
  }

  private Optional<Kept> read(Path file) {
    try {
      byte[] bytes = Files.readAllBytes(file);
      var at = Files.getLastModifiedTime(file).toInstant();
      return VehicleFile.readDraft(bytes, file.getFileName().toString())
          .found()
          .map(v -> new Kept(name(file).orElse(v.name()), at, v));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private static Optional<String> name(Path file) {
    try {
      return Optional.of(Files.readString(nameOf(file), StandardCharsets.UTF_8));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private List<Path> files() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(f -> f.toString().endsWith(VEHICLE)).toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  /** Whether another program that still runs keeps it. */
  private boolean elsewhere(Path file) {
    String number = file.getFileName().toString().replaceAll("-.*", "");
    return number.matches("\\d{1,18}")
        && Long.parseLong(number) != process
        && ProcessHandle.of(Long.parseLong(number)).isPresent();
  }
}
