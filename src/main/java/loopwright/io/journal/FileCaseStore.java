package loopwright.io.journal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.Picture;
import loopwright.casework.Problem;
import loopwright.io.PhotoFiles;
import loopwright.io.PictureFile;

/** Keeps each case in a file of its own, {@code ID.case.jsonl}, in one folder. */
public final class FileCaseStore implements CaseStore {

  /** Largest case file read, in bytes. */
  static final long LARGEST = JournalFolder.LARGEST;

  private final Path folder;
  private final JournalFolder<CaseEvent> cases;

  /**
   * A store in a folder; the folder is made when the first case is.
   *
   * @param folder where the case files are
   */
  public FileCaseStore(Path folder) {
    this(folder, Disk.REAL);
  }

  FileCaseStore(Path folder, Disk disk) {
    this.folder = folder;
    cases = new JournalFolder<>(folder, disk, new CaseContents());
  }

  @Override
  public Journal create(String caseId) throws Problem {
    return journal(cases.create(caseId));
  }

  @Override
  public Loaded load(String caseId) throws Problem {
    JournalFolder.Loaded<CaseEvent> loaded = cases.load(caseId);
    return new Loaded(loaded.events(), loaded.missing(), journal(loaded.journal()));
  }

  @Override
  public Read read(String caseId) throws Problem {
    Recovered<CaseEvent> recovered = cases.read(caseId);
    return new Read(recovered.events(), recovered.missing());
  }

  @Override
  public List<String> ids() {
    return cases.ids();
  }

  @Override
  public Optional<Picture> picture(String file) {
    return PhotoFiles.find(folder, file).flatMap(PictureFile::read);
  }

  private Journal journal(JournalFolder.Journal<CaseEvent> open) {
    return new Journal() {
      @Override
      public void append(CaseEvent event) throws Problem {
        open.append(event);
      }

      @Override
      public String photo(Path photo) throws Problem {
        return PhotoFiles.attach(photo, folder);
      }

      @Override
      public void close() {
        open.close();
      }
    };
  }
}
