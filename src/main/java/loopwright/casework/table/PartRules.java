package loopwright.casework.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import loopwright.casework.Problem;
import loopwright.casework.edit.Ends;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;

/** The columns that every part has. */
final class PartRules {
  private static final int LONGEST = 10_000;

  private PartRules() {}

  static Rule words(
      Column column, Function<Part, String> get, BiFunction<Part, String, Part> with) {
    return new Rule() {
      @Override
      public String text(Draft draft, String row) {
        return get.apply(draft.part(row).orElseThrow());
      }

      @Override
      public void set(Draft draft, String row, String text) throws Problem {
        if (text.length() > LONGEST) {
          throw Words.bad(column, text, Words.say("long"));
        }
        draft.put(with.apply(draft.part(row).orElseThrow(), text));
      }
    };
  }

  /** The kind, in a table of several; another kind takes the values it has of its own. */
  static Rule kind(List<PartKind> kinds) {
    return new Rule() {
      @Override
      public String text(Draft draft, String row) {
        return draft.part(row).orElseThrow().kind().said();
      }

      @Override
      public void set(Draft draft, String row, String text) throws Problem {
        PartKind kind = Words.word(Column.KIND, text, kinds, PartKind::said, PartKind::word);
        Part part = draft.part(row).orElseThrow();
        if (part.kind() != kind) {
          draft.put(part.withSpec(Kinds.changed(part.spec(), kind, draft.systemVolts())));
        }
      }

      @Override
      public boolean required(Draft draft, String row) {
        return true;
      }
    };
  }

  static Rule free() {
    return new Rule() {
      @Override
      public String text(Draft draft, String row) {
        Part part = draft.part(row).orElseThrow();
        List<String> known = new ArrayList<>(part.spec().terminals());
        known.retainAll(part.spare());
        part.spare().stream().filter(s -> !known.contains(s)).sorted().forEach(known::add);
        return String.join(", ", known);
      }

      @Override
      public void set(Draft draft, String row, String text) throws Problem {
        Part part = draft.part(row).orElseThrow();
        List<String> terminals = part.spec().terminals();
        Set<String> spare = new HashSet<>();
        for (String name : Words.names(Column.FREE, text)) {
          if (!terminals.contains(name)) {
            throw Words.bad(Column.FREE, name, Words.say("free", Words.all(terminals)));
          }
          spare.add(name);
        }
        draft.put(part.withSpare(spare));
      }
    };
  }

  /**
   * What touches the part's terminals without a wire: {@code feed: BB.a; load: X1.2}; on a part
   * with one terminal that can be meant, the others alone.
   */
  static Rule touches(Optional<String> usual) {
    return new Rule() {
      @Override
      public String text(Draft draft, String row) {
        List<String> all = new ArrayList<>();
        for (String terminal : draft.part(row).orElseThrow().spec().terminals()) {
          List<String> others =
              draft.touching(new TerminalRef(row, terminal)).stream()
                  .map(TerminalRef::toString)
                  .toList();
          if (!others.isEmpty()) {
            String list = String.join(", ", others);
            all.add(usual.equals(Optional.of(terminal)) ? list : terminal + ": " + list);
          }
        }
        return String.join("; ", all);
      }

      @Override
      public void set(Draft draft, String row, String text) throws Problem {
        List<String> terminals = draft.part(row).orElseThrow().spec().terminals();
        List<TerminalRef> done = new ArrayList<>();
        for (String piece : text.split(";")) {
          if (!piece.isBlank()) {
            touch(draft, row, terminals, piece.strip(), done);
          }
        }
        for (String terminal : terminals) {
          TerminalRef own = new TerminalRef(row, terminal);
          if (!done.contains(own) && !draft.touching(own).isEmpty()) {
            draft.touch(own, List.of());
          }
        }
      }

      private void touch(
          Draft draft, String row, List<String> terminals, String piece, List<TerminalRef> done)
          throws Problem {
        int colon = piece.indexOf(':');
        String own = colon < 0 ? usual.orElse("") : piece.substring(0, colon).strip();
        if (!terminals.contains(own)) {
          throw Words.bad(
              Column.TOUCHES, piece, Words.say("touches", Words.all(terminals), terminals.get(0)));
        }
        List<TerminalRef> others = new ArrayList<>();
        for (String other : piece.substring(colon + 1).split(",")) {
          if (!other.isBlank()) {
            others.add(end(draft, Column.TOUCHES, other.strip()));
          }
        }
        TerminalRef at = new TerminalRef(row, own);
        if (others.contains(at)) {
          throw Words.bad(Column.TOUCHES, piece, Words.say("touches.other"));
        }
        if (!Set.copyOf(others).equals(Set.copyOf(draft.touching(at)))) {
          draft.touch(at, others);
        }
        done.add(at);
      }
    };
  }

  /** A terminal as people write it. Whether the vehicle has it is for the check of the whole. */
  static TerminalRef end(Draft draft, Column column, String text) throws Problem {
    if (text.isEmpty()) {
      throw Words.bad(column, text, Words.say("end"));
    }
    Ends.End end = draft.ends().of(text);
    return end.terminal().orElseThrow(() -> Words.bad(column, text, end.limit()));
  }
}
