package loopwright.casework.list;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.Phrases;
import loopwright.casework.list.ListTable.Column;
import loopwright.casework.list.ListTable.Side;
import loopwright.model.PartSpec;
import loopwright.model.Units;
import loopwright.model.Vehicle;

/** The making list in words, table by table. */
public final class ListTables {
  private final MakingList making;
  private final Phrases phrases;

  /** Tables of a making list. */
  public ListTables(MakingList making, Phrases phrases) {
    this.making = making;
    this.phrases = phrases;
  }

  /** What to buy. */
  public ListTable buying() {
    List<List<String>> rows = new ArrayList<>();
    for (Buy buy : making.buying()) {
      rows.add(
          List.of(
              say("group." + buy.group().word()),
              buy.item(),
              quantity(buy),
              buy.unit() == Buy.Unit.METRES ? Units.inUse().lengthUnit() : say("unit.pieces"),
              String.join(" ", buy.parts()),
              buy.note()));
    }
    return new ListTable(
        say("buying"),
        List.of(allowance(), say("buying.usual")),
        List.of(
            column("group", 1.2),
            column("item", 4.2),
            right("quantity", 0.9),
            column("unit", 0.8),
            column("for", 2.6),
            column("note", 3.2)),
        rows);
  }

  /** Every wire with its length to cut, its ends and what goes on them. */
  public ListTable cutting() {
    List<List<String>> rows = new ArrayList<>();
    for (Cut cut : making.cuts()) {
      PartSpec.Wire spec = cut.spec();
      rows.add(
          List.of(
              cut.part().id(),
              spec.colour(),
              Units.inUse().size(spec.size()),
              number(cut.metres()) + (cut.byUpperEnd() ? " *" : ""),
              cut.from().at().toString(),
              cut.from().on().label(),
              end(cut, cut.from()),
              cut.to().at().toString(),
              cut.to().on().label(),
              end(cut, cut.to()),
              spec.loom()));
    }
    return new ListTable(
        say("cutting"),
        List.of(allowance(), say("cutting.strip")),
        List.of(
            column("wire", 0.9),
            column("colour", 1.4),
            column("size", 1.2),
            right("cut", 0.9),
            column("from", 1.6),
            column("from-label", 1.3),
            column("from-end", 1.9),
            column("to", 1.6),
            column("to-label", 1.3),
            column("to-end", 1.9),
            column("loom", 1.5)),
        rows);
  }

  private String end(Cut cut, Cut.End end) {
    return say(
        end.wires() > 1 ? "end.shared" : "end",
        say("fitting." + end.fitting().word()),
        Integer.toString(end.fitting().stripMillimetres(cut.mm2())),
        Integer.toString(end.wires()));
  }

  /** The looms with their wires. */
  public ListTable looms() {
    List<List<String>> rows = new ArrayList<>();
    for (MakingList.Loom loom : making.looms()) {
      rows.add(
          List.of(
              loom.name(),
              Integer.toString(loom.cuts().size()),
              number(loom.metres()),
              Long.toString((long) Math.ceil(loom.millimetres() - 1e-9)),
              loom.cuts().stream().map(c -> c.part().id()).collect(Collectors.joining(" "))));
    }
    List<String> notes = new ArrayList<>(List.of(say("looms.bundle")));
    if (!making.loose().isEmpty()) {
      notes.add(
          say(
              "looms.loose",
              making.loose().stream().map(c -> c.part().id()).collect(Collectors.joining(" "))));
    }
    return new ListTable(
        say("looms"),
        notes,
        List.of(
            column("loom", 2),
            right("wires", 0.8),
            right("longest", 1),
            right("bundle", 1.2),
            column("wires-in", 6)),
        rows);
  }

  /** The labels as rows, for a label printer's program. */
  public static ListTable labels(Vehicle vehicle, Phrases phrases) {
    List<List<String>> rows = new ArrayList<>();
    Label.ofWires(vehicle).forEach(l -> rows.add(row(l, phrases.say("list.label.wire"))));
    Label.ofParts(vehicle).forEach(l -> rows.add(row(l, phrases.say("list.label.part"))));
    return new ListTable(
        phrases.say("list.labels"),
        List.of(),
        Stream.of("what", "head", "here", "far")
            .map(c -> new Column(phrases.say("list.column." + c), 1, Side.LEFT))
            .toList(),
        rows);
  }

  private static List<String> row(Label label, String what) {
    return List.of(what, label.head(), label.here(), label.far());
  }

  private String allowance() {
    return say(
        "allowance",
        Long.toString(Math.round(making.allowance().share() * 100)),
        Units.inUse().length(making.allowance().metresAnEnd(), 2));
  }

  private Column column(String key, double share) {
    return new Column(heading(key), share, Side.LEFT);
  }

  private Column right(String key, double share) {
    return new Column(heading(key), share, Side.RIGHT);
  }

  /** A heading; those of lengths name their unit. */
  private String heading(String key) {
    return say("column." + key, Units.inUse().lengthUnit());
  }

  private static String quantity(Buy buy) {
    return buy.unit() == Buy.Unit.PIECES
        ? Long.toString(Math.round(buy.quantity()))
        : Units.inUse().bareLength(buy.quantity(), 1);
  }

  private static String number(double metres) {
    return Units.inUse().bareLength(metres, 2);
  }

  private String say(String key, Object... args) {
    return phrases.say("list." + key, args);
  }
}
