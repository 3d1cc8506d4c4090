package loopwright.io.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.sheet.SheetStore;
import loopwright.io.DiskWords;
import loopwright.io.FileWords;
import loopwright.io.OutFile;

/**
 * Lists in files, in the encodings that spreadsheets write: UTF-8 and UTF-16 with or without a byte
 * order mark, else Windows-1252, which holds what older programs of western languages write. They
 * are written as UTF-8 with a mark, by which spreadsheets know it.
 */
public final class SheetFiles implements SheetStore {
  /** Largest file in bytes: 20 MB, as for vehicles. */
  private static final int MAX_BYTES = 20_000_000;

  private static final char MARK = '\uFEFF';
  private static final Charset WINDOWS = Charset.forName("windows-1252");

  @Override
  public Read read(Path file) throws Problem {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(MAX_BYTES + 1);
    } catch (NoSuchFileException e) {
      throw problem(file, FileWords.say("file.none"));
    } catch (IOException e) {
      String why = Files.isDirectory(file) ? FileWords.say("folder") : DiskWords.of(e);
      throw problem(file, FileWords.say("unread", why));
    }
    if (bytes.length > MAX_BYTES) {
      throw problem(file, FileWords.say("list.size"));
    }
    String name = String.valueOf(file.getFileName());
    if (isWorkbook(bytes)) {
      throw problem(file, FileWords.say("list.workbook"));
    }
    try {
      String text = decoded(bytes, wide(bytes).orElse(StandardCharsets.UTF_8));
      return new Read(text, name, Optional.empty());
    } catch (CharacterCodingException e) {
      return windows(file, bytes, name);
    }
  }

  private static Read windows(Path file, byte[] bytes, String name) throws Problem {
    try {
      String remark = FileWords.say("list.letters", name);
      return new Read(decoded(bytes, WINDOWS), name, Optional.of(remark));
    } catch (CharacterCodingException e) {
      throw problem(file, FileWords.say("list.unknown"));
    }
  }

  private static String decoded(byte[] bytes, Charset charset) throws CharacterCodingException {
    String text = charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    return !text.isEmpty() && text.charAt(0) == MARK ? text.substring(1) : text;
  }

  /** A workbook is a packed folder; older ones are compound documents. */
  private static boolean isWorkbook(byte[] b) {
    return b.length > 3
        && ((b[0] == 'P' && b[1] == 'K' && b[2] == 3 && b[3] == 4)
            || (b[0] == (byte) 0xD0 && b[1] == (byte) 0xCF && b[2] == 0x11 && b[3] == (byte) 0xE0));
  }

  /** UTF-16 by its mark or, where there is none, by which half of the characters is zero. */
  private static Optional<Charset> wide(byte[] b) {
    if (b.length < 2 || b.length % 2 != 0) {
      return Optional.empty();
    }
    if (b[0] == (byte) 0xFE && b[1] == (byte) 0xFF) {
      return Optional.of(StandardCharsets.UTF_16BE);
    }
    if (b[0] == (byte) 0xFF && b[1] == (byte) 0xFE) {
      return Optional.of(StandardCharsets.UTF_16LE);
    }
    int[] zeros = new int[2];
    for (int i = 0; i < b.length; i++) {
      zeros[i % 2] += b[i] == 0 ? 1 : 0;
    }
    int most = b.length / 2;
    if (zeros[0] > most * 0.8 && zeros[1] == 0) {
      return Optional.of(StandardCharsets.UTF_16BE);
    }
    return zeros[1] > most * 0.8 && zeros[0] == 0
        ? Optional.of(StandardCharsets.UTF_16LE)
        : Optional.empty();
  }

  @Override
  public void write(Path file, String text) throws Problem {
    try {
      OutFile.write(
          file, FileWords.say("list-file"), (MARK + text).getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw problem(file, String.valueOf(e.getMessage()));
    }
  }

  @Override
  public Path home() {
    return Path.of(System.getProperty("user.home"));
  }

  private static Problem problem(Path file, String what) {
    return new Problem(FileWords.say("list-file"), file.toString(), what);
  }
}
