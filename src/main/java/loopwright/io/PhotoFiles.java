package loopwright.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.model.Photo;

/** Photos beside a vehicle's file or a case. */
public final class PhotoFiles {
  private static final long MOST_BYTES = 50_000_000;
  private static final int LONGEST_NAME = 40;
  private static final Set<String> ENDINGS = Set.of("jpg", "jpeg", "png", "gif", "bmp");

  private PhotoFiles() {}

  /**
   * The path of a photo below a folder; one from elsewhere is copied there first.
   *
   * @throws Problem if it is no picture, too big or can't be copied
   */
  public static String attach(Path given, Path folder) throws Problem {
    String name = String.valueOf(given.getFileName());
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    if (!ENDINGS.contains(ending)) {
      throw problem(given, "photo.kind");
    }
    try {
      Path photo = given.toRealPath();
      if (!fits(photo)) {
        throw problem(given, "photo.size");
      }
      Path home = folder.toRealPath();
      if (photo.startsWith(home)) {
        String below = home.relativize(photo).toString().replace('\\', '/');
        if (Photo.fits(below)) {
          return below;
        }
      }
      return copy(photo, home, ending);
    } catch (IOException e) {
      throw problem(given, "photo.failed", DiskWords.of(e));
    }
  }

  /**
   * The file of a photo that a vehicle or a case names; empty if there is none, or if it doesn't
   * lie below the folder once links are followed.
   */
  public static Optional<Path> find(Path folder, String file) {
    if (!Photo.fits(file)) {
      return Optional.empty();
    }
    try {
      Path photo = folder.resolve(file).toRealPath();
      return photo.startsWith(folder.toRealPath()) && fits(photo)
          ? Optional.of(photo)
          : Optional.empty();
    } catch (IOException | InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** How many letters of a name are kept, so that its file has room for more behind it. */
  private static int shortened(String name) {
    return Math.min(LONGEST_NAME, name.codePointCount(0, name.length()));
  }

  private static boolean fits(Path photo) throws IOException {
    return Files.isRegularFile(photo) && Files.size(photo) <= MOST_BYTES;
  }

  private static String copy(Path photo, Path home, String ending) throws IOException {
    String name = photo.getFileName().toString();
    String plain = name.substring(0, name.lastIndexOf('.')).replaceAll("[^\\p{L}\\p{N}_-]+", "-");
    plain = plain.substring(0, plain.offsetByCodePoints(0, shortened(plain)));
    Path photos = home.resolve("photos");
    if (Files.notExists(photos, LinkOption.NOFOLLOW_LINKS)) {
      Files.createDirectory(photos);
    } else if (!photos.toRealPath().startsWith(home)) {
      throw new IOException(FileWords.say("photo.elsewhere"));
    }
    Path to = photos.resolve(plain + "." + ending);
    for (int i = 2; Files.exists(to) && Files.mismatch(photo, to) >= 0; i++) {
      to = photos.resolve(plain + "-" + i + "." + ending);
    }
    if (!Files.exists(to)) {
      SafeFile.replace(to, Files.readAllBytes(photo), SafeFile.Watch.NONE);
    }
    return "photos/" + to.getFileName();
  }

  private static Problem problem(Path photo, String key, Object... args) {
    return new Problem(FileWords.say("photo"), photo.toString(), FileWords.say(key, args));
  }
}
