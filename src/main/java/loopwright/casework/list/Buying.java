package loopwright.casework.list;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.Phrases;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.Units;
import loopwright.model.Vehicle;

/** Sums up what has to be bought. */
final class Buying {
  /** Greatest rating in amperes of usual blade fuses (ISO 8820-3 type C, from memory). */
  private static final double MOST_BLADE_FUSE = 40;

  /** Length of shrink sleeve on a wire's end in metres, and on a joint (common practice). */
  private static final double SLEEVE_METRES = 0.04;

  private final Vehicle vehicle;
  private final List<Cut> cuts;
  private final Phrases phrases;
  private final List<Buy> all = new ArrayList<>();

  Buying(Vehicle vehicle, List<Cut> cuts, Phrases phrases) {
    this.vehicle = vehicle;
    this.cuts = cuts;
    this.phrases = phrases;
  }

  List<Buy> all() {
    wires();
    straps();
    fuses();
    pieces(Buy.Group.RELAY, p -> p.spec() instanceof PartSpec.Relay r ? some(relay(r)) : none());
    pieces(
        Buy.Group.SWITCH, p -> p.spec() instanceof PartSpec.Switch s ? some(control(s)) : none());
    pieces(Buy.Group.LAMP, p -> lamp(p.spec()));
    pieces(Buy.Group.DIODE, p -> p.kind() == PartKind.DIODE ? some(say("diode")) : none());
    pieces(Buy.Group.LOAD, this::load);
    connectors();
    terminals();
    splices();
    pieces(Buy.Group.SPLICE, this::bar);
    pieces(Buy.Group.GROUND, p -> p.kind() == PartKind.GROUND ? some(say("ground")) : none());
    sleeves();
    pieces(Buy.Group.OTHER, this::other);
    return List.copyOf(all);
  }

  // Wire.

  private void wires() {
    Map<String, List<Cut>> byReel = new LinkedHashMap<>();
    cuts.stream()
        .filter(c -> c.part().kind() == PartKind.WIRE)
        .sorted(
            Comparator.comparingDouble((Cut c) -> -c.mm2())
                .thenComparing(c -> c.spec().size().toString())
                .thenComparing(c -> c.spec().colour()))
        .forEach(c -> byReel.computeIfAbsent(reel(c), r -> new ArrayList<>()).add(c));
    byReel.forEach(
        (reel, runs) ->
            all.add(
                new Buy(
                    Buy.Group.WIRE,
                    reel,
                    upTo(runs.stream().mapToDouble(Cut::metres).sum(), 1),
                    Buy.Unit.METRES,
                    ids(runs),
                    runs(runs))));
  }

  private String reel(Cut cut) {
    String colour = cut.spec().colour();
    return cut.spec().size().inBoth() + ", " + (colour.isEmpty() ? say("any-colour") : colour);
  }

  private String runs(List<Cut> runs) {
    double longest = runs.stream().mapToDouble(Cut::metres).max().orElseThrow();
    List<String> rough =
        runs.stream()
            .filter(Cut::byUpperEnd)
            .map(
                c ->
                    say(
                        "upper-end",
                        c.part().id(),
                        metres(c.spec().metres().about()),
                        metres(Allowance.reckoned(c.spec().metres()))))
            .toList();
    return (runs.size() == 1
            ? say("run")
            : say("runs", Integer.toString(runs.size()), metres(longest)))
        + (rough.isEmpty() ? "" : "; " + say("upper-ends", String.join(", ", rough)));
  }

  private void straps() {
    Map<String, List<Cut>> same = new LinkedHashMap<>();
    cuts.stream()
        .filter(c -> c.part().kind() == PartKind.STRAP)
        .forEach(
            c ->
                same.computeIfAbsent(
                        say("strap", c.spec().size().inBoth(), metres(c.metres())),
                        s -> new ArrayList<>())
                    .add(c));
    same.forEach((item, those) -> piece(Buy.Group.STRAP, item, those.size(), ids(those), ""));
  }

  // Parts.

