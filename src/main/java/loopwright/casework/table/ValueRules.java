package loopwright.casework.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import loopwright.casework.Problem;
import loopwright.casework.table.SpecRule.Entry;
import loopwright.casework.table.SpecRule.Need;
import loopwright.model.Estimate;
import loopwright.model.PartSpec;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.Spread;

/** Values that several kinds of parts have. */
final class ValueRules {
  private ValueRules() {}

  static Rule fuseAmps() {
    Column c = Column.AMPS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                PartSpec.Fuse.class,
                Need.REQUIRED,
                f -> Said.shown(f.amps()),
                (d, f, t) -> new PartSpec.Fuse(Words.exactly(c, t, Quantity.AMPS), f.ohms()))));
  }

  private static Rule battery(
      Column column, SpecRule.Getter<PartSpec.Battery> get, SpecRule.Setter<PartSpec.Battery> set) {
    return new SpecRule(
        column, List.of(new Entry<>(PartSpec.Battery.class, Need.OPTIONAL, get, set)));
  }

  static Rule volts() {
    return battery(
        Column.VOLTS,
        b -> Words.spoken(b.volts(), Quantity.VOLTS),
        (d, b, t) -> b.withVolts(Words.maybe(Column.VOLTS, t, Quantity.VOLTS)));
  }

  static Rule ampHours() {
    return battery(
        Column.AMP_HOURS,
        b -> Words.number(b.ampHours()),
        (d, b, t) -> {
          String bare = t.replaceFirst("(?i) *ah$", "");
          return b.withAmpHours(Words.maybeExactly(Column.AMP_HOURS, bare, Quantity.AMPS));
        });
  }

  static Rule chargeIdleAmps() {
    return battery(
        Column.CHARGE_IDLE_AMPS,
        b -> Words.number(b.chargeIdleAmps()),
        (d, b, t) ->
            b.withChargeIdleAmps(Words.maybeExactly(Column.CHARGE_IDLE_AMPS, t, Quantity.AMPS)));
  }

  static Rule chargeAmps() {
    return battery(
        Column.CHARGE_AMPS,
        b -> Words.number(b.chargeAmps()),
        (d, b, t) -> b.withChargeAmps(Words.maybeExactly(Column.CHARGE_AMPS, t, Quantity.AMPS)));
  }

  static Rule command() {
    return new SpecRule(
        Column.COMMAND,
        List.of(
            new Entry<>(
                PartSpec.Driver.class,
                Need.OPTIONAL,
                PartSpec.Driver::command,
                (d, s, t) -> new PartSpec.Driver(s.ohms(), t))));
  }

  private interface OhmsSetter<S> {
    PartSpec set(S spec, Optional<Estimate> ohms);
  }

  private interface OhmsGetter<S> {
    Optional<Estimate> get(S spec);
  }

  private static <S extends PartSpec> Entry<S> ohms(
      Class<S> type, OhmsGetter<S> get, OhmsSetter<S> set) {
    return new Entry<>(
        type,
        Need.OPTIONAL,
        s -> Words.spoken(get.get(s), Quantity.OHMS),
        (d, s, t) -> set.set(s, Words.maybe(Column.OHMS, t, Quantity.OHMS)));
  }

  static Rule ohms() {
    return new SpecRule(
        Column.OHMS,
        List.of(
            ohms(PartSpec.Battery.class, PartSpec.Battery::ohms, PartSpec.Battery::withOhms),
            ohms(
                PartSpec.Fuse.class, PartSpec.Fuse::ohms, (f, o) -> new PartSpec.Fuse(f.amps(), o)),
            ohms(
                PartSpec.Driver.class,
                PartSpec.Driver::ohms,
                (x, o) -> new PartSpec.Driver(o, x.command())),
            ohms(
                PartSpec.Connector.class,
                PartSpec.Connector::ohms,
                (x, o) -> new PartSpec.Connector(x.cavities(), o)),
            ohms(
                PartSpec.Splice.class,
                PartSpec.Splice::ohms,
                (x, o) -> new PartSpec.Splice(x.legs(), o)),
            ohms(PartSpec.Ground.class, PartSpec.Ground::ohms, (g, o) -> new PartSpec.Ground(o)),
            new Entry<>(
                PartSpec.Sender.class,
                Need.REQUIRED,
                s ->
                    Said.spoken(
                        new Estimate(s.ohms().typical(), Optional.of(s.ohms())), Quantity.OHMS),
                (d, s, t) -> new PartSpec.Sender(travel(t)))));
  }

  private static Spread travel(String text) throws Problem {
    return Words.amount(Column.OHMS, text, Quantity.OHMS)
        .limits()
        .orElseThrow(() -> Words.bad(Column.OHMS, text, Words.say("travel")));
  }

  /** The cavities of a connector or the legs of a splice. */
  static Rule terminals() {
    Column c = Column.TERMINALS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                PartSpec.Connector.class,
                Need.REQUIRED,
                x -> String.join(", ", x.cavities()),
                (d, x, t) -> new PartSpec.Connector(several(c, t, 1), x.ohms())),
            new Entry<>(
                PartSpec.Splice.class,
                Need.REQUIRED,
                x -> String.join(", ", x.legs()),
                (d, x, t) -> new PartSpec.Splice(several(c, t, 2), x.ohms()))));
  }

  /** Different names; {@code 1-12} stands for 1 to 12. */
  static List<String> several(Column column, String text, int least) throws Problem {
    List<String> names = new ArrayList<>();
    for (String name :
        Words.names(column, text.replaceAll("(\\d) *(?:-|to|bis) *(\\d)", "$1-$2"))) {
      if (name.matches("\\d{1,3}-\\d{1,3}")) {
        int from = Integer.parseInt(name.substring(0, name.indexOf('-')));
        int to = Integer.parseInt(name.substring(name.indexOf('-') + 1));
        IntStream.rangeClosed(from, to).mapToObj(Integer::toString).forEach(names::add);
      } else {
        names.add(name);
      }
    }
    if (names.size() < least || names.stream().distinct().count() < names.size()) {
      throw Words.bad(column, text, Words.say("several", Integer.toString(least)));
    }
    return names;
  }
}
