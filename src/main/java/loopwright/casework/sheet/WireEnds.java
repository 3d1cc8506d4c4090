package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.edit.Ends;
import loopwright.model.Part;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** The terminals that the ends of a list's wires mean. */
final class WireEnds {

  /**
   * An end as understood.
   *
   * @param terminal the terminal; empty if none can be meant
   * @param limit what would be accepted; empty unless none can be meant
   * @param what what is wrong; empty unless none can be meant
   * @param alone whether only the part was named, so that the direction had to tell the terminal
   * @param note how it was taken, where that is not what was written
   */
  record Found(
      Optional<TerminalRef> terminal,
      String limit,
      String what,
      boolean alone,
      Optional<String> note) {
    /** An end that the vehicle has already. */
    static Found known(TerminalRef at) {
      return new Found(Optional.of(at), "", "", false, Optional.empty());
    }

    private static Found taken(TerminalRef at, String written, boolean alone) {
      return new Found(
          Optional.of(at), "", "", alone, Optional.of(SheetWords.say("taken-as", written, at)));
    }
  }

  private final Ends ends;

  WireEnds(Vehicle vehicle, List<Part> added) {
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.addAll(added);
    this.ends = new Ends(parts);
  }

  /** The part of exactly this id. */
  Optional<Part> exactly(String id) {
    return ends.exactly(id);
  }

  /** The part of this id, in any case where that leaves one. */
  Optional<Part> part(String id) {
    return ends.part(id);
  }

  /**
   * The terminal meant.
   *
   * @param terminal in a cell of its own; empty if there is none
   */
  Found of(String part, String terminal, Sides.End end) {
    String written = terminal.isEmpty() ? part : part + " " + terminal;
    Optional<Part> whole = terminal.isEmpty() ? ends.part(part) : Optional.empty();
    Optional<TerminalRef> side =
        whole.flatMap(p -> Sides.of(p.spec(), end).map(t -> new TerminalRef(p.id(), t)));
    if (side.isPresent()) {
      boolean only = whole.get().spec().terminals().size() == 1;
      return only ? Found.known(side.get()) : Found.taken(side.get(), written, true);
    }
    Optional<TerminalRef> post = post(part, terminal);
    if (post.isPresent()) {
      return Found.taken(post.get(), written, false);
    }
    Ends.End said = terminal.isEmpty() ? ends.of(part) : ends.of(part, terminal);
    Optional<TerminalRef> other =
        said.terminal()
            .flatMap(
                at ->
                    ends.exactly(at.part())
                        .filter(p -> !p.spec().terminals().contains(at.terminal()))
                        .flatMap(p -> Sides.named(p.spec(), at.terminal(), end))
                        .map(t -> new TerminalRef(at.part(), t)));
    return other
        .map(at -> Found.taken(at, written, false))
        .orElseGet(
            () -> new Found(said.terminal(), said.limit(), said.what(), false, Optional.empty()));
  }

  /** A post with its sign right behind the part, as in {@code BATT+}. */
  private Optional<TerminalRef> post(String part, String terminal) {
    if (!terminal.isEmpty() || part.length() < 2 || ends.part(part).isPresent()) {
      return Optional.empty();
    }
    String sign = part.substring(part.length() - 1);
    return ends.part(part.substring(0, part.length() - 1).strip())
        .filter(p -> sign.equals("+") || sign.equals("-"))
        .flatMap(
            p -> Sides.named(p.spec(), sign, Sides.End.FROM).map(t -> new TerminalRef(p.id(), t)));
  }
}
