package loopwright.casework.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import loopwright.casework.Problem;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;

/** The columns of a circuit. */
final class CircuitRules {
  private CircuitRules() {}

  /** Makes a circuit of another one and a text. */
  private interface With {
    Circuit of(Draft draft, Circuit circuit, String text) throws Problem;
  }

  private static Rule rule(boolean required, Function<Circuit, String> get, With with) {
    return new Rule() {
      @Override
      public String text(Draft draft, String row) {
        return get.apply(draft.circuit(row).orElseThrow());
      }

      @Override
      public void set(Draft draft, String row, String text) throws Problem {
        draft.put(with.of(draft, draft.circuit(row).orElseThrow(), text));
      }

      @Override
      public boolean required(Draft draft, String row) {
        return required;
      }
    };
  }

  static Rule name() {
    return rule(
        true, Circuit::name, (d, c, t) -> new Circuit(c.id(), t, c.loads(), c.on(), c.note()));
  }

  static Rule note() {
    return rule(
        false, Circuit::note, (d, c, t) -> new Circuit(c.id(), c.name(), c.loads(), c.on(), t));
  }

  static Rule loads() {
    return rule(
        true,
        c -> String.join(", ", c.loads().stream().map(LoadRef::toString).toList()),
        (d, c, t) -> new Circuit(c.id(), c.name(), loads(d, t), c.on(), c.note()));
  }

  private static List<LoadRef> loads(Draft draft, String text) throws Problem {
    List<LoadRef> loads = new ArrayList<>();
    for (String piece : text.strip().split("[\\s,;]+")) {
      if (piece.isEmpty()) {
        continue;
      }
      LoadRef load = LoadRef.parse(piece);
      String id = draft.ends().part(load.part()).map(Part::id).orElse(load.part());
      loads.add(new LoadRef(id, load.filament()));
    }
    if (loads.isEmpty()) {
      throw Words.bad(Column.LOADS, text, Words.say("loads"));
    }
    return loads;
  }

  static Rule on() {
    return rule(
        false,
        c -> {
          List<String> all = new ArrayList<>();
          new TreeMap<>(c.on()).forEach((control, position) -> all.add(control + "=" + position));
          return String.join(", ", all);
        },
        (d, c, t) -> new Circuit(c.id(), c.name(), c.loads(), on(d, t), c.note()));
  }

  private static Map<String, String> on(Draft draft, String text) throws Problem {
    Map<String, String> on = new LinkedHashMap<>();
    for (String piece : text.strip().replaceAll("\\s*[=:]\\s*", "=").split("[\\s,;]+")) {
      if (piece.isEmpty()) {
        continue;
      }
      int sign = piece.indexOf('=');
      if (sign <= 0 || sign == piece.length() - 1) {
        throw Words.bad(Column.ON, piece, Words.say("on"));
      }
      String written = piece.substring(0, sign);
      String id = draft.ends().part(written).map(Part::id).orElse(written);
      String position = piece.substring(sign + 1);
      List<String> known =
          draft.part(id).map(p -> p.spec().positions()).filter(l -> !l.isEmpty()).orElse(List.of());
      if (draft.part(id).isPresent() && !known.contains(position)) {
        throw Words.bad(
            Column.ON,
            piece,
            known.isEmpty()
                ? Words.say("on.fixed", id)
                : Words.say("on.positions", id, Words.all(known)));
      }
      on.put(id, position);
    }
    return on;
  }
}
