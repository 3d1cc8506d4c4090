package loopwright.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.meter.MeterSpec;
import loopwright.model.Spread;

/** Reads meter descriptions: JSON, format {@code loopwright-meter}, version 1. */
final class MeterFile {
  static final String FORMAT = "loopwright-meter";

  /** Greatest number taken, in any unit: far more than any meter shows. */
  static final double MOST = 1e12;

  private MeterFile() {}

  static Optional<MeterSpec> read(JsonValue root, DefectList defects) {
    return ObjectReader.of(root, "", FileWords.say("meter"), defects)
        .flatMap(in -> meter(in, defects));
  }

  private static Optional<MeterSpec> meter(ObjectReader raw, DefectList defects) {
    Optional<String> id = raw.name("id");
    ObjectReader in =
        raw.called(id.map(i -> FileWords.say("meter.of", i)).orElse(FileWords.say("meter")));
    KnowledgeFiles.formatAndVersion(in, FORMAT, defects);
    String name = in.text("name", "");
    String translated = in.text("name_de", "");
    List<MeterSpec.Range> volts = ranges(in, "volts", defects);
    List<MeterSpec.Range> ohms = ranges(in, "ohms", defects);
    Optional<Spread> leads =
        in.required("lead_ohms", ObjectReader.estimate())
            .flatMap(v -> in.spreadOf(v, in.path("lead_ohms"), "lead_ohms"));
    leads
        .filter(l -> l.low() < 0)
        .ifPresent(l -> bad(in, "lead_ohms", l.low(), FileWords.say("ohms.least"), defects));
    Optional<Double> input = positive(in, "input_ohms", "ohm", defects);
    Optional<Double> testVolts = positive(in, "test_volts", "V", defects);
    Optional<Double> testOhms = positive(in, "test_ohms", "ohm", defects);
    Optional<String> source = in.text("source");
    in.nothingElse();
    if (!defects.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new MeterSpec(
            id.orElseThrow(),
            InGerman.or(translated, name),
            volts,
            ohms,
            leads.orElseThrow(),
            input.orElseThrow(),
            testVolts.orElseThrow(),
            testOhms.orElseThrow(),
            source.orElseThrow()));
  }

  private static List<MeterSpec.Range> ranges(ObjectReader in, String field, DefectList defects) {
    List<MeterSpec.Range> ranges = new ArrayList<>();
    List<JsonValue> values = in.list(field, 1, 20);
    for (int i = 0; i < values.size(); i++) {
      String path = DefectList.child(in.path(field), i);
      ObjectReader.of(values.get(i), path, in.object(), defects)
          .ifPresent(r -> range(r, ranges, defects));
    }
    return ranges;
  }

  private static void range(ObjectReader in, List<MeterSpec.Range> into, DefectList defects) {
    Optional<Double> full = positive(in, "full", FileWords.say("meter.full"), defects);
    Optional<Double> step = positive(in, "step", FileWords.say("meter.digit"), defects);
    Optional<Double> percent = in.number("percent");
    percent
        .filter(p -> !(p >= 0 && p <= 20))
        .ifPresent(p -> bad(in, "percent", p, FileWords.say("meter.percent"), defects));
    Optional<Double> digits = in.number("digits");
    digits
        .filter(d -> !(d >= 0 && d <= 100))
        .ifPresent(d -> bad(in, "digits", d, FileWords.say("meter.digits"), defects));
    in.nothingElse();
    if (full.isEmpty() || step.isEmpty() || percent.isEmpty() || digits.isEmpty()) {
      return;
    }
    if (!into.isEmpty() && into.get(into.size() - 1).full() >= full.get()) {
      bad(
          in,
          "full",
          full.get(),
          FileWords.say("meter.rising", ObjectReader.plain(into.get(into.size() - 1).full())),
          defects);
    }
    if (step.get() > full.get()) {
      bad(
          in,
          "step",
          step.get(),
          FileWords.say("meter.step", ObjectReader.plain(full.get())),
          defects);
    }
    into.add(new MeterSpec.Range(full.get(), step.get(), percent.get(), digits.get()));
  }

  private static Optional<Double> positive(
      ObjectReader in, String field, String unit, DefectList defects) {
    Optional<Double> value = in.number(field);
    if (value.isPresent() && !(value.get() > 0)) {
      bad(in, field, value.get(), FileWords.say("above", "0 " + unit), defects);
      return Optional.empty();
    }
    if (value.isPresent() && value.get() > MOST) {
      bad(in, field, value.get(), FileWords.say("most", ObjectReader.plain(MOST), unit), defects);
      return Optional.empty();
    }
    return value;
  }

  private static void bad(
      ObjectReader in, String field, double value, String limit, DefectList defects) {
    String shown = ObjectReader.plain(value);
    defects.add(in.path(field), in.object(), shown, limit, ObjectReader.bad(field, shown, limit));
  }
}
