package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.casework.edit.Edit;
import loopwright.model.Vehicle;

/** Lists taken into a vehicle that is worked on, each as one edit. */
public final class SheetEdits {
  private SheetEdits() {}

  /**
   * Takes a wire list, all of it or nothing.
   *
   * @param name what the list is called, for instance its file's name
   */
  public static Edit wires(
      String name, WireSheet sheet, Mapping<WireColumn> mapping, Set<Leniency> leniency) {
    return Edit.of(
        "take the wire list " + name,
        before -> {
          WirePreview preview = sheet.preview(before, mapping, leniency);
          List<String> told = new ArrayList<>();
          told.add(
              "Wire list taken: "
                  + preview.count(WirePreview.Effect.NEW)
                  + " wires new, "
                  + preview.count(WirePreview.Effect.CHANGED)
                  + " changed");
          preview.added().forEach(a -> told.add(a.told()));
          return made(name, preview.applied(), preview.defects(), told);
        });
  }

  /**
   * Takes a pinout list, all of it or nothing.
   *
   * @param connectors ids of the connectors it is about; all if empty
   */
  public static Edit pins(
      String name, PinSheet sheet, Mapping<PinColumn> mapping, Set<String> connectors) {
    return Edit.of(
        "take the pinout list " + name,
        before -> {
          PinPreview preview = sheet.preview(before, mapping, connectors);
          long differing = preview.differences().stream().filter(d -> d.line() > 0).count();
          return made(
              name,
              preview.applied(),
              preview.defects(),
              List.of("Pinout list taken: " + differing + " entries were otherwise"));
        });
  }

  private static Edit.Made made(
      String name, Optional<Vehicle> applied, List<CellDefect> defects, List<String> told)
      throws Problem {
    if (applied.isEmpty()) {
      String first = defects.isEmpty() ? "it leaves pins open" : defects.get(0).message();
      throw new Problem("list", name, "one without defects: " + first);
    }
    return new Edit.Made(applied.get(), told);
  }
}
