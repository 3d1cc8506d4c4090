package loopwright.io.journal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.zip.CRC32;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProofEvent;
import loopwright.casework.prove.ProofStore;

/** Keeps each vehicle's proofs in a file of its own, {@code ID.proof.jsonl}, in one folder. */
public final class FileProofStore implements ProofStore {

  /** Another window or program has a journal for as long as it takes to write a line. */
  private static final Duration PATIENCE = Duration.ofSeconds(2);

  private final JournalFolder<ProofEvent> proofs;

  /**
   * A store in a folder; the folder is made when the first proof is.
   *
   * @param folder where the proof files are
   */
  public FileProofStore(Path folder) {
    this(folder, Disk.REAL);
  }

  FileProofStore(Path folder, Disk disk) {
    proofs = new JournalFolder<>(folder, disk, new ProofContents(), PATIENCE);
  }

  @Override
  public synchronized Kept read(String vehicleId) throws Problem {
    String name = fileName(vehicleId);
    if (!proofs.has(name)) {
      return new Kept(List.of(), "");
    }
    Recovered<ProofEvent> recovered = proofs.read(name);
    return new Kept(recovered.events(), recovered.missing());
  }

  @Override
  public synchronized void append(String vehicleId, ProofEvent event) throws Problem {
    JournalFolder.Journal<ProofEvent> journal = open(fileName(vehicleId));
    try {
      journal.append(event);
    } finally {
      journal.close();
    }
  }

  private JournalFolder.Journal<ProofEvent> open(String name) throws Problem {
    if (!proofs.has(name)) {
      try {
        return proofs.create(name);
      } catch (Problem e) {
        if (!proofs.has(name)) {
          throw e;
        }
        // Another program was quicker.
      }
    }
    return proofs.load(name).journal();
  }

  /** An id may hold letters of any script and signs that a file's name can't have. */
  static String fileName(String vehicleId) {
    String plain = vehicleId.replaceAll("[^A-Za-z0-9_-]", "_");
    if (plain.equals(vehicleId) && !plain.startsWith("_") && !plain.startsWith("-")) {
      return plain;
    }
    CRC32 crc = new CRC32();
    crc.update(vehicleId.getBytes(StandardCharsets.UTF_8));
    return String.format("v%s.%08x", plain, crc.getValue());
  }
}
