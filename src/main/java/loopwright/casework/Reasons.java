package loopwright.casework;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Consequences;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Explainer;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.RuleBook;

/** Why a part is still suspected, or why not, in two or three sentences with numbers. */
final class Reasons {

  /** Chance of a slip from which a suspect counts as held by that slip alone. */
  private static final double ONLY_A_SLIP = 0.2;

  /** Belief below which it is told why there is so little. */
  private static final double LITTLE = 0.05;

  /** Sentences about one suspect before what it would show next and what it brings about. */
  private static final int ENOUGH = 3;

  /** Readings that are tried for one that asks for some resistance, latest first. */
  private static final int TRIED = 4;

  /** Links of a chain that are told. */
  private static final int MOST_LINKS = 3;

  /** Failures named at a time. */
  private static final int MOST_MODES = 3;

  private final Diagnosis diagnosis;
  private final Explainer explainer;
  private final Findings findings;
  private final List<Reading> readings;
  private final RuleBook rules;
  private final Words words;
  private final Phrases phrases;
  private final Function<Check, String> healthyWords;
  private final Optional<Check> next;

  /**
   * For the state of a case.
   *
   * @param readings readings that count, in the order taken
   * @param healthyWords what a healthy circuit shows in a check, in words
   * @param next the meter check asked now; empty if none is
   */
  Reasons(
      Diagnosis diagnosis,
      Findings findings,
      List<Reading> readings,
      RuleBook rules,
      Words words,
      Phrases phrases,
      Function<Check, String> healthyWords,
      Optional<Check> next) {
    this.diagnosis = diagnosis;
    this.explainer = diagnosis.explainer();
    this.findings = findings;
    this.readings = readings;
    this.rules = rules;
    this.words = words;
    this.phrases = phrases;
    this.healthyWords = healthyWords;
    this.next = next;
  }

  /**
   * What is asked about.
   *
   * @param part id of a part
   * @param mode one of its failures; empty: all of them
   */
  record About(String part, Optional<String> mode) {
    /** Reads {@code part} or {@code part/mode}. */
    static About of(String text) {
      int slash = text.indexOf('/');
      return slash < 0
          ? new About(text, Optional.empty())
          : new About(text.substring(0, slash), Optional.of(text.substring(slash + 1)));
    }

    /** The one suspect asked about; empty for a whole part. */
    Optional<SuspectId> suspect() {
      return mode.map(m -> new SuspectId(part, m));
    }
  }

  /** Why it is still suspected, or what ruled it out. */
  List<String> why(About about) {
    List<SuspectId> suspects =
        about.suspect().map(List::of).orElseGet(() -> explainer.suspects(about.part()));
    List<Findings.ModeBelief> held = held(about);
    if (suspects.isEmpty()) {
      return List.of(
          phrases.say(
              "why.out-of-play",
              words.part(about.part()),
              words.part(diagnosis.complaint().load().part()),
              phrases.of(diagnosis.complaint().kind())));
    }
    return held.isEmpty() ? cleared(about, suspects) : held(about, held);
  }

  private List<Findings.ModeBelief> held(About about) {
    return findings.parts().stream()
        .filter(p -> p.part().equals(about.part()))
        .flatMap(p -> p.modes().stream())
        .filter(m -> about.suspect().map(m.suspect()::equals).orElse(true))
        .toList();
  }

  // ---- why not ------------------------------------------------------------------------------

  private List<String> cleared(About about, List<SuspectId> suspects) {
    List<Conclusion.ClearedBy> by =
        findings.conclusions().stream()
            .filter(Conclusion.ClearedBy.class::isInstance)
            .map(Conclusion.ClearedBy.class::cast)
            .filter(c -> suspects.contains(c.suspect()))
            .toList();
    Set<Integer> ids = new TreeSet<>();
    by.forEach(c -> ids.addAll(c.readings()));
    List<String> text = new ArrayList<>();
    String name =
        about.suspect().isPresent()
            ? phrases.say("why.mode-of", modeTitle(about), words.part(about.part()))
            : words.part(about.part());
    text.add(
        phrases.say(
            about.suspect().isPresent() ? "why.mode-cleared" : "why.cleared", name, quotes(ids)));
    for (Reading r : readings) {
      if (ids.contains(r.id()) && text.size() < ENOUGH) {
        instead(suspects, r, ids.size() > 1).ifPresent(text::add);
      }
    }
    for (Reading r : readings) {
      if (ids.contains(r.id()) && text.size() < ENOUGH && text.size() > 1) {
        needed(suspects, r).ifPresent(text::add);
      }
    }
    if (text.size() == 1) {
      by.stream()
          .findFirst()
          .map(c -> rules.words(c.rule(), c.key(), c.args()))
          .ifPresent(text::add);
    }
    return text;
  }

  private String modeTitle(About about) {
    return diagnosis.titles().getOrDefault(about.suspect().orElseThrow(), about.part());
  }

