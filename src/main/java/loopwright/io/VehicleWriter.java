package loopwright.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import loopwright.model.Access;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Photo;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Writes a vehicle as text in a stable order, so that two versions of a file compare line by line.
 */
final class VehicleWriter {
  private static final JsonFactory FACTORY = new JsonFactory();

  private interface Body {
    void write(JsonGenerator out) throws IOException;
  }

  private VehicleWriter() {}

  static String text(Vehicle vehicle) {
    StringBuilder text = new StringBuilder("{\n");
    field(text, "format", out -> out.writeString(VehicleFile.FORMAT));
    field(text, "version", out -> out.writeNumber(VehicleFile.VERSION));
    field(text, "id", out -> out.writeString(vehicle.id()));
    field(text, "name", out -> out.writeString(vehicle.name()));
    field(text, "note", out -> out.writeString(vehicle.note()));
    field(text, "system_volts", out -> out.writeNumber(vehicle.systemVolts()));
    field(text, "grounded", out -> out.writeString(vehicle.grounded().word()));
    List<String> parts = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      parts.add(json(out -> part(out, part)));
    }
    lines(text, "parts", parts, ",\n");
    List<String> joins = new ArrayList<>();
    for (List<TerminalRef> join : vehicle.joins()) {
      joins.add(
          json(
              out -> {
                out.writeStartArray();
                for (TerminalRef ref : join) {
                  out.writeString(ref.toString());
                }
                out.writeEndArray();
              }));
    }
    lines(text, "joins", joins, ",\n");
    List<String> circuits = new ArrayList<>();
    for (Circuit circuit : vehicle.circuits()) {
      circuits.add(json(out -> circuit(out, circuit)));
    }
    lines(text, "circuits", circuits, "\n");
    return text.append("}\n").toString();
  }

  private static void field(StringBuilder text, String name, Body body) {
    text.append("  \"").append(name).append("\": ").append(json(body)).append(",\n");
  }

  private static void lines(StringBuilder text, String name, List<String> items, String end) {
    text.append("  \"").append(name).append("\": [");
    for (int i = 0; i < items.size(); i++) {
      text.append(i == 0 ? "\n    " : ",\n    ").append(items.get(i));
    }
    text.append(items.isEmpty() ? "]" : "\n  ]").append(end);
  }

  private static String json(Body body) {
    StringWriter text = new StringWriter();
    try (JsonGenerator out = FACTORY.createGenerator(text)) {
      body.write(out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  private static void part(JsonGenerator out, Part part) throws IOException {
    out.writeStartObject();
    out.writeStringField("id", part.id());
    out.writeStringField("kind", part.kind().word());
    text(out, "name", part.name());
    text(out, "label", part.label());
    spec(out, part.spec());
    text(out, "where", part.where());
    if (!part.access().isEmpty()) {
      out.writeObjectFieldStart("access");
      for (var entry : new TreeMap<>(part.access()).entrySet()) {
        out.writeFieldName(entry.getKey());
        access(out, entry.getValue());
      }
      out.writeEndObject();
    }
    number(out, "apart_minutes", part.apartMinutes());
    number(out, "swap_minutes", part.swapMinutes());
    if (!part.spare().isEmpty()) {
      names(out, "spare", new ArrayList<>(new TreeSet<>(part.spare())));
    }
    text(out, "note", part.note());
    if (!part.photos().isEmpty()) {
      out.writeArrayFieldStart("photos");
      for (Photo photo : part.photos()) {
        out.writeStartObject();
        out.writeStringField("file", photo.file());
        text(out, "at", photo.terminal().orElse(""));
        out.writeEndObject();
      }
      out.writeEndArray();
    }
    out.writeEndObject();
  }

  private static void access(JsonGenerator out, Access access) throws IOException {
    out.writeStartObject();
    out.writeFieldName("minutes");
    number(out, access.minutes());
    text(out, "how", access.how());
    if (!access.reachable()) {
      out.writeBooleanField("reachable", false);
    }
    out.writeEndObject();
  }

  private static void spec(JsonGenerator out, PartSpec spec) throws IOException {
    if (spec instanceof PartSpec.Battery b) {
      estimate(out, "volts", b.volts());
      estimate(out, "ohms", b.ohms());
      number(out, "amp_hours", b.ampHours());
      number(out, "charge_idle_amps", b.chargeIdleAmps());
      number(out, "charge_amps", b.chargeAmps());
    } else if (spec instanceof PartSpec.Wire w) {
      out.writeStringField("from", w.from().toString());
      out.writeStringField("to", w.to().toString());
      out.writeStringField("size", w.size().toString());
      estimate(out, "metres", Optional.of(w.metres()));
      estimate(out, "end_ohms", w.endOhms());
      text(out, "colour", w.colour());
      text(out, "loom", w.loom());
    } else if (spec instanceof PartSpec.Fuse f) {
      number(out, "amps", Optional.of(f.amps()));
      estimate(out, "ohms", f.ohms());
    } else if (spec instanceof PartSpec.Switch s) {
      switchSpec(out, s);
    } else if (spec instanceof PartSpec.Relay r) {
      if (r.changeover()) {
        out.writeBooleanField("changeover", true);
      }
      estimate(out, "coil_ohms", r.coilOhms());
      estimate(out, "pull_in_volts", r.pullInVolts());
      estimate(out, "drop_out_volts", r.dropOutVolts());
      estimate(out, "contact_ohms", r.contactOhms());
      out.writeStringField("suppression", r.suppression().word());
      number(out, "amps", r.amps());
    } else if (spec instanceof PartSpec.Lamp l) {
      estimate(out, "watts", Optional.of(l.watts()));
      number(out, "rated_volts", l.ratedVolts());
    } else if (spec instanceof PartSpec.DualLamp d) {
      out.writeArrayFieldStart("filaments");
      filament(out, d.first(), d.firstWatts());
      filament(out, d.second(), d.secondWatts());
      out.writeEndArray();
      number(out, "rated_volts", d.ratedVolts());
    } else if (spec instanceof PartSpec.Led l) {
      estimate(out, "forward_volts", l.forwardVolts());
      estimate(out, "amps", Optional.of(l.amps()));
    } else if (spec instanceof PartSpec.Diode d) {
      estimate(out, "forward_volts", d.forwardVolts());
    } else if (spec instanceof PartSpec.Motor m) {
      estimate(out, "amps", Optional.of(m.amps()));
      estimate(out, "stall_amps", m.stallAmps());
    } else if (spec instanceof PartSpec.PlainLoad l) {
      estimate(out, "amps", Optional.of(l.amps()));
    } else if (spec instanceof PartSpec.Sender s) {
      out.writeFieldName("ohms");
      spread(out, s.ohms());
    } else if (spec instanceof PartSpec.Driver d) {
      estimate(out, "ohms", d.ohms());
      text(out, "command", d.command());
    } else if (spec instanceof PartSpec.Connector c) {
      names(out, "cavities", c.cavities());
      estimate(out, "ohms", c.ohms());
    } else if (spec instanceof PartSpec.Splice s) {
      names(out, "legs", s.legs());
      estimate(out, "ohms", s.ohms());
    } else if (spec instanceof PartSpec.Ground g) {
      estimate(out, "ohms", g.ohms());
    }
  }

  private static void switchSpec(JsonGenerator out, PartSpec.Switch s) throws IOException {
    out.writeStringField("control", s.control().word());
    names(out, "positions", s.positions());
    names(out, "terminals", s.terminals());
    out.writeArrayFieldStart("contacts");
    for (PartSpec.SwitchContact contact : s.contacts()) {
      out.writeStartObject();
      names(out, "between", List.of(contact.a(), contact.b()));
      // In the order of the switch's own positions; unknown ones, which no check lets by, last.
      List<String> closedIn = new ArrayList<>(new TreeSet<>(contact.closedIn()));
      closedIn.sort(
          java.util.Comparator.comparingInt(
              p -> s.positions().contains(p) ? s.positions().indexOf(p) : Integer.MAX_VALUE));
      names(out, "closed_in", closedIn);
      out.writeEndObject();
    }
    out.writeEndArray();
    if (s.momentary()) {
      out.writeBooleanField("momentary", true);
    }
    estimate(out, "ohms", s.ohms());
    number(out, "amps", s.amps());
  }

  private static void filament(JsonGenerator out, String name, Estimate watts) throws IOException {
    out.writeStartObject();
    out.writeStringField("name", name);
    estimate(out, "watts", Optional.of(watts));
    out.writeEndObject();
  }

  private static void circuit(JsonGenerator out, Circuit circuit) throws IOException {
    out.writeStartObject();
    out.writeStringField("id", circuit.id());
    text(out, "name", circuit.name());
    names(out, "loads", circuit.loads().stream().map(LoadRef::toString).toList());
    if (!circuit.on().isEmpty()) {
      out.writeObjectFieldStart("on");
      for (var entry : new TreeMap<>(circuit.on()).entrySet()) {
        out.writeStringField(entry.getKey(), entry.getValue());
      }
      out.writeEndObject();
    }
    text(out, "note", circuit.note());
    out.writeEndObject();
  }

  private static void text(JsonGenerator out, String field, String value) throws IOException {
    if (!value.isEmpty()) {
      out.writeStringField(field, value);
    }
  }

  private static void names(JsonGenerator out, String field, List<String> names)
      throws IOException {
    out.writeArrayFieldStart(field);
    for (String name : names) {
      out.writeString(name);
    }
    out.writeEndArray();
  }

  private static void estimate(JsonGenerator out, String field, Optional<Estimate> estimate)
      throws IOException {
    if (estimate.isEmpty()) {
      return;
    }
    out.writeFieldName(field);
    if (estimate.get().limits().isEmpty()) {
      number(out, estimate.get().about());
    } else {
      Spread limits = estimate.get().limits().get();
      limits(out, estimate.get().about(), limits);
    }
  }

  private static void spread(JsonGenerator out, Spread spread) throws IOException {
    limits(out, spread.typical(), spread);
  }

  private static void limits(JsonGenerator out, double about, Spread limits) throws IOException {
    out.writeStartObject();
    out.writeFieldName("about");
    number(out, about);
    out.writeFieldName("low");
    number(out, limits.low());
    out.writeFieldName("high");
    number(out, limits.high());
    out.writeEndObject();
  }

  private static void number(JsonGenerator out, String field, Optional<Double> value)
      throws IOException {
    if (value.isPresent()) {
      out.writeFieldName(field);
      number(out, value.get());
    }
  }

  /**
   * Whole numbers without a decimal point; all others in the shortest form that reads back the
   * same.
   */
  private static void number(JsonGenerator out, double value) throws IOException {
    if (value == Math.rint(value) && Math.abs(value) < 1e15 && Double.compare(value, -0.0) != 0) {
      out.writeNumber((long) value);
    } else {
      out.writeNumber(value);
    }
  }
}
