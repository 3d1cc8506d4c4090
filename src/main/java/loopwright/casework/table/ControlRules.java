package loopwright.casework.table;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import loopwright.casework.Problem;
import loopwright.casework.table.SpecRule.Entry;
import loopwright.casework.table.SpecRule.Need;
import loopwright.model.PartSpec;
import loopwright.model.PartSpec.Relay;
import loopwright.model.PartSpec.Switch;
import loopwright.model.PartSpec.SwitchContact;
import loopwright.model.Quantity;

/** The values of switches and relays. */
final class ControlRules {
  private static final List<String> CONTACTS = List.of("make", "changeover");
  private static final List<String> YES_NO = List.of("yes", "no");

  private ControlRules() {}

  // Relays.

  private static Rule relay(Column column, SpecRule.Getter<Relay> get, SpecRule.Setter<Relay> set) {
    return new SpecRule(column, List.of(new Entry<>(Relay.class, Need.OPTIONAL, get, set)));
  }

  static Rule contacts() {
    return relay(
        Column.CONTACTS,
        r -> Words.shown(CONTACTS.get(r.changeover() ? 1 : 0)),
        (d, r, t) ->
            r.withChangeover(word(Column.CONTACTS, t, CONTACTS, w -> w).equals("changeover")));
  }

  static Rule coilOhms() {
    return relay(
        Column.COIL_OHMS,
        r -> Words.spoken(r.coilOhms(), Quantity.OHMS),
        (d, r, t) -> r.withCoilOhms(Words.maybe(Column.COIL_OHMS, t, Quantity.OHMS)));
  }

  static Rule pullInVolts() {
    return relay(
        Column.PULL_IN_VOLTS,
        r -> Words.spoken(r.pullInVolts(), Quantity.VOLTS),
        (d, r, t) -> r.withPullInVolts(Words.maybe(Column.PULL_IN_VOLTS, t, Quantity.VOLTS)));
  }

  static Rule dropOutVolts() {
    return relay(
        Column.DROP_OUT_VOLTS,
        r -> Words.spoken(r.dropOutVolts(), Quantity.VOLTS),
        (d, r, t) -> r.withDropOutVolts(Words.maybe(Column.DROP_OUT_VOLTS, t, Quantity.VOLTS)));
  }

  static Rule suppression() {
    return relay(
        Column.SUPPRESSION,
        r -> Words.shown(r.suppression().word()),
        (d, r, t) ->
            r.withSuppression(
                word(
                    Column.SUPPRESSION,
                    t,
                    List.of(PartSpec.Suppression.values()),
                    PartSpec.Suppression::word)));
  }

  // Both.