  private String quotes(Set<Integer> ids) {
    return readings.stream()
        .filter(r -> ids.contains(r.id()))
        .map(
            r ->
                phrases.say(
                    "cleared.quote",
                    words.value(r.check(), r.value()),
                    words.place(r.check()),
                    Integer.toString(r.id())))
        .collect(Collectors.joining("; "));
  }

  /** What the failures that a reading rules out would have shown in its place. */
  private Optional<String> instead(List<SuspectId> suspects, Reading r, boolean some) {
    Explainer.Instead instead = explainer.instead(suspects, r);
    Band.Unit unit = Figures.unit(r.check());
    Optional<String> most =
        instead.most().map(v -> phrases.say("why.at-most", Figures.value(v, unit)));
    Optional<String> least =
        instead.least().map(v -> phrases.say("why.at-least", Figures.value(v, unit)));
    if (most.isEmpty() && least.isEmpty()) {
      return Optional.empty();
    }
    String bounds =
        most.isPresent() && least.isPresent()
            ? phrases.say("why.or", most.get(), least.get())
            : most.or(() -> least).orElseThrow();
    return Optional.of(
        phrases.say(
            suspects.size() == 1 ? "why.instead-mode" : some ? "why.instead-some" : "why.instead",
            bounds,
            words.value(r.check(), r.value()),
            Integer.toString(r.id())));
  }

  // ---- why still ------------------------------------------------------------------------------

  private List<String> held(About about, List<Findings.ModeBelief> held) {
    List<String> text = new ArrayList<>();
    double belief = held.stream().mapToDouble(Findings.ModeBelief::belief).sum();
    List<SuspectId> suspects = held.stream().map(Findings.ModeBelief::suspect).toList();
    text.add(
        phrases.say(
            "why.held",
            words.part(about.part()),
            Figures.percent(belief),
            held.stream()
                .filter(m -> m.belief() >= 0.05 * belief)
                .limit(MOST_MODES)
                .map(words::mode)
                .collect(Collectors.joining("; "))));
    Optional<Explainer.Odd> odd =
        explainer.against(suspects, readings).filter(o -> o.slip() > ONLY_A_SLIP);
    telling(suspects, odd, held.get(0)).ifPresent(text::add);
    if (odd.isPresent()) {
      Reading r = reading(odd.get().reading());
      text.add(
          phrases.say(
              "why.only-slip",
              Integer.toString(r.id()),
              words.value(r.check(), r.value()),
              words.place(r.check()),
              Figures.percent(odd.get().slip())));
    } else if (belief < LITTLE && !readings.isEmpty()) {
      text.add(phrases.say("why.seldom", Figures.percent(explainer.before(suspects))));
    }
    wouldShow(held.get(0)).ifPresent(text::add);
    text.addAll(chain(held.get(0).suspect()));
    return text;
  }

  private Reading reading(int id) {
    return readings.stream().filter(r -> r.id() == id).findFirst().orElseThrow();
  }

  /** The sentence about the reading that says most of a part: the odd one, or the latest. */
  private Optional<String> telling(
      List<SuspectId> suspects, Optional<Explainer.Odd> odd, Findings.ModeBelief strongest) {
    List<Reading> metered =
        readings.stream()
            .filter(r -> r.check().kind().metered())
            .sorted(
                Comparator.comparing(
                        (Reading r) -> odd.filter(o -> o.reading() == r.id()).isEmpty())
                    .thenComparing(Comparator.comparingInt(Reading::id).reversed()))
            .limit(TRIED)
            .toList();
    for (Reading r : metered) {
      Optional<String> needed = needed(suspects, r);
      if (needed.isPresent()) {
        return needed;
      }
    }
    return metered.stream()
        .findFirst()
        .flatMap(
            r ->
                diagnosis
                    .suspectBand(strongest.suspect(), r.check())
                    .map(
                        band ->
                            phrases.say(
                                "why.band",
                                Integer.toString(r.id()),
                                words.value(r.check(), r.value()),
                                words.place(r.check()),
                                Figures.range(band[0], band[1], Figures.unit(r.check())),
                                healthyWords.apply(r.check()))));
  }

  /** The resistance that a part would have to have for a reading, and which failures can. */
  private Optional<String> needed(List<SuspectId> suspects, Reading r) {
    Explainer.Resistance found = explainer.needed(suspects, r);
    String part = suspects.get(0).part();
    String value = words.value(r.check(), r.value());
    String place = words.place(r.check());
    String id = Integer.toString(r.id());
    if (found instanceof Explainer.Resistance.None) {
      return Optional.of(
          phrases.say("why.needed-none", words.part(part), value, place, id) + modes(part, r));
    }
    if (!(found instanceof Explainer.Resistance.Between between) || between.ohms().any()) {
      return Optional.empty();
    }
    Explainer.Needed ohms = between.ohms();
    String range =
        ohms.low() <= 0
            ? phrases.say("why.at-most", Figures.ohms(ohms.high()))
            : Double.isInfinite(ohms.high())
                ? phrases.say("why.at-least", Figures.ohms(ohms.low()))
                : Figures.range(ohms.low(), ohms.high(), Band.Unit.OHM);
    return Optional.of(
        phrases.say("why.needed", joint(part, between), range, value, place, id) + modes(part, r));
  }

