package loopwright.io;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Locale;

/** Says what a disk refused. */
public final class DiskWords {
  private DiskWords() {}

  /** What went wrong while a file was written, in words. */
  static String ofWriting(IOException e) {
    return e instanceof NoSuchFileException ? FileWords.say("disk.no-folder") : of(e);
  }

  /** What went wrong, in words. */
  public static String of(IOException e) {
    String reason =
        e instanceof FileSystemException f && f.getReason() != null
            ? f.getReason()
            : String.valueOf(e.getMessage());
    String lower = reason.toLowerCase(Locale.ROOT);
    if (lower.contains("no space left") || lower.contains("not enough space")) {
      return FileWords.say("disk.full");
    }
    if (lower.contains("read-only")) {
      return FileWords.say("disk.read-only");
    }
    if (e instanceof AccessDeniedException || lower.contains("permission denied")) {
      return FileWords.say("disk.not-allowed");
    }
    if (e instanceof NotDirectoryException
        || e instanceof FileAlreadyExistsException
        || lower.contains("not a directory")) {
      return FileWords.say("disk.not-folder");
    }
    return reason;
  }
}
