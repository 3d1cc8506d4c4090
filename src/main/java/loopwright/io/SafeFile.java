package loopwright.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Replaces a file in one step: the new bytes go to a file beside it, are forced to the disk, and
 * that file then takes the name. Whatever happens on the way, the name stands for the old or the
 * new bytes, never for a part of them.
 */
final class SafeFile {
  private static final String BESIDE_END = ".new";

  /** What is about to happen to a file. */
  enum Step {
    MAKE,
    FILL,
    FORCE,
    MOVE,
    FORCE_FOLDER,
    DELETE
  }

  /** Hears of every step before it is done; a test lets the disk fail or the power go there. */
  interface Watch {
    /**
     * Hears of a step.
     *
     * @throws IOException in place of what the disk would throw
     */
    void before(Step step, Path file) throws IOException;

    /** Lets everything happen. */
    Watch NONE = (step, file) -> {};
  }

  private SafeFile() {}

  /**
   * Writes the bytes.
   *
   * @param what what is written, for the error
   * @throws IOException naming what, the path and the reason; the old file is then untouched
   */
  static void write(Path path, String what, byte[] bytes) throws IOException {
    try {
      replace(target(path), bytes, Watch.NONE);
    } catch (IOException e) {
      throw new IOException(FileWords.say("out.unwritten", what, path, DiskWords.ofWriting(e)), e);
    } catch (UnsupportedOperationException e) {
      throw new IOException(
          FileWords.say("out.unwritten", what, path, FileWords.say("out.nowhere")), e);
    }
  }

  /** The file a path stands for in the end: a link goes on pointing at it. */
  static Path target(Path path) throws IOException {
    return Files.exists(path) ? path.toRealPath() : path.toAbsolutePath();
  }

  /**
   * Replaces a file, or makes it where there is none.
   *
   * @throws IOException as it came; the old file is then untouched
   */
  static void replace(Path target, byte[] bytes, Watch watch) throws IOException {
    Path beside = target.resolveSibling(besidePrefix(target) + UUID.randomUUID() + BESIDE_END);
    try {
      watch.before(Step.MAKE, beside);
      try (FileChannel out =
          FileChannel.open(beside, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        watch.before(Step.FILL, beside);
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
          out.write(buffer);
        }
        watch.before(Step.FORCE, beside);
        out.force(true);
      }
      keepPermissions(target, beside);
      watch.before(Step.MOVE, target);
      move(beside, target);
      watch.before(Step.FORCE_FOLDER, target);
      forceFolder(target.getParent());
    } catch (IOException | UnsupportedOperationException e) {
      discard(beside);
      throw e;
    }
  }

  /**
   * Deletes what a program that was killed while it wrote this file left beside it. Only for one
   * who holds the file, since another's half-written file looks the same.
   */
  static void discardLeftovers(Path target) {
    try (Stream<Path> files = Files.list(target.getParent())) {
      files
          .filter(
              f -> {
                String name = f.getFileName().toString();
                return name.startsWith(besidePrefix(target)) && name.endsWith(BESIDE_END);
              })
          .forEach(SafeFile::discard);
    } catch (IOException | UncheckedIOException e) {
      // They only take up room.
    }
  }

  private static String besidePrefix(Path target) {
    return "." + target.getFileName() + ".";
  }

  private static void keepPermissions(Path from, Path to) throws IOException {
    if (Files.exists(from)
        && Files.getFileStore(to).supportsFileAttributeView(PosixFileAttributeView.class)) {
      Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /**
   * Makes the new name itself last through a power cut, where the system lets a folder be forced.
   */
  private static void forceFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException | UnsupportedOperationException e) {
      // Some systems cannot open a folder; the file itself is already safe.
    }
  }

  private static void discard(Path beside) {
    try {
      Files.deleteIfExists(beside);
    } catch (IOException | UnsupportedOperationException e) {
      // The first error is the one to report.
    }
  }
}
