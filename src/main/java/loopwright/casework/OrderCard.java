package loopwright.casework;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.OrderOfChecks;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Workbench;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.model.Vehicle;

/** An order-of-checks card: what to check first, and after each result where to go, in words. */
public final class OrderCard {

  /** Share from which a part is named in full at an end. */
  private static final double NAMED = 0.2;

  /** Share from which a part is told at all. */
  private static final double TOLD = 0.003;

  /** Parts that are told at most. */
  private static final int MOST_TOLD = 12;

  private final OrderOfChecks order;
  private final Vehicle vehicle;
  private final Words words;
  private final RuleBook rules;
  private final Phrases phrases;
  private final String title;
  private final Map<Check, String> healthy = new HashMap<>();

  OrderCard(
      Diagnosis diagnosis, OrderOfChecks order, Workbench bench, RuleBook rules, Phrases phrases) {
    Complaint complaint = diagnosis.complaint();
    this.order = order;
    this.vehicle = bench.vehicle();
    this.words = new Words(vehicle, phrases, complaint.load(), diagnosis::twin);
    this.rules = rules;
    this.phrases = phrases;
    this.title =
        phrases.say(
            "order-card.about",
            vehicle.circuit(complaint.circuit()).orElseThrow().name(),
            phrases.of(complaint.kind()));
    order.stages().stream()
        .flatMap(s -> s.asked().stream())
        .map(OrderOfChecks.Asked::check)
        .forEach(c -> healthy.put(c, Session.healthyWords(diagnosis, words, bench.meter(), c)));
  }

  /**
   * A card as it is written.
   *
   * @param vehicle the vehicle's name
   * @param title circuit and complaint
   * @param cautions what holds from the first step to the last
   * @param steps the steps, numbered from 1 in this order
   */
  public record Page(String vehicle, String title, List<String> cautions, List<Step> steps) {
    /** Copies the lists. */
    public Page {
      cautions = List.copyOf(cautions);
      steps = List.copyOf(steps);
    }
  }

  /**
   * A step.
   *
   * @param set the whole set-up
   * @param what what is measured or looked at
   * @param red where the red lead goes; empty for a look
   * @param black where the black lead goes; empty for a look
   * @param healthy what a healthy circuit shows
   * @param cautions cautions at this step, the proof of 0.00 V among them
   * @param ways where each result leads
   */
  public record Step(
      List<String> set,
      String what,
      String red,
      String black,
      String healthy,
      List<String> cautions,
      List<Way> ways) {
    /** Copies the lists. */
    public Step {
      set = List.copyOf(set);
      cautions = List.copyOf(cautions);
      ways = List.copyOf(ways);
    }
  }

  /**
   * Where a result leads.
   *
   * @param result the result in words
   * @param step number of the step to go to; empty at an end
   * @param left what is left at an end, in words; empty elsewhere
   */
  public record Way(String result, Optional<Integer> step, String left) {}

  /** Checks that the whole card has. */
  public int checks() {
    return (int) order.stages().stream().filter(s -> s.asked().isPresent()).count();
  }

  /** The card with the first so many checks, those that part most. */
  public Page upTo(int checks) {
    OrderOfChecks cut = order.upTo(checks);
    Map<Integer, Integer> numbers = new HashMap<>();
    List<OrderOfChecks.Asked> asked = new ArrayList<>();
    number(cut, 0, numbers, asked);
    return new Page(
        vehicle.name(),
        title,
        inWords(cut.cautions()),
        asked.stream().map(a -> step(cut, a, numbers)).toList());
  }

  /** Numbers the steps so that the next one mostly follows. */
  private static void number(
      OrderOfChecks order,
      int stage,
      Map<Integer, Integer> numbers,
      List<OrderOfChecks.Asked> asked) {
    Optional<OrderOfChecks.Asked> here = order.stages().get(stage).asked();
    if (here.isPresent() && !numbers.containsKey(stage)) {
      asked.add(here.get());
      numbers.put(stage, asked.size());
      here.get().results().forEach(r -> number(order, r.stage(), numbers, asked));
    }
  }

  private Step step(OrderOfChecks order, OrderOfChecks.Asked asked, Map<Integer, Integer> numbers) {
    Check check = asked.check();
    List<String> set = new ArrayList<>(words.setting(check.setting()));
    set.addAll(words.hands().in(Optional.empty(), check));
    List<String> cautions = new ArrayList<>();
    if (asked.deadFirst()) {
      cautions.add(phrases.say("order-card.dead-first"));
    }
    cautions.addAll(inWords(asked.cautions()));
    List<Way> ways = new ArrayList<>();
    for (OrderOfChecks.Result r : asked.results()) {
      String result =
          r.seen()
              .map(s -> words.seen(check, s))
              .orElseGet(() -> words.outcome(check, r.low(), r.high()));
      Optional<Integer> number = Optional.ofNullable(numbers.get(r.stage()));
      ways.add(
          new Way(
              result,
              number,
              number.isPresent() ? "" : left(order.stages().get(r.stage()).left())));
    }
    return new Step(
        set,
        check.kind().metered() ? words.meter(check) : words.question(check),
        words.red(check).map(OrderCard::point).orElse(""),
        check.black().map(words::point).map(OrderCard::point).orElse(""),
        healthy.get(check),
        cautions,
        ways);
  }

  private static String point(PointView point) {
    return point.ref() + ": " + point.title();
  }

  private List<String> inWords(List<Conclusion.Caution> cautions) {
    return cautions.stream().map(c -> rules.words(c.rule(), c.key(), c.args())).distinct().toList();
  }

  /** What is left: what is likely by name, what is less so by its id. */
  private String left(Map<String, Double> shares) {
    List<String> told = told(shares);
    List<String> named = new ArrayList<>();
    List<String> others = new ArrayList<>();
    for (String part : told) {
      if (!named.isEmpty() && shares.get(part) < NAMED) {
        others.add(part);
      } else {
        named.add(
            part.equals(SuspectId.NONE) ? phrases.say("order-card.nothing") : words.part(part));
      }
    }
    others.remove(SuspectId.NONE);
    String likely = String.join(", ", named);
    return others.isEmpty()
        ? likely
        : phrases.say("order-card.others", likely, String.join(", ", others));
  }

  /** Ids of the parts that an end tells, of all that it holds. */
  public static List<String> told(Map<String, Double> shares) {
    return shares.entrySet().stream()
        .limit(MOST_TOLD)
        .filter(e -> e.getValue() >= TOLD)
        .map(Map.Entry::getKey)
        .toList();
  }

  /** The order that the card puts into words. */
  public OrderOfChecks order() {
    return order;
  }
}