  private void fuses() {
    Map<Double, List<String>> byAmps = new TreeMap<>();
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Fuse f) {
        byAmps.computeIfAbsent(f.amps(), a -> new ArrayList<>()).add(part.id());
      }
    }
    byAmps.forEach(
        (amps, ids) -> {
          boolean blade = amps <= MOST_BLADE_FUSE;
          int spare = blade ? Math.max(2, (ids.size() + 1) / 2) : 1;
          piece(
              Buy.Group.FUSE,
              say(blade ? "fuse" : "fuse.big", Said.shown(amps)),
              ids.size() + spare,
              ids,
              say("fuse.spare", Integer.toString(ids.size()), Integer.toString(spare)));
        });
    List<String> holders = byAmps.values().stream().flatMap(List::stream).toList();
    if (!holders.isEmpty()) {
      piece(Buy.Group.FUSE, say("fuse.holder"), holders.size(), holders, say("fuse.holder.note"));
    }
  }

  private String relay(PartSpec.Relay r) {
    String contacts =
        r.amps().map(a -> say("relay.amps", Said.shown(a))).orElse(say("relay.any-amps"));
    return say(
        r.changeover() ? "relay.changeover" : "relay",
        volts(),
        String.join(", ", r.terminals().stream().sorted().toList()),
        contacts,
        say("relay." + r.suppression().word()));
  }

  private String control(PartSpec.Switch s) {
    List<String> more = new ArrayList<>();
    more.add(say("switch.terminals", String.join(", ", s.terminals())));
    if (s.momentary()) {
      more.add(say("switch.momentary"));
    }
    s.amps().ifPresent(a -> more.add(say("switch.amps", Said.shown(a))));
    return say(
        "switch." + s.control().word(), String.join(" / ", s.positions()), String.join(", ", more));
  }

  private Optional<String> lamp(PartSpec spec) {
    if (spec instanceof PartSpec.Lamp l) {
      return some(say("lamp", rated(l.ratedVolts()), about(l.watts())));
    }
    if (spec instanceof PartSpec.DualLamp d) {
      String watts = about(d.firstWatts()) + "/" + about(d.secondWatts());
      return some(say("lamp.dual", rated(d.ratedVolts()), watts));
    }
    return spec instanceof PartSpec.Led l ? some(say("led", volts(), about(l.amps()))) : none();
  }

  private Optional<String> load(Part part) {
    if (part.spec() instanceof PartSpec.Motor m) {
      return some(say("load", named(part), volts(), about(m.amps())));
    }
    return part.spec() instanceof PartSpec.PlainLoad p
        ? some(say("load", named(part), volts(), about(p.amps())))
        : none();
  }

  private Optional<String> bar(Part part) {
    return part.spec() instanceof PartSpec.Splice s && !joint(part.id())
        ? some(say("bar", Integer.toString(s.legs().size())))
        : none();
  }

  private boolean joint(String splice) {
    return ends().anyMatch(e -> e.on().id().equals(splice) && e.fitting() == Fitting.JOINT);
  }

  private Optional<String> other(Part part) {
    return switch (part.kind()) {
      case BATTERY -> some(say("battery", volts()));
      case SENDER, DRIVER -> some(named(part));
      default -> none();
    };
  }

  private static String named(Part part) {
    return part.name().isEmpty() ? part.kind().said() : part.name();
  }

  private void connectors() {
    Map<Integer, List<String>> bySize = new TreeMap<>();
    Map<String, Long> wired =
        ends()
            .filter(e -> e.on().kind() == PartKind.CONNECTOR)
            .map(e -> e.at().toString())
            .distinct()
            .collect(
                Collectors.groupingBy(
                    at -> at.substring(0, at.indexOf('.')), Collectors.counting()));
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Connector c) {
        bySize.computeIfAbsent(c.cavities().size(), n -> new ArrayList<>()).add(part.id());
      }
    }
    bySize.forEach(
        (size, ids) -> {
          long free =
              2L * size * ids.size() - ids.stream().mapToLong(i -> wired.getOrDefault(i, 0L)).sum();
          piece(
              Buy.Group.CONNECTOR,
              say("connector", Integer.toString(size)),
              ids.size(),
              ids,
              free == 0 ? "" : say("connector.free", Long.toString(free)));
        });
  }

  // What goes on the wires' ends.

  private void terminals() {
    record Kind(Fitting fitting, String place, double order, String range) {}
    Map<Kind, List<Cut.End>> kinds =
        new TreeMap<>(
            Comparator.comparing(Kind::fitting)
                .thenComparing(Kind::place)
                .thenComparingDouble(Kind::order)
                .thenComparing(Kind::range));
    for (Cut cut : cuts) {
      Barrel barrel = Barrel.of(cut.spec().size());
      for (Cut.End end : List.of(cut.from(), cut.to())) {
        if (end.fitting() != Fitting.JOINT && end.fitting() != Fitting.HOLDER) {
          kinds
              .computeIfAbsent(
                  new Kind(end.fitting(), place(end), barrel.order(), barrel.words()),
                  k -> new ArrayList<>())
              .add(end);
        }
      }
    }
    kinds.forEach(
        (kind, ends) ->
            piece(
                Buy.Group.TERMINAL,
                say("terminal." + kind.fitting().word(), kind.range(), kind.place()),
                ends.size(),
                ends.stream().map(e -> e.on().id()).distinct().sorted().toList(),
                note(kind.fitting(), ends)));
  }

  /** For rings, what they lie on: that decides the hole. */
  private String place(Cut.End end) {
    if (end.fitting() != Fitting.RING) {
      return "";
    }
    return switch (end.on().kind()) {
      case BATTERY -> say("ring.battery");
      case GROUND -> say("ring.ground");
      case BODY -> say("ring.body");
      default -> say("ring.part");
    };
  }

  private String note(Fitting fitting, List<Cut.End> ends) {
    if (fitting == Fitting.RING) {
      Map<String, Long> each =
          ends.stream()
              .collect(
                  Collectors.groupingBy(
                      e -> e.at().toString(), TreeMap::new, Collectors.counting()));
      return each.entrySet().stream()
          .map(e -> say("each", e.getKey(), Long.toString(e.getValue())))
          .collect(Collectors.joining(", "));
    }
    boolean housed = fitting == Fitting.SOCKET || fitting == Fitting.PIN;
    List<String> shared =
        ends.stream()
            .filter(e -> e.wires() > 1)
            .map(e -> e.at().toString())
            .distinct()
            .sorted()
            .toList();
    return shared.isEmpty()
        ? ""
        : say(housed ? "contact.shared" : "terminal.shared", String.join(", ", shared));
  }

  private void splices() {
    record Join(int wires, double order, String range) {}
    Map<String, List<Cut>> bySplice = new TreeMap<>();
    for (Cut cut : cuts) {
      for (Cut.End end : List.of(cut.from(), cut.to())) {
        if (end.on().kind() == PartKind.SPLICE && end.fitting() == Fitting.JOINT) {
          bySplice.computeIfAbsent(end.on().id(), s -> new ArrayList<>()).add(cut);
        }
      }
    }
    Map<Join, List<String>> joins =
        new TreeMap<>(
            Comparator.comparingInt(Join::wires)
                .thenComparingDouble(Join::order)
                .thenComparing(Join::range));
    bySplice.forEach(
        (id, wires) -> {
          Barrel thickest =
              wires.stream()
                  .map(c -> Barrel.of(c.spec().size()))
                  .max(Comparator.comparingDouble(Barrel::order))
                  .orElseThrow();
          joins
              .computeIfAbsent(
                  new Join(wires.size(), thickest.order(), thickest.words()),
                  j -> new ArrayList<>())
              .add(id);
        });
    joins.forEach(
        (join, ids) ->
            piece(
                Buy.Group.SPLICE,
                say("splice", Integer.toString(join.wires()), join.range()),
                ids.size(),
                ids,
                ""));
  }

  private void sleeves() {
    Map<Double, Integer> pieces = new TreeMap<>();
    for (Cut cut : cuts) {
      for (Cut.End end : List.of(cut.from(), cut.to())) {
        switch (end.fitting()) {
          // The housing or the insulated receptacle guards the others.
          case RING, JOINT, HOLDER -> pieces.merge(Insulated.sleeve(cut.mm2()), 1, Integer::sum);
          case BLADE, WIDE_BLADE, SOCKET, PIN -> {}
        }
      }
    }
    pieces.forEach(
        (diameter, count) ->
            all.add(
                new Buy(
                    Buy.Group.SLEEVE,
                    say("sleeve", Said.shown(diameter)),
                    upTo(count * SLEEVE_METRES, 1),
                    Buy.Unit.METRES,
                    List.of(),
                    say(
                        "sleeve.pieces",
                        Integer.toString(count),
                        Long.toString(Math.round(SLEEVE_METRES * 1000))))));
  }

  private Stream<Cut.End> ends() {
    return cuts.stream().flatMap(c -> Stream.of(c.from(), c.to()));
  }

  // Lines.

  /** One line for all parts that are called the same. */
  private void pieces(Buy.Group group, Function<Part, Optional<String>> item) {
    Map<String, List<String>> same = new LinkedHashMap<>();
    for (Part part : vehicle.parts()) {
      item.apply(part)
          .ifPresent(i -> same.computeIfAbsent(i, x -> new ArrayList<>()).add(part.id()));
    }
    same.forEach((what, ids) -> piece(group, what, ids.size(), ids, ""));
  }

  private void piece(Buy.Group group, String item, int count, List<String> parts, String note) {
    all.add(new Buy(group, item, count, Buy.Unit.PIECES, parts, note));
  }

  private static List<String> ids(List<Cut> cuts) {
    return cuts.stream().map(c -> c.part().id()).toList();
  }

  private static Optional<String> some(String text) {
    return Optional.of(text);
  }

  private static Optional<String> none() {
    return Optional.empty();
  }

  private String say(String key, Object... args) {
    return phrases.say("list." + key, args);
  }

  private String volts() {
    return Integer.toString(vehicle.systemVolts());
  }

  private String rated(Optional<Double> volts) {
    return volts.map(Said::number).orElse(volts());
  }

  private static String about(Estimate estimate) {
    return Said.shown(estimate.about());
  }

  static String metres(double metres) {
    return Units.inUse().length(metres, 2);
  }

  private static double upTo(double value, int places) {
    // Sums of centimetres in binary may lie a hair above what they are.
    return BigDecimal.valueOf(value)
        .setScale(6, RoundingMode.HALF_UP)
        .setScale(places, RoundingMode.CEILING)
        .doubleValue();
  }
}
