package loopwright.io.journal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.CRC32;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProofEvent;
import loopwright.casework.prove.ProofStore;

/** Keeps each vehicle's proofs in a file of its own, {@code ID.proof.jsonl}, in one folder. */
public final class FileProofStore implements ProofStore {
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
    proofs = new JournalFolder<>(folder, disk, new ProofContents(), JournalFolder.FOR_A_LINE);
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
    proofs.append(fileName(vehicleId), event);
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