  static Rule contactAmps() {
    Column c = Column.CONTACT_AMPS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                Relay.class,
                Need.OPTIONAL,
                r -> Words.number(r.amps()),
                (d, r, t) -> r.withAmps(Words.maybeExactly(c, t, Quantity.AMPS))),
            new Entry<>(
                Switch.class,
                Need.OPTIONAL,
                s -> Words.number(s.amps()),
                (d, s, t) -> s.withAmps(Words.maybeExactly(c, t, Quantity.AMPS)))));
  }

  static Rule contactOhms() {
    Column c = Column.CONTACT_OHMS;
    return new SpecRule(
        c,
        List.of(
            new Entry<>(
                Relay.class,
                Need.OPTIONAL,
                r -> Words.spoken(r.contactOhms(), Quantity.OHMS),
                (d, r, t) -> r.withContactOhms(Words.maybe(c, t, Quantity.OHMS))),
            new Entry<>(
                Switch.class,
                Need.OPTIONAL,
                s -> Words.spoken(s.ohms(), Quantity.OHMS),
                (d, s, t) -> s.withOhms(Words.maybe(c, t, Quantity.OHMS)))));
  }

  /** One of some words; the first, which is the usual one, where nothing stands. */
  private static <T> T word(Column column, String text, List<T> all, Function<T, String> word)
      throws Problem {
    return text.isEmpty() ? all.get(0) : Words.word(column, text, all, word);
  }

  // Switches.

  private static Rule turned(
      Column column, SpecRule.Getter<Switch> get, SpecRule.Setter<Switch> set) {
    return new SpecRule(column, List.of(new Entry<>(Switch.class, Need.OPTIONAL, get, set)));
  }

  static Rule control() {
    return turned(
        Column.CONTROL,
        s -> Words.shown(s.control().word()),
        (d, s, t) ->
            s.withControl(
                word(
                    Column.CONTROL,
                    t,
                    List.of(PartSpec.Control.values()),
                    PartSpec.Control::word)));
  }

  static Rule momentary() {
    return turned(
        Column.MOMENTARY,
        s -> Words.shown(s.momentary() ? "yes" : "no"),
        (d, s, t) ->
            s.withMomentary(
                !t.isEmpty() && Words.word(Column.MOMENTARY, t, YES_NO, w -> w).equals("yes")));
  }

  static Rule positions() {
    return turned(
        Column.POSITIONS,
        s -> String.join(", ", s.positions()),
        (d, s, t) -> {
          List<String> positions = ValueRules.several(Column.POSITIONS, t, 2);
          List<SwitchContact> contacts = new ArrayList<>();
          for (SwitchContact contact : s.contacts()) {
            contacts.add(
                new SwitchContact(
                    contact.a(),
                    contact.b(),
                    renamed(contact.closedIn(), s.positions(), positions)));
          }
          return s.withPositions(positions).withContacts(contacts);
        });
  }

  /**
   * Positions under their new names where as many there are as there were; else those that are
   * still there, or all but the one at rest.
   */
  private static Set<String> renamed(Set<String> closed, List<String> before, List<String> now) {
    Set<String> renamed = new LinkedHashSet<>();
    if (before.size() == now.size()) {
      closed.forEach(p -> renamed.add(before.contains(p) ? now.get(before.indexOf(p)) : p));
      return renamed;
    }
    closed.stream().filter(now::contains).forEach(renamed::add);
    return renamed.isEmpty() ? new LinkedHashSet<>(now.subList(1, now.size())) : renamed;
  }

  static Rule terminals() {
    return turned(
        Column.TERMINALS,
        s -> String.join(", ", s.terminals()),
        (d, s, t) -> {
          List<String> terminals = ValueRules.several(Column.TERMINALS, t, 2);
          return s.withTerminals(terminals).withContacts(joined(s, terminals));
        });
  }

  /**
   * Contacts on the new names of the terminals where as many there are as there were; else those
   * whose terminals are still there, or one between the first two.
   */
  private static List<SwitchContact> joined(Switch s, List<String> now) {
    List<SwitchContact> contacts = new ArrayList<>();
    boolean renamed = now.size() == s.terminals().size();
    for (SwitchContact c : s.contacts()) {
      int a = s.terminals().indexOf(c.a());
      int b = s.terminals().indexOf(c.b());
      if (renamed && a >= 0 && b >= 0) {
        contacts.add(new SwitchContact(now.get(a), now.get(b), c.closedIn()));
      } else if (now.contains(c.a()) && now.contains(c.b())) {
        contacts.add(c);
      }
    }
    if (contacts.isEmpty()) {
      Set<String> closedIn = Set.copyOf(s.positions().subList(1, s.positions().size()));
      contacts.add(new SwitchContact(now.get(0), now.get(1), closedIn));
    }
    return contacts;
  }

  static Rule closed() {
    return turned(
        Column.CLOSED, ControlRules::closedText, (d, s, t) -> s.withContacts(closed(s, t)));
  }

  private static String closedText(Switch s) {
    List<String> places = new ArrayList<>(s.positions());
    s.contacts()
        .forEach(
            c ->
                new TreeSet<>(c.closedIn())
                    .stream().filter(p -> !places.contains(p)).forEach(places::add));
    List<String> all = new ArrayList<>();
    for (String position : places) {
      List<String> joined =
          s.contacts().stream()
              .filter(c -> c.closedIn().contains(position))
              .map(SwitchContact::role)
              .toList();
      if (!joined.isEmpty()) {
        all.add(position + ": " + String.join(", ", joined));
      }
    }
    return String.join("; ", all);
  }

  private static List<SwitchContact> closed(Switch s, String text) throws Problem {
    List<String> roles = new ArrayList<>();
    List<Set<String>> closedIn = new ArrayList<>();
    for (String piece : text.split(";")) {
      int colon = piece.indexOf(':');
      String position = colon < 0 ? "" : piece.substring(0, colon).strip();
      if (!s.positions().contains(position)) {
        throw Words.bad(
            Column.CLOSED,
            piece,
            Words.say("closed.positions", Words.say("closed"), Words.all(s.positions())));
      }
      for (String role : piece.substring(colon + 1).split(",")) {
        int at = roles.indexOf(role.strip());
        if (at < 0) {
          ends(s, role.strip());
          at = roles.size();
          roles.add(role.strip());
          closedIn.add(new LinkedHashSet<>());
        }
        closedIn.get(at).add(position);
      }
    }
    List<SwitchContact> contacts = new ArrayList<>();
    for (int i = 0; i < roles.size(); i++) {
      String[] ends = ends(s, roles.get(i));
      contacts.add(new SwitchContact(ends[0], ends[1], closedIn.get(i)));
    }
    return contacts;
  }

  /** The two terminals of {@code a-b}; a terminal's name may hold a hyphen itself. */
  private static String[] ends(Switch s, String role) throws Problem {
    for (int cut = role.indexOf('-'); cut > 0; cut = role.indexOf('-', cut + 1)) {
      String a = role.substring(0, cut).strip();
      String b = role.substring(cut + 1).strip();
      if (s.terminals().contains(a) && s.terminals().contains(b) && !a.equals(b)) {
        return new String[] {a, b};
      }
    }
    throw Words.bad(
        Column.CLOSED,
        role,
        Words.say("closed.terminals", Words.say("closed"), Words.all(s.terminals())));
  }
}