  private String joint(String part, Explainer.Resistance.Between between) {
    String name = words.part(part);
    return between.joint().isEmpty() ? name : phrases.say("mode.at", name, between.joint());
  }

  /** Which failures of a part can give a reading and which can't. */
  private String modes(String part, Reading r) {
    List<Explainer.Mode> modes = explainer.modes(explainer.suspects(part), r);
    StringBuilder text = new StringBuilder();
    for (Explainer.Can can : Explainer.Can.values()) {
      List<String> titles =
          modes.stream().filter(m -> m.can() == can).map(Explainer.Mode::title).distinct().toList();
      if (!titles.isEmpty()) {
        text.append(' ')
            .append(
                phrases.say(
                    "why.can." + can.name().toLowerCase(Locale.ROOT),
                    words.listed(titles, MOST_MODES)));
      }
    }
    return text.toString();
  }

  /** What the next check would show with a failure, beside what a healthy circuit shows. */
  private Optional<String> wouldShow(Findings.ModeBelief mode) {
    return next.flatMap(
        check ->
            diagnosis
                .suspectBand(mode.suspect(), check)
                .map(
                    band ->
                        phrases.say(
                            "why.next",
                            Figures.range(band[0], band[1], Figures.unit(check)),
                            words.place(check),
                            healthyWords.apply(check))));
  }

  // ---- what it brings about ---------------------------------------------------------------------

  /** What a suspect brings about elsewhere, link by link. */
  List<String> chain(SuspectId suspect) {
    return diagnosis.consequences(suspect, readings).stream()
        .limit(MOST_LINKS)
        .map(this::link)
        .toList();
  }

  private String link(Consequences.Link link) {
    String part = words.part(link.part());
    if (link instanceof Consequences.Link.Blows b) {
      String amps = Figures.amps(b.amps());
      String blowsAt = Figures.amps(b.blowsAt().low(), b.blowsAt().high());
      return b.whileOn()
          .map(c -> phrases.say("link.blows-while", part, amps, blowsAt, c))
          .orElseGet(() -> phrases.say("link.blows", part, amps, blowsAt));
    }
    if (link instanceof Consequences.Link.DropsOut d) {
      return phrases.say(
          "link.drops-out",
          part,
          Figures.volts(d.volts()),
          Figures.range(d.needs().low(), d.needs().high(), Band.Unit.VOLT));
    }
    if (link instanceof Consequences.Link.PullsIn p) {
      return phrases.say(
          "link.pulls-in",
          part,
          Figures.volts(p.volts()),
          Figures.range(p.holds().low(), p.holds().high(), Band.Unit.VOLT));
    }
    if (link instanceof Consequences.Link.Wakes w) {
      return phrases.say("link.wakes", part, Figures.volts(w.volts()), Figures.percent(w.share()));
    }
    if (link instanceof Consequences.Link.Sags s) {
      return phrases.say("link.sags", part, Figures.volts(s.volts()), Figures.volts(s.healthy()));
    }
    if (link instanceof Consequences.Link.Kicks k) {
      return phrases.say(
          "link.kicks",
          part,
          words.part(k.coil()),
          Figures.amps(k.amps()),
          phrases.say("link.across." + k.across().word()));
    }
    return phrases.say("link.buzzes", part);
  }

  // ---- the numbers behind it --------------------------------------------------------------------

  /** The meter readings beside what a suspect could show there, latest first. */
  List<Against> against(About about) {
    Optional<SuspectId> suspect = about.suspect().or(() -> strongest(about.part()));
    List<Against> list = new ArrayList<>();
    for (Reading r : readings) {
      if (suspect.isEmpty() || !r.check().kind().metered()) {
        continue;
      }
      Band.Unit unit = Figures.unit(r.check());
      double[] healthy = diagnosis.healthyBand(r.check());
      Optional<Band> needed = ohms(explainer.needed(List.of(suspect.get()), r));
      diagnosis
          .suspectBand(suspect.get(), r.check())
          .ifPresent(
              band ->
                  list.add(
                      0,
                      new Against(
                          r.id(),
                          words.where(r.check()),
                          words.value(r.check(), r.value()),
                          new Band(band[0], band[1], unit),
                          new Band(healthy[0], healthy[1], unit),
                          needed,
                          explainer.modes(explainer.suspects(about.part()), r))));
    }
    return list;
  }

  private static Optional<Band> ohms(Explainer.Resistance found) {
    return found instanceof Explainer.Resistance.Between b
        ? Optional.of(new Band(b.ohms().low(), b.ohms().high(), Band.Unit.OHM))
        : Optional.empty();
  }

  /** A part's likeliest failure; for one that is cleared, the one that was cleared first. */
  private Optional<SuspectId> strongest(String part) {
    return held(new About(part, Optional.empty())).stream()
        .map(Findings.ModeBelief::suspect)
        .findFirst()
        .or(
            () ->
                findings.cleared().getOrDefault(part, List.of()).stream()
                    .map(Conclusion.ClearedBy::suspect)
                    .findFirst());
  }
}
