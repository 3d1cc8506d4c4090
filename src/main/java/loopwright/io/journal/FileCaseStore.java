package loopwright.io.journal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.Problem;
import loopwright.io.DiskWords;
import loopwright.io.wire.Fields;

/**
 * Keeps each case in a file of its own, {@code ID.case.jsonl}, in one folder. An event is on disk
 * before {@link CaseStore.Journal#append} returns; one that can't be written leaves the file as it
 * was. A case is open in one program at a time.
 *
 * <p>A file whose last line was cut off is cut back to its last complete line when more is written
 * to it; what is cut off goes to {@code ID.cut-off} beside it. Complete lines that can't be read
 * are stepped over and told, and stay in the file.
 */
public final class FileCaseStore implements CaseStore {

  /** Largest case file read, in bytes. */
  static final long LARGEST = 64L << 20;

  private static final String END = ".case.jsonl";
  private static final String ASIDE = ".cut-off";
  private static final Pattern ID = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_.-]{0,99}");
  private static final String ID_WORDS =
      "a case id of 1 to 100 letters, digits, dots, dashes and underscores, a letter or digit first";

  /**
   * Files that this program has open. A file's lock belongs to the whole program on some systems
   * and is lost when any of its channels on that file is closed, so a second one is never opened.
   */
  private static final Set<Path> OPEN = ConcurrentHashMap.newKeySet();

  private final Path folder;
  private final Disk disk;

  /**
   * A store in a folder; the folder is made when the first case is.
   *
   * @param folder where the case files are
   */
  public FileCaseStore(Path folder) {
    this(folder, Disk.REAL);
  }

  FileCaseStore(Path folder, Disk disk) {
    this.folder = folder.toAbsolutePath().normalize();
    this.disk = disk;
  }

  @Override
  public Journal create(String caseId) throws Problem {
    try {
      disk.folder(folder);
    } catch (IOException e) {
      throw new Problem("cases folder", folder.toString(), "can't be made: " + DiskWords.of(e));
    }
    Path file = file(caseId);
    Path key = claim(caseId, file);
    try {
      Disk.Medium medium = disk.create(file);
      lock(caseId, medium);
      return new FileJournal(caseId, file, key, medium, Recovered.NOTHING, new byte[0]);
    } catch (FileAlreadyExistsException e) {
      OPEN.remove(key);
      throw new Problem("case", caseId, "a new id: there is a case with this one already");
    } catch (IOException e) {
      OPEN.remove(key);
      throw new Problem("case file", file.toString(), "can't be made: " + DiskWords.of(e));
    } catch (Problem e) {
      OPEN.remove(key);
      throw e;
    }
  }

  @Override
  public Loaded load(String caseId) throws Problem {
    Path file = file(caseId);
    Path key = claim(caseId, file);
    boolean handedOver = false;
    try {
      Loaded loaded = load(caseId, file, key);
      handedOver = true;
      return loaded;
    } finally {
      if (!handedOver) {
        OPEN.remove(key);
      }
    }
  }

  private Loaded load(String caseId, Path file, Path key) throws Problem {
    Disk.Medium medium;
    try {
      medium = disk.open(file);
    } catch (NoSuchFileException e) {
      throw new Problem("case", caseId, "no case of this id in " + folder);
    } catch (IOException e) {
      // What can't be written to can still be looked at.
      return loadToRead(caseId, file, key, DiskWords.of(e));
    }
    try {
      lock(caseId, medium);
      byte[] bytes = bytes(caseId, medium);
      Recovered recovered = Recovered.from(caseId, bytes);
      return new Loaded(
          recovered.events(),
          recovered.missing(),
          new FileJournal(
              caseId,
              file,
              key,
              medium,
              recovered,
              Arrays.copyOfRange(bytes, recovered.keep(), bytes.length)));
    } catch (IOException e) {
      close(medium);
      throw new Problem("case file", file.toString(), "can't be read: " + DiskWords.of(e));
    } catch (Problem e) {
      close(medium);
      throw e;
    }
  }

  private Loaded loadToRead(String caseId, Path file, Path key, String why) throws Problem {
    try (Disk.Medium medium = disk.openToRead(file)) {
      Recovered recovered = Recovered.from(caseId, bytes(caseId, medium));
      return new Loaded(
          recovered.events(), recovered.missing(), new ReadOnlyJournal(file, key, why));
    } catch (IOException e) {
      throw new Problem("case file", file.toString(), "can't be read: " + DiskWords.of(e));
    }
  }

  @Override
  public List<String> ids() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    record Entry(String id, FileTime at) {}
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.getFileName().toString().endsWith(END))
          .map(
              f -> {
                String name = f.getFileName().toString();
                try {
                  // A file without any line is a case that was never begun.
                  return Files.isRegularFile(f) && Files.size(f) > 0
                      ? new Entry(
                          name.substring(0, name.length() - END.length()),
                          Files.getLastModifiedTime(f))
                      : new Entry("", FileTime.fromMillis(0));
                } catch (IOException e) {
                  return new Entry("", FileTime.fromMillis(0));
                }
              })
          .filter(e -> ID.matcher(e.id()).matches())
          .sorted(Comparator.comparing(Entry::at).thenComparing(Entry::id).reversed())
          .map(Entry::id)
          .toList();
    } catch (IOException | UncheckedIOException e) {
      return List.of();
    }
  }

  private Path file(String caseId) throws Problem {
    if (!ID.matcher(caseId).matches()) {
      throw new Problem("case", Fields.cut(caseId), ID_WORDS);
    }
    return folder.resolve(caseId + END);
  }

  /** Marks the file as open in this program; the mark is the folder's real path with the name. */
  private Path claim(String caseId, Path file) throws Problem {
    Path key;
    try {
      key = file.getParent().toRealPath().resolve(file.getFileName());
    } catch (IOException e) {
      key = file;
    }
    if (!OPEN.add(key)) {
      throw new Problem("case", caseId, "it is open already; close it there first");
    }
    return key;
  }

  private static void lock(String caseId, Disk.Medium medium) throws IOException, Problem {
    boolean locked = false;
    try {
      locked = medium.lock();
    } finally {
      if (!locked) {
        close(medium);
      }
    }
    if (!locked) {
      throw new Problem("case", caseId, "it is open in another program; close it there first");
    }
  }

  private static byte[] bytes(String caseId, Disk.Medium medium) throws IOException, Problem {
    long size = medium.size();
    if (size > LARGEST) {
      throw new Problem(
          "case", caseId, "a case file of at most " + LARGEST + " bytes; this one has " + size);
    }
    return medium.read((int) size);
  }

  private void setAside(String caseId, byte[] bytes) {
    try {
      Files.write(
          folder.resolve(caseId + ASIDE),
          bytes,
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
    } catch (IOException e) {
      // A courtesy only: what is cut off is an entry that never counted.
    }
  }

  private static void close(Disk.Medium medium) {
    try {
      medium.close();
    } catch (IOException e) {
      // All that counts has been forced before.
    }
  }

  /** A journal open for more. */
  private final class FileJournal implements Journal {
    private final String caseId;
    private final Path file;
    private final Path key;
    private Disk.Medium medium;
    private long end;
    private int next;
    private boolean endsOpen;
    private byte[] cutOff;
    private boolean unsure;
    private boolean closed;

    FileJournal(
        String caseId,
        Path file,
        Path key,
        Disk.Medium medium,
        Recovered recovered,
        byte[] cutOff) {
      this.caseId = caseId;
      this.file = file;
      this.key = key;
      this.medium = medium;
      this.end = recovered.keep();
      this.next = recovered.next();
      this.endsOpen = recovered.endsOpen();
      this.cutOff = cutOff;
    }

    @Override
    public synchronized void append(CaseEvent event) throws Problem {
      if (closed) {
        throw new Problem("case", caseId, "it has been closed; take it up again to go on");
      }
      byte[] line = JournalLine.write(next, event);
      if (endsOpen) {
        byte[] more = new byte[line.length + 1];
        more[0] = '\n';
        System.arraycopy(line, 0, more, 1, line.length);
        line = more;
      }
      // Only now: who merely looks at a case changes nothing, and is told again next time.
      if (cutOff.length > 0) {
        setAside(caseId, cutOff);
        cutOff = new byte[0];
        unsure = true;
      }
      try {
        if (unsure) {
          settle();
        }
        unsure = true;
        medium.write(line, end);
        medium.force();
        unsure = false;
      } catch (IOException e) {
        undo();
        throw new Problem(
            "case file",
            file.toString(),
            "can't be written: "
                + DiskWords.of(e)
                + ". This entry does not count; all before it is kept");
      }
      end += line.length;
      endsOpen = false;
      next++;
    }

    /** Takes back what a failed write may have left, now or at the next try. */
    private void undo() {
      try {
        settle();
      } catch (IOException | Problem e) {
        // The next append tries again, and a reader knows a torn line by its check sum.
      }
    }

    private void settle() throws IOException, Problem {
      if (!medium.isOpen()) {
        // An interrupted thread closes its file.
        Disk.Medium again = disk.open(file);
        lock(caseId, again);
        medium = again;
      }
      medium.cut(end);
      medium.force();
      unsure = false;
    }

    @Override
    public synchronized void close() {
      if (!closed) {
        closed = true;
        FileCaseStore.close(medium);
        OPEN.remove(key);
      }
    }
  }

  /** A journal of a file that can't be written to. */
  private static final class ReadOnlyJournal implements Journal {
    private final Path file;
    private final Path key;
    private final String why;
    private boolean closed;

    ReadOnlyJournal(Path file, Path key, String why) {
      this.file = file;
      this.key = key;
      this.why = why;
    }

    @Override
    public void append(CaseEvent event) throws Problem {
      throw new Problem(
          "case file",
          file.toString(),
          "can't be written: " + why + ". This entry does not count; all before it is kept");
    }

    @Override
    public synchronized void close() {
      if (!closed) {
        closed = true;
        OPEN.remove(key);
      }
    }
  }
}
