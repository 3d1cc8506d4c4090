package loopwright.casework.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loopwright.casework.Problem;
import loopwright.casework.table.SpecRule.Entry;
import loopwright.casework.table.SpecRule.Need;
import loopwright.model.Estimate;
import loopwright.model.Language;
import loopwright.model.PartSpec;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.ShortName;

/** The values of what does the work. */
final class LoadRules {

  private LoadRules() {}

  static Rule watts() {
    Column c = Column.WATTS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                PartSpec.Lamp.class,
                Need.REQUIRED,
                l -> Said.spoken(l.watts(), Quantity.WATTS),
                (d, l, t) -> new PartSpec.Lamp(l.ratedVolts(), Words.amount(c, t, Quantity.WATTS))),
            new Entry<>(
                PartSpec.DualLamp.class,
                Need.REQUIRED,
                l ->
                    filament(l.first(), l.firstWatts())
                        + ", "
                        + filament(l.second(), l.secondWatts()),
                (d, l, t) -> filaments(l, t))));
  }

  private static String filament(String name, Estimate watts) {
    return name + " " + Said.spoken(watts, Quantity.WATTS);
  }

  private static PartSpec filaments(PartSpec.DualLamp lamp, String text) throws Problem {
    List<String> names = new ArrayList<>(List.of(lamp.first(), lamp.second()));
    List<Estimate> watts = new ArrayList<>();
    String[] pieces = text.contains("/") ? text.split("/") : text.split("[,;] ");
    if (pieces.length != 2) {
      throw Words.bad(Column.WATTS, text, Words.say("filaments"));
    }
    for (int i = 0; i < 2; i++) {
      String piece = pieces[i].strip();
      int space = piece.indexOf(' ');
      String first = space < 0 ? "" : piece.substring(0, space);
      boolean named =
          ShortName.fits(first)
              && !Character.isDigit(first.charAt(0))
              && Said.amount(piece, Quantity.WATTS).isEmpty();
      if (named) {
        names.set(i, first);
      }
      watts.add(Words.amount(Column.WATTS, named ? piece.substring(space) : piece, Quantity.WATTS));
    }
    return new PartSpec.DualLamp(
        names.get(0), watts.get(0), names.get(1), watts.get(1), lamp.ratedVolts());
  }

  static Rule amps() {
    Column c = Column.AMPS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                PartSpec.PlainLoad.class,
                Need.REQUIRED,
                p -> Said.spoken(p.amps(), Quantity.AMPS),
                (d, p, t) -> new PartSpec.PlainLoad(p.kind(), current(d, t))),
            new Entry<>(
                PartSpec.Motor.class,
                Need.REQUIRED,
                m -> Said.spoken(m.amps(), Quantity.AMPS),
                (d, m, t) -> new PartSpec.Motor(current(d, t), m.stallAmps())),
            new Entry<>(
                PartSpec.Led.class,
                Need.REQUIRED,
                l -> Said.spoken(l.amps(), Quantity.AMPS),
                (d, l, t) -> new PartSpec.Led(l.forwardVolts(), current(d, t)))));
  }

  /**
   * People know watts; what they are in amperes is told, not taken, since a spread comes with it.
   */
  private static Estimate current(Draft draft, String text) throws Problem {
    boolean watts =
        Said.amount(text, Quantity.AMPS).isEmpty() && Said.saysUnit(text, Quantity.WATTS);
    if (watts && Said.amount(text, Quantity.WATTS).isPresent()) {
      double power = Said.amount(text, Quantity.WATTS).orElseThrow().about();
      String amps =
          Language.marked(String.format(Locale.ROOT, "%.2g", power / draft.systemVolts()));
      throw Words.bad(
          Column.AMPS,
          text,
          Words.say("watts", Said.shown(power), Integer.toString(draft.systemVolts()), amps));
    }
    return Words.amount(Column.AMPS, text, Quantity.AMPS);
  }

  static Rule stallAmps() {
    Column c = Column.STALL_AMPS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                PartSpec.Motor.class,
                Need.OPTIONAL,
                m -> Words.spoken(m.stallAmps(), Quantity.AMPS),
                (d, m, t) -> new PartSpec.Motor(m.amps(), Words.maybe(c, t, Quantity.AMPS)))));
  }

  static Rule ratedVolts() {
    Column c = Column.RATED_VOLTS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                PartSpec.Lamp.class,
                Need.OPTIONAL,
                l -> Words.number(l.ratedVolts()),
                (d, l, t) ->
                    new PartSpec.Lamp(Words.maybeExactly(c, t, Quantity.VOLTS), l.watts())),
            new Entry<>(
                PartSpec.DualLamp.class,
                Need.OPTIONAL,
                l -> Words.number(l.ratedVolts()),
                (d, l, t) ->
                    new PartSpec.DualLamp(
                        l.first(),
                        l.firstWatts(),
                        l.second(),
                        l.secondWatts(),
                        Words.maybeExactly(c, t, Quantity.VOLTS)))));
  }

  static Rule forwardVolts() {
    Column c = Column.FORWARD_VOLTS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                PartSpec.Led.class,
                Need.OPTIONAL,
                l -> Words.spoken(l.forwardVolts(), Quantity.VOLTS),
                (d, l, t) -> new PartSpec.Led(Words.maybe(c, t, Quantity.VOLTS), l.amps())),
            new Entry<>(
                PartSpec.Diode.class,
                Need.OPTIONAL,
                l -> Words.spoken(l.forwardVolts(), Quantity.VOLTS),
                (d, l, t) -> new PartSpec.Diode(Words.maybe(c, t, Quantity.VOLTS)))));
  }
}
