package loopwright.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Replaces a file in one step: the new bytes go to a file beside it, are forced to the disk, and
 * that file then takes the name. Whatever happens on the way, the name stands for the old or the
 * new bytes, never for a part of them.
 */
final class SafeFile {
  private SafeFile() {}

  /**
   * Writes the bytes.
   *
   * @param what what is written, for the error
   * @throws IOException naming what, the path and the reason; the old file is then untouched
   */
  static void write(Path path, String what, byte[] bytes) throws IOException {
    Path target = Files.exists(path) ? path.toRealPath() : path.toAbsolutePath();
    Path beside =
        target.resolveSibling("." + target.getFileName() + "." + UUID.randomUUID() + ".new");
    try {
      try (FileChannel out =
          FileChannel.open(beside, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
          out.write(buffer);
        }
        out.force(true);
      }
      move(beside, target);
      forceFolder(target.getParent());
    } catch (IOException | UnsupportedOperationException e) {
      discard(beside);
      String reason = e.getMessage() == null ? "" : ": " + e.getMessage();
      throw new IOException(
          what + " cannot be written to " + path + ": " + e.getClass().getSimpleName() + reason, e);
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
