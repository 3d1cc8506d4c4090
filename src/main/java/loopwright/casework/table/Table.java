package loopwright.casework.table;

import static loopwright.casework.table.Column.AMPS;
import static loopwright.casework.table.Column.CLOSED;
import static loopwright.casework.table.Column.COIL_OHMS;
import static loopwright.casework.table.Column.COLOUR;
import static loopwright.casework.table.Column.COMMAND;
import static loopwright.casework.table.Column.CONTACTS;
import static loopwright.casework.table.Column.CONTACT_AMPS;
import static loopwright.casework.table.Column.CONTACT_OHMS;
import static loopwright.casework.table.Column.CONTROL;
import static loopwright.casework.table.Column.DROP_OUT_VOLTS;
import static loopwright.casework.table.Column.FORWARD_VOLTS;
import static loopwright.casework.table.Column.FREE;
import static loopwright.casework.table.Column.FROM;
import static loopwright.casework.table.Column.KIND;
import static loopwright.casework.table.Column.LABEL;
import static loopwright.casework.table.Column.LOOM;
import static loopwright.casework.table.Column.METRES;
import static loopwright.casework.table.Column.MOMENTARY;
import static loopwright.casework.table.Column.NAME;
import static loopwright.casework.table.Column.NOTE;
import static loopwright.casework.table.Column.OHMS;
import static loopwright.casework.table.Column.ON;
import static loopwright.casework.table.Column.POSITIONS;
import static loopwright.casework.table.Column.PULL_IN_VOLTS;
import static loopwright.casework.table.Column.RATED_VOLTS;
import static loopwright.casework.table.Column.SIZE;
import static loopwright.casework.table.Column.STALL_AMPS;
import static loopwright.casework.table.Column.SUPPRESSION;
import static loopwright.casework.table.Column.TERMINALS;
import static loopwright.casework.table.Column.TO;
import static loopwright.casework.table.Column.TOUCHES;
import static loopwright.casework.table.Column.VOLTS;
import static loopwright.casework.table.Column.WATTS;
import static loopwright.casework.table.Column.WHERE;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.model.Part;
import loopwright.model.PartKind;

