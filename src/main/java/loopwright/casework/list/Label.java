package loopwright.casework.list;

import java.util.ArrayList;
import java.util.List;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A label to print: for one end of a wire or strap, or for a part.
 *
 * @param part the wire or part it is for
 * @param head what is read first: the wire's or part's id, with what is written on it
 * @param here the terminal this end lies on; for a part, its name
 * @param far the terminal the other end lies on; for a part, its rating or where it sits
 */
public record Label(Part part, String head, String here, String far) {

  /** Two labels for every wire and strap, one for each end, in the order of the file. */
  public static List<Label> ofWires(Vehicle vehicle) {
    List<Label> labels = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Wire w) {
        labels.add(end(part, w.from(), w.to()));
        labels.add(end(part, w.to(), w.from()));
      }
    }
    return labels;
  }

  private static Label end(Part wire, TerminalRef here, TerminalRef far) {
    return new Label(wire, head(wire), here.toString(), far.toString());
  }

  /** One label for every part that is neither wire, strap nor body. */
  public static List<Label> ofParts(Vehicle vehicle) {
    return vehicle.parts().stream()
        .filter(p -> !(p.spec() instanceof PartSpec.Wire) && p.kind() != PartKind.BODY)
        .map(p -> new Label(p, head(p), p.name(), rating(p)))
        .toList();
  }

  private static String head(Part part) {
    return part.label().isEmpty() || part.label().equals(part.id())
        ? part.id()
        : part.id() + "  " + part.label();
  }

  private static String rating(Part part) {
    return part.spec() instanceof PartSpec.Fuse f ? Said.shown(f.amps()) + " A" : part.where();
  }
}
