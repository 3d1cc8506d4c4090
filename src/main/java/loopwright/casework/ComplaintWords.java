package loopwright.casework;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.diagnosis.ComplaintKind;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.Vehicle;

/** Understands a complaint in a person's words. */
final class ComplaintWords {

  /** Kinds in the order in which their words are looked for: some hold those of a later one. */
  private static final List<ComplaintKind> KINDS =
      List.of(
          ComplaintKind.BLOWS_FUSE,
          ComplaintKind.WAKES_OTHER,
          ComplaintKind.DRAINS_BATTERY,
          ComplaintKind.WORKS_SOMETIMES,
          ComplaintKind.STUCK_ON,
          ComplaintKind.DIM,
          ComplaintKind.DEAD);

  private ComplaintWords() {}

  static CaseDesk.Complaint understand(Vehicle vehicle, String words) throws Problem {
    String text = " " + normal(words) + " ";
    // A circuit's own id comes first: the "slow" of heater-slow says nothing of what it does.
    String named = "";
    String circuitId = "";
    for (Circuit circuit : vehicle.circuits()) {
      String id = " " + normal(circuit.id()) + " ";
      if (id.length() > named.length() && text.startsWith(id)) {
        named = id;
        circuitId = circuit.id();
      }
    }
    text = named.isEmpty() ? text : " " + text.substring(named.length());
    ComplaintKind kind = null;
    for (Map.Entry<String, ComplaintKind> e : kinds().entrySet()) {
      String phrase = " " + normal(e.getKey()) + " ";
      if (text.contains(phrase)) {
        kind = e.getValue();
        text = text.replace(phrase, " ");
        break;
      }
    }
    if (kind == null) {
      throw new Problem("complaint", words, Phrases.inUse().say("complaint.how"));
    }
    if (!circuitId.isEmpty() && text.isBlank()) {
      return new CaseDesk.Complaint(circuitId, Optional.empty(), kind);
    }
    text = named + text;
    Optional<CaseDesk.Complaint> best = Optional.empty();
    double most = 0;
    for (Circuit circuit : vehicle.circuits()) {
      double own = score(text, circuit.id() + " " + circuit.name(), circuit.id());
      if (own > most) {
        most = own;
        best = Optional.of(new CaseDesk.Complaint(circuit.id(), Optional.empty(), kind));
      }
      for (LoadRef load : circuit.loads()) {
        Part part = vehicle.requirePart(load.part());
        String name =
            part.id() + " " + part.name() + " " + load.filament().orElse("") + " " + part.label();
        double s = score(text, name, part.id()) * 0.99 + own * 0.2;
        if (s > most) {
          most = s;
          best =
              Optional.of(new CaseDesk.Complaint(circuit.id(), Optional.of(load.toString()), kind));
        }
      }
    }
    if (best.isEmpty() && kind == ComplaintKind.DRAINS_BATTERY) {
      return new CaseDesk.Complaint(alwaysOn(vehicle).id(), Optional.empty(), kind);
    }
    if (best.isEmpty()) {
      throw new Problem(
          "complaint",
          words,
          Phrases.inUse()
              .say(
                  "complaint.which",
                  vehicle.circuits().stream().map(Circuit::id).collect(Collectors.joining(", "))));
    }
    return best.get();
  }

  /** What people say, in English and in the language in use, with what they mean by it. */
  private static Map<String, ComplaintKind> kinds() {
    Map<String, ComplaintKind> kinds = new LinkedHashMap<>();
    for (Phrases phrases : List.of(new Phrases(Locale.ENGLISH), Phrases.inUse())) {
      for (ComplaintKind kind : KINDS) {
        for (String said : phrases.say("complaint.said." + kind).split(", ")) {
          kinds.putIfAbsent(said, kind);
        }
      }
    }
    return kinds;
  }

  /**
   * The circuit that stands for a flat battery, of which nobody knows whose doing it is: one that
   * is on with everything at rest, or else the first.
   */
  private static Circuit alwaysOn(Vehicle vehicle) throws Problem {
    return vehicle.circuits().stream()
        .filter(
            c ->
                c.on().entrySet().stream()
                    .allMatch(p -> vehicle.position(p.getKey(), Setting.REST).equals(p.getValue())))
        .findFirst()
        .or(() -> vehicle.circuits().stream().findFirst())
        .orElseThrow(
            () ->
                new Problem(
                    "complaint", vehicle.name(), Phrases.inUse().say("complaint.circuits")));
  }

  /** Share of the words asked for that the name has; the id itself counts in full. */
  private static double score(String text, String name, String id) {
    List<String> asked = new ArrayList<>();
    for (String w : text.trim().split(" ")) {
      if (w.length() > 1 && !List.of("the", "is", "are", "its", "my", "of", "a").contains(w)) {
        asked.add(w);
      }
    }
    if (asked.isEmpty()) {
      return 0;
    }
    if (String.join(" ", asked).equals(normal(id))) {
      return 2;
    }
    List<String> have = List.of(normal(name).split(" "));
    double hits = 0;
    for (String w : asked) {
      for (String h : have) {
        if (h.equals(w)) {
          hits += 1;
          break;
        }
        if (w.length() > 3 && h.length() > 3 && (h.startsWith(w) || w.startsWith(h))) {
          hits += 0.8;
          break;
        }
      }
    }
    return hits / asked.size() - 0.001 * have.size();
  }

  private static String normal(String text) {
    return text.toLowerCase(Locale.ROOT)
        .replaceAll("[^\\p{L}\\p{N}' ]", " ")
        .replaceAll("\\s+", " ")
        .trim();
  }
}
