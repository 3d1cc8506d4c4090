package loopwright.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.rulebook.Conclusion;

/**
 * One search from the first check to its end, as the program leads it: the best-ranked check next;
 * at a contradiction the likeliest slip is taken again. Keeps what it takes to say why a search
 * went wrong.
 */
final class Course {

  /** Gives the answer to a check; may be one that was not taken as asked. */
  interface Taker {
    Reading.Value take(Check check, int number);
  }

  /**
   * One step.
   *
   * @param check what was asked
   * @param value what was answered
   * @param truth belief in the true failure's part after it
   * @param best belief in the strongest part after it
   * @param bestPart the strongest part
   */
  record Taken(Check check, Reading.Value value, double truth, double best, String bestPart) {}

  private final Diagnosis diagnosis;
  private final SuspectId truth;
  private final List<Taken> steps = new ArrayList<>();
  private final List<Reading> readings = new ArrayList<>();
  private final List<String> clearings = new ArrayList<>();
  private double minutes;
  private Findings findings;
  private final Findings first;

  private Course(Diagnosis diagnosis, SuspectId truth) {
    this.diagnosis = diagnosis;
    this.truth = truth;
    this.findings = diagnosis.findings(readings, Diagnosis.Circumstances.NONE);
    this.first = findings;
  }

  /**
   * Plays.
   *
   * @param truth what has really failed
   * @param most greatest number of checks
   */
  static Course play(Diagnosis diagnosis, SuspectId truth, Taker taker, int most) {
    Course course = new Course(diagnosis, truth);
    Optional<Check> last = Optional.empty();
    Optional<Check> next = course.next();
    while (next.isPresent() && course.readings.size() < most) {
      Check check = next.get();
      course.minutes += diagnosis.minutes(check, last);
      last = Optional.of(check);
      course.take(check, taker.take(check, course.readings.size() + 1));
      next = course.next();
    }
    return course;
  }

  private void take(Check check, Reading.Value value) {
    readings.add(new Reading(readings.size() + 1, check, value));
    findings =
        diagnosis.findings(
            readings,
            new Diagnosis.Circumstances(Set.of(), Set.of(), Map.of(), Optional.of(check)));
    double best = findings.parts().isEmpty() ? 0 : findings.parts().get(0).belief();
    String bestPart = findings.parts().isEmpty() ? "-" : findings.parts().get(0).part();
    steps.add(new Taken(check, value, belief(truth.part()), best, bestPart));
    for (Conclusion c : findings.conclusions()) {
      if (c instanceof Conclusion.ClearedBy by && by.suspect().equals(truth)) {
        String text = by.rule() + " by reading " + by.readings() + " " + by.key() + " " + by.args();
        if (!clearings.contains(text)) {
          clearings.add(text);
        }
      }
    }
  }

  private Optional<Check> next() {
    return switch (findings.status()) {
      case ISOLATED, HEALTHY -> Optional.empty();
      case CONTRADICTION ->
          findings.atOdds().isEmpty()
              ? proposed()
              : Optional.of(readings.get(findings.atOdds().get(0) - 1).check());
      case SEARCHING -> proposed();
    };
  }

  private Optional<Check> proposed() {
    return findings.ranked().isEmpty() || findings.ranked().get(0).bits() < 1e-4
        ? Optional.empty()
        : Optional.of(findings.ranked().get(0).check());
  }

  private double belief(String part) {
    return belief(findings, part);
  }

  private static double belief(Findings findings, String part) {
    return findings.parts().stream()
        .filter(p -> p.part().equals(part))
        .mapToDouble(Findings.PartBelief::belief)
        .findFirst()
        .orElse(0);
  }

  // ---- how it ended ---------------------------------------------------------------------------

  int checks() {
    return readings.size();
  }

  double minutes() {
    return minutes;
  }

  /** Where the search stood before any check. */
  Findings first() {
    return first;
  }

  Findings findings() {
    return findings;
  }

  boolean right() {
    return findings.status() == Findings.Status.ISOLATED && findings.group().contains(truth.part());
  }

  boolean asGroup() {
    return findings.group().size() > 1;
  }

  boolean cleared() {
    return !clearings.isEmpty();
  }

