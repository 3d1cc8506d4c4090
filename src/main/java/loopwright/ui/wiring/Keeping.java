package loopwright.ui.wiring;

import java.nio.file.Path;
import loopwright.casework.edit.UnsavedWork;
import loopwright.casework.edit.VehicleStore;

/**
 * Where vehicles that are worked on are kept.
 *
 * @param store their files
 * @param unsaved copies of what no file holds yet
 * @param home the folder proposed for a first file
 */
public record Keeping(VehicleStore store, UnsavedWork unsaved, Path home) {
  /** Keeps nothing. */
  public static final Keeping NOWHERE =
      new Keeping(VehicleStore.NOWHERE, UnsavedWork.NOWHERE, Path.of(""));
}
