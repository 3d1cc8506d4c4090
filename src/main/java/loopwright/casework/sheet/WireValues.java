package loopwright.casework.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import loopwright.model.Access;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.TerminalRef;
import loopwright.model.WireSize;

/** The values of a row's wire: as the list says, else as the vehicle has them. */
final class WireValues {
  /** Length in metres of a wire that nobody measured: own judgement, wide on purpose. */
  private static final Estimate USUAL_LENGTH = Estimate.between(0.3, 2, 6);

  /** What people write where they don't know. */
  private static final Pattern UNKNOWN =
      Pattern.compile("|\\?+|-+|n/?a|tbd|unknown|not measured", Pattern.CASE_INSENSITIVE);

  private final Cells<WireColumn> cells;
  private final boolean usualLengths;
  private int unitless;
  private int guessed;

  WireValues(Cells<WireColumn> cells, Set<Leniency> leniency) {
    this.cells = cells;
    this.usualLengths = leniency.contains(Leniency.USUAL_LENGTHS);
  }

  /** The wire of a row; what is wrong with a value is noted, and a harmless one stands in. */
  Part wire(
      SheetText.Row row,
      String object,
      String id,
      TerminalRef from,
      TerminalRef to,
      Optional<Part> before) {
    Optional<PartSpec.Wire> old = before.map(p -> (PartSpec.Wire) p.spec());
    PartKind kind = kind(row, object, old);
    WireSize size = size(row, object, old);
    Estimate metres = length(row, object, old);
    Optional<Estimate> endOhms =
        kept(WireColumn.END_OHMS, old.flatMap(PartSpec.Wire::endOhms), () -> ohms(row, object));
    Optional<Double> apart =
        kept(
            WireColumn.APART,
            before.flatMap(Part::apartMinutes),
            () -> minutes(row, object, WireColumn.APART));
    Optional<Double> swap =
        kept(
            WireColumn.SWAP,
            before.flatMap(Part::swapMinutes),
            () -> minutes(row, object, WireColumn.SWAP));
    PartSpec.Wire wire =
        new PartSpec.Wire(
            kind,
            from,
            to,
            size,
            metres,
            endOhms,
            colour(row, old.map(PartSpec.Wire::colour)),
            words(row, WireColumn.LOOM, old.map(PartSpec.Wire::loom)));
    Map<String, Access> access = before.map(Part::access).orElse(Map.of());
    return new Part(
        id,
        words(row, WireColumn.NAME, before.map(Part::name)),
        words(row, WireColumn.LABEL, before.map(Part::label)),
        wire,
        access,
        apart,
        swap,
        before.map(Part::spare).orElse(Set.of()),
        words(row, WireColumn.WHERE, before.map(Part::where)),
        before.map(Part::note).orElse(""),
        before.map(Part::photos).orElse(List.of()));
  }

  private <T> Optional<T> kept(WireColumn column, Optional<T> old, Supplier<Optional<T>> read) {
    return cells.has(column) ? read.get() : old;
  }

  /** Words are kept as they stand, outer spaces in quotes included. */
  private String words(SheetText.Row row, WireColumn column, Optional<String> old) {
    return cells.has(column) ? cells.whole(row, column) : old.orElse("");
  }

  /** A colour written otherwise is the same colour. */
  private String colour(SheetText.Row row, Optional<String> old) {
    String listed = words(row, WireColumn.COLOUR, old);
    return old.filter(was -> ColourWords.same(was, listed)).orElse(listed);
  }

  private PartKind kind(SheetText.Row row, String object, Optional<PartSpec.Wire> old) {
    String cell = cells.text(row, WireColumn.KIND);
    for (PartKind kind : List.of(PartKind.WIRE, PartKind.STRAP)) {
      if (kind.word().equalsIgnoreCase(cell) || kind.said().equalsIgnoreCase(cell)) {
        return kind;
      }
    }
    if (!cell.isEmpty()) {
      cells.bad(
          row,
          WireColumn.KIND,
          object,
          SheetWords.say("kinds"),
          SheetWords.bad(WireColumn.KIND, cell, SheetWords.say("kinds")));
    }
    return old.map(PartSpec.Wire::kind).orElse(PartKind.WIRE);
  }

  private WireSize size(SheetText.Row row, String object, Optional<PartSpec.Wire> old) {
    String cell = cells.text(row, WireColumn.SIZE);
    Optional<WireSize> size = Said.size(cell, Units.sizeOfHeading(cells.heading(WireColumn.SIZE)));
    if (size.isEmpty() && cell.isEmpty() && old.isPresent()) {
      return old.get().size();
    }
    if (size.isEmpty()) {
      boolean number = cell.matches("\\d{1,2}");
      cells.bad(
          row,
          WireColumn.SIZE,
          object,
          SheetWords.say("sizes"),
          SheetWords.bad(WireColumn.SIZE, cell, SheetWords.say("sizes"))
              + (number ? SheetWords.say("size.either", cell) : ""));
    }
    return size.orElse(new WireSize(WireSize.Unit.MM2, 1));
  }

  private Estimate length(SheetText.Row row, String object, Optional<PartSpec.Wire> old) {
    String cell = cells.text(row, WireColumn.LENGTH);
    if (cell.isEmpty() && old.isPresent()) {
      return old.get().metres();
    }
    if (usualLengths && UNKNOWN.matcher(cell).matches()) {
      guessed++;
      return USUAL_LENGTH;
    }
    Optional<BigDecimal> unit = Units.metresOfHeading(cells.heading(WireColumn.LENGTH));
    Optional<Estimate> length = Said.listed(cell, Quantity.LENGTH, unit.orElse(BigDecimal.ONE));
    if (length.isEmpty()) {
      cells.bad(
          row,
          WireColumn.LENGTH,
          object,
          Quantity.LENGTH.accepted(),
          SheetWords.bad(WireColumn.LENGTH, cell, Quantity.LENGTH.accepted())
              + (Said.twoWays(cell, '.') ? SheetWords.say("two-ways") : ""));
    } else if (unit.isEmpty() && !Said.saysUnit(cell, Quantity.LENGTH)) {
      unitless++;
    }
    return length.orElse(Estimate.of(1));
  }

  private Optional<Estimate> ohms(SheetText.Row row, String object) {
    String cell = cells.text(row, WireColumn.END_OHMS);
    Optional<Estimate> ohms = Said.listed(cell, Quantity.OHMS, BigDecimal.ONE);
    if (ohms.isEmpty() && !cell.isEmpty()) {
      cells.bad(
          row,
          WireColumn.END_OHMS,
          object,
          SheetWords.say("ohms"),
          SheetWords.bad(WireColumn.END_OHMS, cell, SheetWords.say("ohms")));
    }
    return ohms;
  }

  private Optional<Double> minutes(SheetText.Row row, String object, WireColumn column) {
    String cell = cells.text(row, column);
    Optional<Double> minutes = Said.exactly(cell, Quantity.MINUTES);
    if (minutes.isEmpty() && !cell.isEmpty()) {
      cells.bad(
          row,
          column,
          object,
          SheetWords.say("minutes"),
          SheetWords.bad(column, cell, SheetWords.say("minutes")));
    }
    return minutes;
  }

  /** What was taken in a certain way, a sentence each. */
  List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    if (unitless > 0) {
      remarks.add(SheetWords.say("unitless", unitless));
    }
    if (guessed > 0) {
      remarks.add(SheetWords.say("guessed-lengths", guessed));
    }
    return remarks;
  }
}