/** The tables a vehicle is edited in: one row a part, or a circuit. */
public enum Table {
  LOADS(
      "L",
      PartKind.LAMP,
      PartKind.DUAL_LAMP,
      PartKind.LED,
      PartKind.MOTOR,
      PartKind.HEATER,
      PartKind.SOLENOID,
      PartKind.HORN,
      PartKind.ELECTRONICS) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(WATTS, LoadRules.watts());
      rules.put(AMPS, LoadRules.amps());
      common(rules);
      rules.put(RATED_VOLTS, LoadRules.ratedVolts());
      rules.put(STALL_AMPS, LoadRules.stallAmps());
      rules.put(FORWARD_VOLTS, LoadRules.forwardVolts());
      rules.put(TOUCHES, PartRules.touches(Optional.empty()));
    }
  },
  FUSES("F", PartKind.FUSE) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(AMPS, ValueRules.fuseAmps());
      common(rules);
      rules.put(TOUCHES, PartRules.touches(Optional.of("feed")));
      rules.put(OHMS, ValueRules.ohms());
    }
  },
  RELAYS("K", PartKind.RELAY) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(CONTACTS, ControlRules.contacts());
      rules.put(COIL_OHMS, ControlRules.coilOhms());
      rules.put(CONTACT_AMPS, ControlRules.contactAmps());
      rules.put(SUPPRESSION, ControlRules.suppression());
      common(rules);
      rules.put(TOUCHES, PartRules.touches(Optional.empty()));
      rules.put(PULL_IN_VOLTS, ControlRules.pullInVolts());
      rules.put(DROP_OUT_VOLTS, ControlRules.dropOutVolts());
      rules.put(CONTACT_OHMS, ControlRules.contactOhms());
    }
  },
  SWITCHES("S", PartKind.SWITCH) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(CONTROL, ControlRules.control());
      rules.put(POSITIONS, ControlRules.positions());
      rules.put(TERMINALS, ControlRules.terminals());
      rules.put(CLOSED, ControlRules.closed());
      rules.put(MOMENTARY, ControlRules.momentary());
      rules.put(CONTACT_AMPS, ControlRules.contactAmps());
      common(rules);
      rules.put(TOUCHES, PartRules.touches(Optional.empty()));
      rules.put(CONTACT_OHMS, ControlRules.contactOhms());
    }
  },
  WIRES("W", PartKind.WIRE, PartKind.STRAP) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(FROM, WireRules.from());
      rules.put(TO, WireRules.to());
      rules.put(SIZE, WireRules.size());
      rules.put(METRES, WireRules.metres());
      rules.put(COLOUR, WireRules.colour());
      rules.put(LOOM, WireRules.loom());
      rules.put(LABEL, labelRule());
      rules.put(NAME, nameRule());
      rules.put(KIND, PartRules.kind(kinds()));
      rules.put(WHERE, whereRule());
      rules.put(OHMS, WireRules.endOhms());
    }
  },
  GROUNDS("G", PartKind.GROUND) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(TOUCHES, PartRules.touches(Optional.of("metal")));
      common(rules);
      rules.put(OHMS, ValueRules.ohms());
    }
  },
  JOINTS("X", PartKind.CONNECTOR, PartKind.SPLICE) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(TERMINALS, ValueRules.terminals());
      common(rules);
      rules.put(TOUCHES, PartRules.touches(Optional.empty()));
      rules.put(OHMS, ValueRules.ohms());
    }
  },
  CIRCUITS("C") {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(NAME, CircuitRules.name());
      rules.put(Column.LOADS, CircuitRules.loads());
      rules.put(ON, CircuitRules.on());
      rules.put(NOTE, CircuitRules.note());
    }
  },
  SUPPLY("BATT", PartKind.BATTERY, PartKind.BODY) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(VOLTS, ValueRules.volts());
      rules.put(OHMS, ValueRules.ohms());
      rules.put(Column.AMP_HOURS, ValueRules.ampHours());
      rules.put(Column.CHARGE_IDLE_AMPS, ValueRules.chargeIdleAmps());
      rules.put(Column.CHARGE_AMPS, ValueRules.chargeAmps());
      common(rules);
      rules.put(TOUCHES, PartRules.touches(Optional.empty()));
    }
  },
  OTHERS("D", PartKind.DIODE, PartKind.SENDER, PartKind.DRIVER) {
    @Override
    void fill(Map<Column, Rule> rules) {
      rules.put(FORWARD_VOLTS, LoadRules.forwardVolts());
      rules.put(OHMS, ValueRules.ohms());
      rules.put(COMMAND, ValueRules.command());
      common(rules);
      rules.put(TOUCHES, PartRules.touches(Optional.empty()));
    }
  };

  private final String letters;
  private final List<PartKind> kinds;
  private final Map<Column, Rule> rules = new LinkedHashMap<>();

  Table(String letters, PartKind... kinds) {
    this.letters = letters;
    this.kinds = List.of(kinds);
  }

  static {
    for (Table table : values()) {
      if (table != CIRCUITS && table != WIRES) {
        table.rules.put(NAME, nameRule());
        if (table.kinds.size() > 1) {
          table.rules.put(KIND, PartRules.kind(table.kinds));
        }
      }
      table.fill(table.rules);
    }
  }

  /** Adds the columns, in the order in which they stand. */
  abstract void fill(Map<Column, Rule> rules);

  private static Rule nameRule() {
    return PartRules.words(NAME, Part::name, Part::withName);
  }

  private static Rule labelRule() {
    return PartRules.words(LABEL, Part::label, Part::withLabel);
  }

  private static Rule whereRule() {
    return PartRules.words(WHERE, Part::where, Part::withWhere);
  }

  private static void common(Map<Column, Rule> rules) {
    rules.put(LABEL, labelRule());
    rules.put(WHERE, whereRule());
    rules.put(FREE, PartRules.free());
  }

  /** The table a kind of part stands in. */
  public static Table of(PartKind kind) {
    return Arrays.stream(values()).filter(t -> t.kinds.contains(kind)).findFirst().orElseThrow();
  }

  /** The kinds of part that stand in it; none for circuits. */
  public List<PartKind> kinds() {
    return kinds;
  }

  /** Its columns from left to right; the first is {@link Column#ID}. */
  public List<Column> columns() {
    List<Column> columns = new ArrayList<>(List.of(Column.ID));
    columns.addAll(rules.keySet());
    return columns;
  }

  /** What the ids of its rows usually begin with. */
  String letters() {
    return letters;
  }

  Rule rule(Column column) {
    return rules.get(column);
  }
}
