package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.model.Part;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Finds the terminals that people mean: {@code F3.load}, {@code f3 load}, {@code F3:load}. */
public final class Ends {
  private static final String SIGNS = ".: -/";

  /** A part's short name of 40 letters with blanks behind it; no name ends further on. */
  private static final int LONGEST_PART = 80;

  /** A terminal, or what is wrong. Whether the vehicle has it is for the check of the whole. */
  public record End(Optional<TerminalRef> terminal, String limit, String what) {
    private static End of(TerminalRef terminal) {
      return new End(Optional.of(terminal), "", "");
    }
  }

  private final Map<String, Part> byId = new HashMap<>();
  private final Map<String, List<Part>> byAnyCase = new HashMap<>();

  /** The terminals of a vehicle. */
  public Ends(Vehicle vehicle) {
    this(vehicle.parts());
  }

  /** The terminals of some parts. */
  public Ends(Collection<Part> parts) {
    for (Part part : parts) {
      byId.put(part.id(), part);
      byAnyCase
          .computeIfAbsent(part.id().toLowerCase(Locale.ROOT), x -> new ArrayList<>())
          .add(part);
    }
  }

  /** The part of exactly this id. */
  public Optional<Part> exactly(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** The part of this id, in any case where that leaves one. */
  public Optional<Part> part(String id) {
    List<Part> alike = byAnyCase.getOrDefault(id.toLowerCase(Locale.ROOT), List.of());
    return Optional.ofNullable(byId.get(id))
        .or(() -> alike.size() == 1 ? Optional.of(alike.get(0)) : Optional.empty());
  }

  /** A terminal written in two cells. */
  public End of(String part, String terminal) {
    return End.of(
        part(part)
            .map(p -> terminal(p, terminal))
            .orElseGet(() -> new TerminalRef(part, terminal)));
  }

  /** A terminal written in one cell. */
  public End of(String cell) {
    Optional<Part> whole = part(cell);
    if (whole.isPresent()) {
      List<String> terminals = whole.get().spec().terminals();
      if (terminals.size() == 1) {
        return End.of(new TerminalRef(whole.get().id(), terminals.get(0)));
      }
      String limit =
          terminals.isEmpty()
              ? EditWords.say("end.other")
              : EditWords.say("end.own", String.join(", ", terminals));
      return new End(Optional.empty(), limit, EditWords.say("end.alone", Shown.of(cell), limit));
    }
    for (char sign : SIGNS.toCharArray()) {
      for (int cut = cell.indexOf(sign);
          cut > 0 && cut <= LONGEST_PART;
          cut = cell.indexOf(sign, cut + 1)) {
        Optional<Part> part = part(cell.substring(0, cut).strip());
        String terminal = cell.substring(cut + 1).strip();
        if (part.isPresent() && !terminal.isEmpty()) {
          return End.of(terminal(part.get(), terminal));
        }
      }
    }
    int dot = cell.indexOf('.');
    if (dot > 0 && dot < cell.length() - 1) {
      return End.of(TerminalRef.parse(cell));
    }
    String limit = EditWords.say("end");
    return new End(Optional.empty(), limit, EditWords.say("end.bad", Shown.of(cell), limit));
  }

  private static TerminalRef terminal(Part part, String written) {
    List<String> known = part.spec().terminals();
    List<String> alike = known.stream().filter(k -> k.equalsIgnoreCase(written)).toList();
    return new TerminalRef(
        part.id(), !known.contains(written) && alike.size() == 1 ? alike.get(0) : written);
  }
}
