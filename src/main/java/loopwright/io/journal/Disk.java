package loopwright.io.journal;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** The file operations a journal needs; a test puts a failing disk in its place. */
interface Disk {

  /** Makes a folder with those above it. */
  void folder(Path folder) throws IOException;

  /** Makes a new file, open for reading and writing. */
  Medium create(Path file) throws IOException;

  /** Opens a file for reading and writing. */
  Medium open(Path file) throws IOException;

  /** Opens a file for reading alone. */
  Medium openToRead(Path file) throws IOException;

  /** An open file. */
  interface Medium extends Closeable {
    /** Whether nobody else has the file; it is this program's until closed. */
    boolean lock() throws IOException;

    long size() throws IOException;

    byte[] read(int size) throws IOException;

    void write(byte[] bytes, long at) throws IOException;

    /** Cuts the file to a size; does nothing where it isn't longer. */
    void cut(long size) throws IOException;

    /** Returns only once all that was written is on the disk. */
    void force() throws IOException;

    boolean isOpen();
  }

  /** The disk of the machine. */
  Disk REAL =
      new Disk() {
        @Override
        public void folder(Path folder) throws IOException {
          if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder);
          }
        }

        @Override
        public Medium create(Path file) throws IOException {
          Medium medium =
              channel(
                  file,
                  StandardOpenOption.CREATE_NEW,
                  StandardOpenOption.READ,
                  StandardOpenOption.WRITE);
          forceName(file.getParent());
          return medium;
        }

        @Override
        public Medium open(Path file) throws IOException {
          return channel(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
        }

        @Override
        public Medium openToRead(Path file) throws IOException {
          return channel(file, StandardOpenOption.READ);
        }
      };

  /** Puts a new file's name on the disk; some systems can't open a folder and don't need it. */
  private static void forceName(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // The file itself is forced all the same.
    }
  }

  private static Medium channel(Path file, OpenOption... options) throws IOException {
    FileChannel channel = FileChannel.open(file, options);
    return new Medium() {
      @Override
      public boolean lock() throws IOException {
        try {
          return channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
          return false;
        }
      }

      @Override
      public long size() throws IOException {
        return channel.size();
      }

      @Override
      public byte[] read(int size) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(size);
        while (buffer.hasRemaining() && channel.read(buffer, buffer.position()) >= 0) {
          continue;
        }
        byte[] bytes = new byte[buffer.position()];
        buffer.flip().get(bytes);
        return bytes;
      }

      @Override
      public void write(byte[] bytes, long at) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
          channel.write(buffer, at + buffer.position());
        }
      }

      @Override
      public void cut(long size) throws IOException {
        channel.truncate(size);
      }

      @Override
      public void force() throws IOException {
        channel.force(true);
      }

      @Override
      public boolean isOpen() {
        return channel.isOpen();
      }

      @Override
      public void close() throws IOException {
        channel.close();
      }
    };
  }
}
