package loopwright.io.journal;

import java.io.IOException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.Arrays;

/** A disk that does what the test says at the next write or force. */
final class BadDisk implements Disk {
  int goodWrites = Integer.MAX_VALUE;
  int goodForces = Integer.MAX_VALUE;
  int cutBack;
  boolean readOnly;
  boolean closeNext;

  @Override
  public void folder(Path folder) throws IOException {
    REAL.folder(folder);
  }

  @Override
  public Medium create(Path file) throws IOException {
    if (readOnly) {
      throw new AccessDeniedException(file.toString());
    }
    return bad(REAL.create(file));
  }

  @Override
  public Medium open(Path file) throws IOException {
    if (readOnly) {
      throw new FileSystemException(file.toString(), null, "Read-only file system");
    }
    return bad(REAL.open(file));
  }

  @Override
  public Medium openToRead(Path file) throws IOException {
    return REAL.openToRead(file);
  }

  private Medium bad(Medium good) {
    return new Medium() {
      @Override
      public boolean lock() throws IOException {
        return good.lock();
      }

      @Override
      public long size() throws IOException {
        return good.size();
      }

      @Override
      public byte[] read(int size) throws IOException {
        return good.read(size);
      }

      @Override
      public void write(byte[] bytes, long at) throws IOException {
        if (closeNext) {
          closeNext = false;
          good.close();
          throw new ClosedByInterruptException();
        }
        if (goodWrites-- <= 0) {
          good.write(Arrays.copyOf(bytes, bytes.length / 2), at);
          throw new IOException("No space left on device");
        }
        good.write(bytes, at);
      }

      @Override
      public void cut(long size) throws IOException {
        if (cutBack-- > 0) {
          throw new IOException("Input/output error");
        }
        good.cut(size);
      }

      @Override
      public void force() throws IOException {
        if (goodForces-- <= 0) {
          goodForces = Integer.MAX_VALUE;
          throw new IOException("Input/output error");
        }
        good.force();
      }

      @Override
      public boolean isOpen() {
        return good.isOpen();
      }

      @Override
      public void close() throws IOException {
        good.close();
      }
    };
  }
}
