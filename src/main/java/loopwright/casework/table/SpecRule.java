package loopwright.casework.table;

import java.util.List;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.edit.Shown;
import loopwright.model.Part;
import loopwright.model.PartSpec;

/**
 * A value that some kinds of part have: the first entry whose kind of values the part has decides.
 * On other kinds the cell is empty and stays so.
 */
record SpecRule(Column column, List<Entry<?>> entries) implements Rule {

  /** Whether a part can do without the value. */
  enum Need {
    REQUIRED,
    OPTIONAL
  }

  /** Puts a text into the values of a part. */
  interface Setter<S> {
    PartSpec set(Draft draft, S spec, String text) throws Problem;
  }

  /** Reads a text out of the values of a part. */
  interface Getter<S> {
    String text(S spec);
  }

  /** The value on one kind of values. */
  record Entry<S extends PartSpec>(Class<S> type, Need need, Getter<S> get, Setter<S> set) {
    Optional<String> text(PartSpec spec) {
      return type.isInstance(spec) ? Optional.of(get.text(type.cast(spec))) : Optional.empty();
    }

    PartSpec put(Draft draft, PartSpec spec, String text) throws Problem {
      return set.set(draft, type.cast(spec), text);
    }
  }

  private Optional<Entry<?>> entry(Draft draft, String row) {
    PartSpec spec = draft.part(row).orElseThrow().spec();
    for (Entry<?> entry : entries) {
      if (entry.type().isInstance(spec)) {
        return Optional.of(entry);
      }
    }
    return Optional.empty();
  }

  @Override
  public String text(Draft draft, String row) {
    PartSpec spec = draft.part(row).orElseThrow().spec();
    return entry(draft, row).flatMap(e -> e.text(spec)).orElse("");
  }

  @Override
  public void set(Draft draft, String row, String text) throws Problem {
    Part part = draft.part(row).orElseThrow();
    Optional<Entry<?>> entry = entry(draft, row);
    if (entry.isPresent()) {
      draft.put(part.withSpec(entry.get().put(draft, part.spec(), text)));
    } else if (!text.isEmpty()) {
      throw new Problem(Words.of(column), Shown.of(text), Words.say("empty", part.kind().said()));
    }
  }

  @Override
  public boolean required(Draft draft, String row) {
    return entry(draft, row).filter(e -> e.need() == Need.REQUIRED).isPresent();
  }
}
