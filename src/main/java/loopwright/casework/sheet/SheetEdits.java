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
        SheetWords.say("edit.wires", name),
        before -> {
          WirePreview preview = sheet.preview(before, mapping, leniency);
          List<String> told = new ArrayList<>();
          told.add(
              SheetWords.say(
                  "edit.wires.told",
                  Long.toString(preview.count(WirePreview.Effect.NEW)),
                  Long.toString(preview.count(WirePreview.Effect.CHANGED))));
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
        SheetWords.say("edit.pins", name),
        before -> {
          PinPreview preview = sheet.preview(before, mapping, connectors);
          long differing = preview.differences().stream().filter(d -> d.line() > 0).count();
          return made(
              name,
              preview.applied(),
              preview.defects(),
              List.of(SheetWords.say("edit.pins.told", differing)));
        });
  }

  private static Edit.Made made(
      String name, Optional<Vehicle> applied, List<CellDefect> defects, List<String> told)
      throws Problem {
    if (applied.isEmpty()) {
      String first = defects.isEmpty() ? SheetWords.say("edit.open") : defects.get(0).message();
      throw new Problem(SheetWords.say("list"), name, SheetWords.say("edit.defects", first));
    }
    return new Edit.Made(applied.get(), told);
  }
}
