package loopwright.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import loopwright.model.Language;

/**
 * A vehicle file held by one window of one program. The system gives the lock back when a program
 * ends, however it ends.
 *
 * <p>The file itself is replaced at every save, so the lock is on a file beside it, {@code
 * .NAME.lock}, which says who holds it. That file stays when the lock is given back: were it
 * deleted, two programs could each lock a file of this name.
 */
final class VehicleLock implements AutoCloseable {

  /**
   * What this program holds, and since when. A lock belongs to the whole program on some systems
   * and is lost when any of its channels on that file is closed, so a second one is never opened.
   */
  private static final Map<Path, String> HERE = new ConcurrentHashMap<>();

  /** The one byte that is locked, far beyond the words, which others must be able to read. */
  private static final long LOCKED_BYTE = 1L << 40;

  private static final int MOST_WORDS = 200;

  private final Path file;
  private final FileChannel channel;

  private VehicleLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /** Someone else holds the file. */
  static final class Held extends Exception {
    private static final long serialVersionUID = 1L;

    Held(String words) {
      super(words);
    }
  }

  /**
   * Takes the lock.
   *
   * @param file the real path of the vehicle file
   * @throws Held naming who holds it since when
   * @throws IOException if nothing can be locked there
   */
  static VehicleLock take(Path file) throws Held, IOException {
    String since =
        DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Language.inUse().locale())
            .withZone(ZoneId.systemDefault())
            .format(Instant.now());
    String here = HERE.putIfAbsent(file, since);
    if (here != null) {
      throw new Held(FileWords.say("held.window", here));
    }
    boolean taken = false;
    try {
      VehicleLock lock = new VehicleLock(file, channel(file));
      lock.say(
          FileWords.say(
              "held.by",
              since,
              System.getProperty("user.name"),
              Long.toString(ProcessHandle.current().pid())));
      taken = true;
      return lock;
    } finally {
      if (!taken) {
        HERE.remove(file);
      }
    }
  }

  private static FileChannel channel(Path file) throws Held, IOException {
    Path beside = file.resolveSibling("." + file.getFileName() + ".lock");
    FileChannel channel =
        FileChannel.open(beside, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    FileLock lock = null;
    try {
      lock = channel.tryLock(LOCKED_BYTE, 1, false);
    } catch (OverlappingFileLockException e) {
      // Another loader of this program has it.
    } finally {
      if (lock == null) {
        channel.close();
      }
    }
    if (lock == null) {
      String holder = holder(beside);
      throw new Held(
          holder.isEmpty() ? FileWords.say("held") : FileWords.say("held.since", holder));
    }
    return channel;
  }

  private static String holder(Path beside) {
    try {
      String words = Files.readString(beside).replaceAll("\\p{Cc}", " ").strip();
      return words.substring(0, Math.min(words.length(), MOST_WORDS));
    } catch (IOException e) {
      return "";
    }
  }

  /** The words are a courtesy; the lock holds without them, for instance on a full disk. */
  private void say(String words) {
    try {
      channel.truncate(0);
      channel.write(ByteBuffer.wrap(words.getBytes(StandardCharsets.UTF_8)), 0);
    } catch (IOException e) {
      // The other is then told that the file is open, without by whom.
    }
  }

  @Override
  public void close() {
    say("");
    try {
      channel.close();
    } catch (IOException e) {
      // The system gives the lock back at the latest when the program ends.
    } finally {
      HERE.remove(file);
    }
  }
}
