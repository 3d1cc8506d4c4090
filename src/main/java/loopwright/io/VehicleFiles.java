package loopwright.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.edit.VehicleStore;
import loopwright.io.SafeFile.Watch;
import loopwright.model.Photo;
import loopwright.model.Vehicle;

/**
 * Vehicle files to work on: saved in one step, with previous versions beside them (see {@link
 * PreviousVersions}), open for writing in one window at a time (see {@link VehicleLock}). A link is
 * followed, so that a file is the same file under all its names.
 */
public final class VehicleFiles implements VehicleStore {
  private static final int MOST_DEFECTS = 5;

  private final Watch watch;

  /** Files on the disk of the machine. */
  public VehicleFiles() {
    this(Watch.NONE);
  }

  VehicleFiles(Watch watch) {
    this.watch = watch;
  }

  @Override
  public Opened open(Path path) throws Problem {
    Path file;
    try {
      file = path.toRealPath();
    } catch (IOException e) {
      throw unreadable(path, e);
    }
    if (!Files.isRegularFile(file)) {
      throw problem(path, "unopened", FileWords.say("folder-or-device"));
    }
    Hold hold = hold(file);
    try {
      byte[] bytes = bytes(file);
      Vehicle vehicle = vehicle(file, bytes);
      return new OpenFile(file, hold, vehicle, bytes);
    } catch (Problem e) {
      hold.close();
      throw e;
    }
  }

  @Override
  public Opened create(Path path, Vehicle vehicle) throws Problem {
    Path file;
    try {
      Path folder = path.toAbsolutePath().getParent();
      if (folder == null) {
        throw problem(path, "not-folder");
      }
      file = folder.toRealPath().resolve(path.getFileName());
    } catch (IOException e) {
      throw unwritten(path, e);
    }
    Hold hold = hold(file);
    try {
      if (hold.readOnly().isPresent()) {
        throw problem(path, "unwritten", hold.readOnly().get());
      }
      if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
        throw problem(path, "new-name");
      }
      OpenFile opened = new OpenFile(file, hold, vehicle, new byte[0]);
      opened.put(opened.text(vehicle), vehicle);
      return opened;
    } catch (Problem e) {
      hold.close();
      throw e;
    }
  }

  /** The lock, or why there is none. */
  private record Hold(Optional<VehicleLock> lock, Optional<String> readOnly) {
    void close() {
      lock.ifPresent(VehicleLock::close);
    }
  }

  private static Hold hold(Path file) {
    String why;
    if (Files.exists(file) && !Files.isWritable(file)) {
      why = FileWords.say("protected");
    } else {
      try {
        VehicleLock lock = VehicleLock.take(file);
        SafeFile.discardLeftovers(file);
        return new Hold(Optional.of(lock), Optional.empty());
      } catch (VehicleLock.Held e) {
        why = e.getMessage();
      } catch (IOException e) {
        why = DiskWords.of(e);
      }
    }
    return new Hold(Optional.empty(), Optional.of(why));
  }

  private static byte[] bytes(Path file) throws Problem {
    DefectList defects = new DefectList(String.valueOf(file.getFileName()));
    Optional<byte[]> bytes = JsonTree.bytes(file, defects);
    if (bytes.isEmpty()) {
      throw refused(file, defects.all());
    }
    return bytes.get();
  }

  private static Vehicle vehicle(Path file, byte[] bytes) throws Problem {
    ReadResult<Vehicle> read = VehicleFile.readDraft(bytes, String.valueOf(file.getFileName()));
    return read.found().orElseThrow(() -> refused(file, read.defects()));
  }

  private static Problem refused(Path file, List<Defect> defects) {
    List<String> first = defects.stream().limit(MOST_DEFECTS).map(Defect::message).toList();
    int more = defects.size() - first.size();
    return problem(
        file,
        "unread",
        String.join("; ", first)
            + (more > 0 ? FileWords.say("and-more", Integer.toString(more)) : ""));
  }

  private static Problem unreadable(Path path, IOException e) {
    String why = e instanceof NoSuchFileException ? FileWords.say("file.none") : DiskWords.of(e);
    return problem(path, "unopened", why);
  }

  private static Problem unwritten(Path path, IOException e) {
    return problem(path, "unwritten.kept", DiskWords.ofWriting(e));
  }

  /** What is wrong with a vehicle's file: a key and what is put in. */
  private static Problem problem(Path path, String key, Object... args) {
    return new Problem(FileWords.say("vehicle-file"), path.toString(), FileWords.say(key, args));
  }

  private final class OpenFile implements Opened {
    private final Path file;
    private final Hold hold;
    private final PreviousVersions previous;
    private Vehicle vehicle;

    /** What the file held when last read or saved. */
    private byte[] known;

    private boolean closed;

    OpenFile(Path file, Hold hold, Vehicle vehicle, byte[] known) {
      this.file = file;
      this.hold = hold;
      this.previous = new PreviousVersions(file, watch);
      this.vehicle = vehicle;
      this.known = known;
    }

    @Override
    public Path file() {
      return file;
    }

    @Override
    public synchronized Vehicle vehicle() {
      return vehicle;
    }

    @Override
    public Optional<String> readOnly() {
      return hold.readOnly();
    }

    @Override
    public synchronized void save(Vehicle changed) throws Problem {
      save(changed, false);
    }

    @Override
    public synchronized void saveOver(Vehicle changed) throws Problem {
      save(changed, true);
    }

    @Override
    public synchronized List<Version> versions() {
      return previous.list();
    }

    @Override
    public synchronized Vehicle look(Version version) throws Problem {
      Path kept = previous.file(version);
      return VehicleFiles.vehicle(kept, bytes(kept));
    }

    /** The bytes to write, once it is sure that they can be read again. */
    private byte[] text(Vehicle changed) throws Problem {
      byte[] bytes = VehicleFile.text(changed).getBytes(StandardCharsets.UTF_8);
      VehicleFiles.vehicle(file, bytes);
      return bytes;
    }

    private void save(Vehicle changed, boolean over) throws Problem {
      byte[] bytes = text(changed);
      if (closed) {
        throw problem(file, "unwritten", FileWords.say("closed"));
      }
      if (hold.readOnly().isPresent()) {
        throw problem(file, "unwritten.other", hold.readOnly().get());
      }
      // A file that was deleted meanwhile has nothing that could be lost.
      byte[] now = Files.exists(file) ? bytes(file) : new byte[0];
      if (!over && now.length > 0 && !Arrays.equals(now, known)) {
        throw problem(file, "changed");
      }
      if (now.length > 0 && !Arrays.equals(now, bytes)) {
        try {
          previous.add(now);
        } catch (IOException e) {
          throw unwritten(file, e);
        }
      }
      put(bytes, changed);
      previous.prune();
    }

    private void put(byte[] bytes, Vehicle changed) throws Problem {
      try {
        SafeFile.replace(file, bytes, watch);
      } catch (IOException e) {
        throw unwritten(file, e);
      }
      known = bytes;
      vehicle = changed;
    }

    @Override
    public String attach(Path photo) throws Problem {
      return PhotoFiles.attach(photo, file.getParent());
    }

    @Override
    public Optional<Path> file(Photo photo) {
      return PhotoFiles.find(file.getParent(), photo.file());
    }

    @Override
    public synchronized void close() {
      if (!closed) {
        closed = true;
        hold.close();
      }
    }
  }
}
