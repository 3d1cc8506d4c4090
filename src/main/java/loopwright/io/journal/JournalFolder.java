package loopwright.io.journal;

import static loopwright.io.journal.Contents.Matter.FILE;
import static loopwright.io.journal.Contents.Matter.FOLDER;
import static loopwright.io.journal.Contents.Matter.ONE;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.io.DiskWords;
import loopwright.io.FileWords;
import loopwright.io.wire.Fields;

/**
 * Journals of one kind in one folder, each in a file of its own. An event is on disk before {@link
 * Journal#append} returns; one that can't be written leaves the file as it was. A journal is open
 * in one program at a time.
 *
 * <p>A file whose last line was cut off is cut back to its last complete line when more is written
 * to it; what is cut off goes to {@code ID.cut-off} beside it. Complete lines that can't be read
 * are stepped over and told, and stay in the file.
 *
 * @param <E> events of the journals
 */
final class JournalFolder<E> {

  /** Largest file read, in bytes. */
  static final long LARGEST = 64L << 20;

  private static final String ASIDE = ".cut-off";

  /** Patience where another window or program has a journal only while it writes a line. */
  static final Duration FOR_A_LINE = Duration.ofSeconds(2);

  /** Nanoseconds between two tries. */
  private static final long PAUSE = 5_000_000;

