package loopwright.knowledge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loopwright.model.PartKind;
import loopwright.model.Spread;
import loopwright.model.Typicals;

/**
 * Usual values of the trade, from a table in which every row names its source. Immutable.
 *
 * <p>Fuse resistance: the cold resistance of the published ratings, between them by a power law
 * (straight lines on logarithmic axes), beyond them by the slope of the nearest two; plus the
 * holder's clips.
 */
public final class TypicalValues implements Typicals {
  /** Quantity of the row with the spread of {@link #fuseOhms}. */
  public static final String FUSE_LINK = "linkOhms";

  /** Quantity of the row with the resistance of a fuse holder's clips. */
  public static final String FUSE_HOLDER = "holderOhms";

  /**
   * What a row is about.
   *
   * @param kind kind of part; empty for a general constant
   * @param quantity for instance {@code coilOhms}
   * @param systemVolts 6, 12 or 24; empty if it holds for all
   */
  public record Key(Optional<PartKind> kind, String quantity, Optional<Integer> systemVolts) {
    /** Rejects missing components. */
    public Key {
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(quantity, "quantity");
      Objects.requireNonNull(systemVolts, "systemVolts");
    }

    @Override
    public String toString() {
      return kind.map(PartKind::word).orElse("constant")
          + " "
          + quantity
          + systemVolts.map(v -> " at " + v + " V").orElse("");
    }
  }

  /**
   * One row.
   *
   * @param key what it is about
   * @param usual usual value with its limits, in the row's unit; empty where none is usual
   * @param relative share by which a stated value may be off, 0 to 1; empty where none is stated
   * @param unit unit, for instance {@code ohm}
   * @param source where it comes from
   * @param origin how: {@code FOUND}, {@code MEMORY}, {@code COMPUTED} or {@code COMMON PRACTICE}
   */
  public record Row(
      Key key,
      Optional<Spread> usual,
      Optional<Double> relative,
      String unit,
      String source,
      String origin) {
    /** Rejects shares outside 0 to 1 and rows without a source. */
    public Row {
      Objects.requireNonNull(key, "key");
      if (relative.isPresent() && !(relative.get() >= 0 && relative.get() < 1)) {
        throw new IllegalArgumentException(
            key + ": relative must be 0 to less than 1, not " + relative.get());
      }
      if (source.isBlank()) {
        throw new IllegalArgumentException(key + ": a row must name its source");
      }
    }
  }

  /**
   * Cold resistance of one rating of fuse, without its holder.
   *
   * @param amps rating in amperes
   * @param ohms resistance in ohms
   */
  public record FuseRow(double amps, double ohms) {
    /** Rejects values that are not above zero. */
    public FuseRow {
      if (!(amps > 0 && ohms > 0)) {
        throw new IllegalArgumentException(
            "fuse of " + amps + " A: amps and ohms must be above 0, ohms is " + ohms);
      }
    }
  }

  private final Map<Key, Row> rows = new HashMap<>();
  private final List<FuseRow> fuses;

  /**
   * Takes the rows of the tables.
   *
   * @throws IllegalArgumentException if two rows have the same key, or there are fewer than two
   *     ratings of fuse
   */
  public TypicalValues(List<Row> table, List<FuseRow> fuses) {
    for (Row row : table) {
      if (rows.putIfAbsent(row.key(), row) != null) {
        throw new IllegalArgumentException("usual values have two rows for " + row.key());
      }
    }
    if (fuses.size() < 2) {
      throw new IllegalArgumentException(
          "fuse resistances have " + fuses.size() + " ratings, must have at least 2");
    }
    this.fuses = new ArrayList<>(fuses);
    this.fuses.sort(Comparator.comparingDouble(FuseRow::amps));
  }

  /** Every row, for tables that show sources. */
  public List<Row> rows() {
    return rows.values().stream().sorted(Comparator.comparing(r -> r.key().toString())).toList();
  }

  @Override
  public Spread usual(PartKind kind, String quantity, int systemVolts) {
    Key key = new Key(Optional.of(kind), quantity, Optional.of(systemVolts));
    return find(key)
        .flatMap(Row::usual)
        .orElseThrow(() -> new IllegalArgumentException("no usual value for " + key));
  }

  @Override
  public double relative(PartKind kind, String quantity) {
    // The share does not depend on the system voltage; any of its rows will do.
    Key any = new Key(Optional.of(kind), quantity, Optional.empty());
    Key twelve = new Key(Optional.of(kind), quantity, Optional.of(12));
    return find(any)
        .or(() -> find(twelve))
        .flatMap(Row::relative)
        .orElseThrow(() -> new IllegalArgumentException("no usual spread for " + any));
  }

  @Override
  public Spread fuseOhms(double ratedAmps) {
    if (!(ratedAmps > 0)) {
      throw new IllegalArgumentException("fuse rating must be above 0 A, not " + ratedAmps);
    }
    int upper = 1;
    while (upper < fuses.size() - 1 && fuses.get(upper).amps() < ratedAmps) {
      upper++;
    }
    FuseRow a = fuses.get(upper - 1);
    FuseRow b = fuses.get(upper);
    double slope = Math.log(b.ohms() / a.ohms()) / Math.log(b.amps() / a.amps());
    double link = a.ohms() * Math.pow(ratedAmps / a.amps(), slope);
    Spread holder = usual(PartKind.FUSE, FUSE_HOLDER, 12);
    return Spread.around(link, relative(PartKind.FUSE, FUSE_LINK)).plus(holder);
  }

  @Override
  public Spread constant(String name) {
    return find(new Key(Optional.empty(), name, Optional.empty()))
        .flatMap(Row::usual)
        .orElseThrow(() -> new IllegalArgumentException("no constant " + name));
  }

  private Optional<Row> find(Key key) {
    Row row = rows.get(key);
    return row != null
        ? Optional.of(row)
        : Optional.ofNullable(rows.get(new Key(key.kind(), key.quantity(), Optional.empty())));
  }
}