  /** The class of what went wrong; empty if nothing did. */
  Optional<String> cause(int most) {
    if (right()) {
      return Optional.empty();
    }
    if (!diagnosis.titles().containsKey(truth)) {
      return Optional.of("true failure not in play for this complaint");
    }
    if (cleared()) {
      return Optional.of("true failure cleared");
    }
    return Optional.of(
        switch (findings.status()) {
          case HEALTHY -> "called healthy";
          case ISOLATED ->
              findings.group().size() == 1
                  ? "sure of another part"
                  : "group leaves the true part out";
          case CONTRADICTION -> "ends in a contradiction";
          case SEARCHING ->
              readings.size() >= most
                  ? "too many checks"
                  : belief(truth.part()) >= 0.5
                      ? "no check left, true part leads"
                      : "no check left, another part leads";
        });
  }

  /** The whole course with the step that hurt the true failure most, and the bands there. */
  List<String> story() {
    List<String> lines = new ArrayList<>();
    double before = belief(first, truth.part());
    lines.add(String.format(Locale.ROOT, "  at first %.3g", before));
    int worst = -1;
    double most = 1;
    for (int i = 0; i < steps.size(); i++) {
      Taken s = steps.get(i);
      double ratio = (s.truth() + 1e-12) / (before + 1e-12);
      if (ratio < most) {
        most = ratio;
        worst = i;
      }
      before = s.truth();
      if (i > 1 && i < steps.size() - 1 && same(s, steps.get(i - 1)) && same(s, steps.get(i - 2))) {
        continue;
      }
      lines.add(
          String.format(
              Locale.ROOT,
              "  %2d %s = %s  true %.2g, %s %.3f",
              i + 1,
              s.check().id(),
              shown(s.value()),
              s.truth(),
              s.bestPart(),
              s.best()));
    }
    for (String c : clearings) {
      lines.add("  CLEARED " + c);
    }
    lines.add(
        String.format(
            Locale.ROOT,
            "  end %s %s unlisted %.3f healthy %.3f, held: %s",
            findings.status(),
            findings.group(),
            findings.unlisted(),
            findings.healthy(),
            findings.parts().stream().limit(5).map(Course::brief).toList()));
    lines.add(
        "  best left: "
            + findings.ranked().stream()
                .limit(3)
                .map(
                    p ->
                        String.format(
                            Locale.ROOT,
                            "%s %.4f bit %.1f min",
                            p.check().id(),
                            p.bits(),
                            p.minutes()))
                .toList());
    if (worst >= 0) {
      Taken s = steps.get(worst);
      lines.add(
          String.format(
              Locale.ROOT,
              "  hurt most by reading %d (factor %.2g); %s",
              worst + 1,
              most,
              bands(s.check())));
    }
    return lines;
  }

  private static boolean same(Taken a, Taken b) {
    return a.check().equals(b.check()) && shown(a.value()).equals(shown(b.value()));
  }

  private static String brief(Findings.PartBelief p) {
    return String.format(
        Locale.ROOT,
        "%s %.4f (%s)",
        p.part(),
        p.belief(),
        p.modes().isEmpty() ? "" : p.modes().get(0).suspect().mode());
  }

  private String bands(Check check) {
    if (!check.kind().metered()) {
      return "a look";
    }
    StringBuilder text = new StringBuilder("bands: true " + band(truth, check));
    findings.parts().stream()
        .filter(p -> !p.part().equals(truth.part()) && !p.modes().isEmpty())
        .findFirst()
        .ifPresent(
            p -> {
              SuspectId other = p.modes().get(0).suspect();
              text.append(", ").append(other).append(' ').append(band(other, check));
            });
    double[] healthy = diagnosis.healthyBand(check);
    text.append(String.format(Locale.ROOT, ", healthy %.4g to %.4g", healthy[0], healthy[1]));
    return text.toString();
  }

  private String band(SuspectId suspect, Check check) {
    return diagnosis
        .suspectBand(suspect, check)
        .map(b -> String.format(Locale.ROOT, "%.4g to %.4g", b[0], b[1]))
        .orElse("not in play");
  }

  static String shown(Reading.Value value) {
    if (value instanceof Reading.Value.Number n) {
      return String.format(Locale.ROOT, "%.4g", n.value());
    }
    if (value instanceof Reading.Value.Sight s) {
      return s.seen().word();
    }
    return "OL";
  }
}