  private static final Pattern ID = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_.-]{0,99}");

  /**
   * Files that this program has open. A file's lock belongs to the whole program on some systems
   * and is lost when any of its channels on that file is closed, so a second one is never opened.
   */
  private static final Set<Path> OPEN = ConcurrentHashMap.newKeySet();

  /** The journals among them, to be read through. */
  private static final Map<Path, JournalFolder<?>.FileJournal> WRITING = new ConcurrentHashMap<>();

  /** Held while a file is opened, and while one that nobody here has open is read. */
  private static final Object OPENING = new Object();

  /** An open journal. */
  interface Journal<E> {
    /**
     * Writes an event and forces it to disk.
     *
     * @throws Problem if it can't be written; the event does not count then
     */
    void append(E event) throws Problem;

    void close();
  }

  /**
   * A journal read back.
   *
   * @param events the events in order
   * @param missing what could not be read, in words; empty if all could
   * @param journal the journal, open for more
   */
  record Loaded<E>(List<E> events, String missing, Journal<E> journal) {}

  private final Path folder;
  private final Disk disk;
  private final Contents<E> contents;
  private final Duration patience;

  /** A folder of journals; it is made when the first journal is. */
  JournalFolder(Path folder, Disk disk, Contents<E> contents) {
    this(folder, disk, contents, Duration.ZERO);
  }

  /**
   * The same with patience for journals that nobody holds for long.
   *
   * @param patience how long to wait for a journal that is open elsewhere
   */
  JournalFolder(Path folder, Disk disk, Contents<E> contents, Duration patience) {
    this.folder = folder.toAbsolutePath().normalize();
    this.disk = disk;
    this.contents = contents;
    this.patience = patience;
  }

  /**
   * Starts a journal.
   *
   * @throws Problem if there is one of this id or it can't be written
   */
  Journal<E> create(String id) throws Problem {
    try {
      disk.folder(folder);
    } catch (IOException e) {
      throw contents.problem(FOLDER, folder, FileWords.say("unmade", DiskWords.of(e)));
    }
    Path file = file(id);
    Path key = claim(id, file);
    try {
      synchronized (OPENING) {
        Disk.Medium medium = disk.create(file);
        lock(id, medium);
        if (medium.size() > 0) {
          // Another program found it before it was locked, and has written to it.
          close(medium);
          throw new FileAlreadyExistsException(file.toString());
        }
        return new FileJournal(id, file, key, medium, Recovered.nothing(), new byte[0]);
      }
    } catch (FileAlreadyExistsException e) {
      OPEN.remove(key);
      throw contents.problem(ONE, id, FileWords.say("journal.taken", contents.named(ONE)));
    } catch (IOException e) {
      OPEN.remove(key);
      throw contents.problem(FILE, file, FileWords.say("unmade", DiskWords.of(e)));
    } catch (Problem e) {
      OPEN.remove(key);
      throw e;
    }
  }

  /** Whether there is a journal of this id. */
  boolean has(String id) throws Problem {
    return Files.exists(file(id));
  }

  /**
   * Writes one event to a journal, which is started if there is none of this id.
   *
   * @throws Problem if it can't be written
   */
  void append(String id, E event) throws Problem {
    Journal<E> journal = startedOrLoaded(id);
    try {
      journal.append(event);
    } finally {
      journal.close();
    }
  }

  private Journal<E> startedOrLoaded(String id) throws Problem {
    if (!has(id)) {
      try {
        return create(id);
      } catch (Problem e) {
        if (!has(id)) {
          throw e;
        }
        // Another program was quicker.
      }
    }
    return load(id).journal();
  }

  /**
   * Opens a journal to go on with.
   *
   * @throws Problem if there is none, it can't be read or it is open already
   */
  Loaded<E> load(String id) throws Problem {
    Path file = file(id);
    Path key = claim(id, file);
    boolean handedOver = false;
    try {
      Loaded<E> loaded = load(id, file, key);
      handedOver = true;
      return loaded;
    } finally {
      if (!handedOver) {
        OPEN.remove(key);
      }
    }
  }

  private Loaded<E> load(String id, Path file, Path key) throws Problem {
    synchronized (OPENING) {
      return open(id, file, key);
    }
  }

  private Loaded<E> open(String id, Path file, Path key) throws Problem {
    Disk.Medium medium;
    try {
      medium = disk.open(file);
    } catch (NoSuchFileException e) {
      throw contents.problem(ONE, id, FileWords.say("journal.none", contents.named(ONE), folder));
    } catch (IOException e) {
      // What can't be written to can still be looked at.
      return loadToRead(id, file, key, DiskWords.of(e));
    }
    try {
      lock(id, medium);
      byte[] bytes = bytes(id, medium);
      Recovered<E> recovered = Recovered.from(contents, id, bytes);
      return new Loaded<>(
          recovered.events(),
          recovered.missing(),
          new FileJournal(
              id,
              file,
              key,
              medium,
              recovered,
              Arrays.copyOfRange(bytes, recovered.keep(), bytes.length)));
    } catch (IOException e) {
      close(medium);
      throw contents.problem(FILE, file, FileWords.say("unread", DiskWords.of(e)));
    } catch (Problem e) {
      close(medium);
      throw e;
    }
  }

  private Loaded<E> loadToRead(String id, Path file, Path key, String why) throws Problem {
    try (Disk.Medium medium = disk.openToRead(file)) {
      Recovered<E> recovered = Recovered.from(contents, id, bytes(id, medium));
      return new Loaded<>(
          recovered.events(), recovered.missing(), new ReadOnlyJournal<>(contents, file, key, why));
    } catch (IOException e) {
      throw contents.problem(FILE, file, FileWords.say("unread", DiskWords.of(e)));
    }
  }

  /**
   * Reads a journal without opening it for more; one that is open, here or elsewhere, too.
   *
   * @throws Problem if there is none or it can't be read
   */
  Recovered<E> read(String id) throws Problem {
    Path file = file(id);
    synchronized (OPENING) {
      JournalFolder<?>.FileJournal open = WRITING.get(key(file));
      try {
        return Recovered.from(contents, id, open != null ? open.bytes() : bytes(id, file));
      } catch (NoSuchFileException e) {
        throw contents.problem(ONE, id, FileWords.say("journal.none", contents.named(ONE), folder));
      } catch (IOException e) {
        throw contents.problem(FILE, file, FileWords.say("unread", DiskWords.of(e)));
      }
    }
  }

  private byte[] bytes(String id, Path file) throws IOException, Problem {
    try (Disk.Medium medium = disk.openToRead(file)) {
      return bytes(id, medium);
    }
  }

  /** Ids of the journals, newest first. */
  List<String> ids() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    record Entry(String id, FileTime at) {}
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.getFileName().toString().endsWith(contents.ending()))
          .map(
              f -> {
                String name = f.getFileName().toString();
                try {
                  // A file without any line is one that was never begun.
                  return Files.isRegularFile(f) && Files.size(f) > 0
                      ? new Entry(
                          name.substring(0, name.length() - contents.ending().length()),
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

  private Path file(String id) throws Problem {
    if (!ID.matcher(id).matches()) {
      throw contents.problem(ONE, Fields.cut(id), contents.idWords());
    }
    return folder.resolve(id + contents.ending());
  }

  /** Marks the file as open in this program; the mark is the folder's real path with the name. */
  private Path claim(String id, Path file) throws Problem {
    Path key = key(file);
    if (!soon(() -> OPEN.add(key))) {
      throw contents.problem(ONE, id, FileWords.say("journal.open"));
    }
    return key;
  }

  /** Something that may be refused for a moment. */
  private interface Try<X extends Exception> {
    boolean done() throws X;
  }

  /** Tries until it is done or patience ends. */
  private <X extends Exception> boolean soon(Try<X> what) throws X {
    long end = System.nanoTime() + patience.toNanos();
    while (!what.done()) {
      if (System.nanoTime() >= end) {
        return false;
      }
      LockSupport.parkNanos(PAUSE);
    }
    return true;
  }

  private static Path key(Path file) {
    try {
      return file.getParent().toRealPath().resolve(file.getFileName());
    } catch (IOException e) {
      return file;
    }
  }

  private void lock(String id, Disk.Medium medium) throws IOException, Problem {
    boolean locked = false;
    try {
      locked = soon(medium::lock);
    } finally {
      if (!locked) {
        close(medium);
      }
    }
    if (!locked) {
      throw contents.problem(ONE, id, FileWords.say("journal.elsewhere"));
    }
  }

  private byte[] bytes(String id, Disk.Medium medium) throws IOException, Problem {
    long size = medium.size();
    if (size > LARGEST) {
      throw contents.problem(
          ONE,
          id,
          FileWords.say(
              "journal.size", contents.named(FILE), Long.toString(LARGEST), Long.toString(size)));
    }
    return medium.read((int) size);
  }

  private void setAside(String id, byte[] bytes) {
    try {
      Files.write(
          folder.resolve(id + ASIDE), bytes, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
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
  private final class FileJournal implements Journal<E> {
    private final String id;
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
        String id, Path file, Path key, Disk.Medium medium, Recovered<E> recovered, byte[] cutOff) {
      this.id = id;
      this.file = file;
      this.key = key;
      this.medium = medium;
      this.end = recovered.keep();
      this.next = recovered.next();
      this.endsOpen = recovered.endsOpen();
      this.cutOff = cutOff;
      WRITING.put(key, this);
    }

    /** What the file holds: read through the one channel that has it open. */
    synchronized byte[] bytes() throws IOException, Problem {
      return JournalFolder.this.bytes(id, medium);
    }

    @Override
    public synchronized void append(E event) throws Problem {
      if (closed) {
        throw contents.problem(ONE, id, FileWords.say("journal.closed"));
      }
      byte[] line = JournalLine.write(contents, next, event);
      if (endsOpen) {
        byte[] more = new byte[line.length + 1];
        more[0] = '\n';
        System.arraycopy(line, 0, more, 1, line.length);
        line = more;
      }
      // Only now: who merely looks at it changes nothing, and is told again next time.
      if (cutOff.length > 0) {
        setAside(id, cutOff);
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
        throw contents.problem(FILE, file, FileWords.say("journal.unwritten", DiskWords.of(e)));
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
        lock(id, again);
        medium = again;
      }
      medium.cut(end);
      medium.force();
      unsure = false;
    }

    @Override
    public void close() {
      synchronized (OPENING) {
        synchronized (this) {
          if (!closed) {
            closed = true;
            WRITING.remove(key);
            JournalFolder.close(medium);
            OPEN.remove(key);
          }
        }
      }
    }
  }

  /** A journal of a file that can't be written to. */
  private static final class ReadOnlyJournal<E> implements Journal<E> {
    private final Contents<E> contents;
    private final Path file;
    private final Path key;
    private final String why;
    private boolean closed;

    ReadOnlyJournal(Contents<E> contents, Path file, Path key, String why) {
      this.contents = contents;
      this.file = file;
      this.key = key;
      this.why = why;
    }

    @Override
    public void append(E event) throws Problem {
      throw contents.problem(FILE, file, FileWords.say("journal.unwritten", why));
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
