package loopwright.casework.explain;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Where each control of a page stands, by its id. */
record Stand(Map<String, String> stops) {
  Stand {
    stops = Map.copyOf(stops);
  }

  static Stand of(List<Control> controls, Function<Control, String> stop) {
    return new Stand(controls.stream().collect(Collectors.toMap(Control::id, stop)));
  }

  String at(String control) {
    return stops.get(control);
  }

  boolean is(String control, String stop) {
    return at(control).equals(stop);
  }

  double ohms(String control) {
    return Double.parseDouble(at(control));
  }
}
