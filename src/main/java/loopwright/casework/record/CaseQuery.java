package loopwright.casework.record;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import loopwright.casework.Account;

/**
 * Which cases are looked for; what is left empty fits all.
 *
 * @param words words, each of which must begin one in the case: parts, circuit, vehicle, complaint,
 *     what was found, where it stands, the day as {@code 2024-05-17}
 * @param part id of a part that was measured, looked at, ruled out, found or mended
 * @param circuit id of the circuit complained of
 * @param vehicle id of the vehicle or its file
 * @param since first day of the case's last entry
 * @param until last day of it
 */
public record CaseQuery(
    String words,
    Optional<String> part,
    Optional<String> circuit,
    Optional<String> vehicle,
    Optional<LocalDate> since,
    Optional<LocalDate> until) {

  /** Looks for words alone. */
  public static CaseQuery words(String words) {
    return new CaseQuery(
        words,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** Whether a case is one of them; days are those of the zone. */
  public boolean fits(CaseRecord record, ZoneId zone) {
    LocalDate day = LocalDate.ofInstant(record.last(), zone);
    return since.filter(day::isBefore).isEmpty()
        && until.filter(day::isAfter).isEmpty()
        && circuit.filter(c -> !c.equalsIgnoreCase(record.opened().circuit())).isEmpty()
        && vehicle.filter(v -> !isVehicle(record, v)).isEmpty()
        && part.filter(p -> parts(record).stream().noneMatch(p::equalsIgnoreCase)).isEmpty()
        && hasWords(record, day);
  }

  private static boolean isVehicle(CaseRecord record, String vehicle) {
    return vehicle.equalsIgnoreCase(record.opened().vehicleId())
        || vehicle.equals(record.opened().vehicleName());
  }

  /** Ids of the parts that a case is about. */
  static Set<String> parts(CaseRecord record) {
    Set<String> parts = new TreeSet<>();
    record.readings().forEach(r -> parts.addAll(r.check().subjects()));
    for (Account account : record.accounts().toList()) {
      account.cleared().forEach(c -> parts.add(c.part()));
      account.fault().ifPresent(f -> f.causes().forEach(c -> parts.add(c.part())));
    }
    record.repairs().forEach(r -> parts.add(r.mend().part()));
    return parts;
  }

  private boolean hasWords(CaseRecord record, LocalDate day) {
    if (words.isBlank()) {
      return true;
    }
    String text = " " + plain(text(record, day));
    return Stream.of(plain(words).strip().split(" ")).allMatch(w -> text.contains(" " + w));
  }

  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", " ");
  }

  private static String text(CaseRecord record, LocalDate day) {
    List<String> texts = new ArrayList<>();
    texts.add(record.opened().caseId());
    texts.add(record.title());
    texts.add(record.opened().vehicleId());
    texts.add(record.opened().vehicleName());
    texts.add(record.opened().circuit());
    record.opened().load().ifPresent(texts::add);
    texts.add(record.opened().kind().words());
    texts.add(record.opened().context().word());
    texts.add(record.opened().practice() ? "practice" : "");
    texts.add(record.state().word());
    texts.add(day.toString());
    texts.addAll(parts(record));
    for (Account account : record.accounts().toList()) {
      account.readings().forEach(l -> texts.add(l.where() + " " + l.value()));
      account.cleared().forEach(c -> texts.add(c.title()));
      account.fault().ifPresent(f -> texts.add(f.title() + " " + String.join(" ", f.modes())));
    }
    record.photos().forEach(p -> texts.add(p.caption()));
    return String.join(" ", texts);
  }
}
