package loopwright.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Seen;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Element;
import loopwright.solver.Network;

/**
 * Readings one in so many of which was not taken as asked: the tip touched nothing, or the next
 * point along a piece, or one thing of the set-up was left undone; a look was called something
 * else. Which readings slip is settled by the seed before the first is taken.
 */
final class Slips implements Course.Taker {

  /** What went wrong with a reading. */
  enum Kind {
    TOUCHED_NOTHING,
    NEXT_POINT,
    NOT_SET,
    MISNAMED
  }

  private final Vehicle vehicle;
  private final Network network;
  private final HiddenTruth truth;
  private final LoadRef watched;
  private final MeterSpec meter;
  private final long seed;
  private final double chance;
  private final List<String> made = new ArrayList<>();

  Slips(
      Vehicle vehicle,
      Network network,
      HiddenTruth truth,
      LoadRef watched,
      MeterSpec meter,
      long seed,
      double chance) {
    this.vehicle = vehicle;
    this.network = network;
    this.truth = truth;
    this.watched = watched;
    this.meter = meter;
    this.seed = seed;
    this.chance = chance;
  }

  /** Whether one of the first so many readings slips. */
  static boolean any(long seed, double chance, int readings) {
    for (int n = 1; n <= readings; n++) {
      if (random(seed, n).nextDouble() < chance) {
        return true;
      }
    }
    return false;
  }

  private static Random random(long seed, int number) {
    Random random = new Random(seed * 1_000_003L + number * 7_919L);
    random.nextDouble();
    return random;
  }

  /** The slips that were made, in words. */
  List<String> made() {
    return made;
  }

  @Override
  public Reading.Value take(Check check, int number) {
    Random random = random(seed, number);
    if (random.nextDouble() >= chance) {
      return Plays.measure(vehicle, truth, watched, check);
    }
    if (!check.kind().metered()) {
      return misnamed(check, number, random);
    }
    int kind = random.nextInt(3);
    if (kind == 0) {
      return nothing(check, number);
    }
    Optional<Check> other = kind == 1 ? nextPoint(check, random) : notSet(check, random);
    if (other.isEmpty()) {
      return nothing(check, number);
    }
    note(number, kind == 1 ? Kind.NEXT_POINT : Kind.NOT_SET, other.get().id());
    return Plays.measure(vehicle, truth, watched, other.get());
  }

  private void note(int number, Kind kind, String what) {
    made.add("slip at " + number + ": " + kind + " " + what);
  }

  private Reading.Value nothing(Check check, int number) {
    note(number, Kind.TOUCHED_NOTHING, check.id());
    return check.kind() == CheckKind.OHMS
        ? new Reading.Value.OverRange()
        : new Reading.Value.Number(0, meter.volts().get(0).step());
  }

  private Reading.Value misnamed(Check check, int number, Random random) {
    Reading.Value.Sight right = (Reading.Value.Sight) Plays.measure(vehicle, truth, watched, check);
    List<Seen> choices =
        new ArrayList<>(check.kind() == CheckKind.LOOK ? looks(check) : check.kind().answers());
    choices.remove(right.seen());
    Seen said = choices.get(random.nextInt(choices.size()));
    note(number, Kind.MISNAMED, check.id() + " " + said.word());
    return new Reading.Value.Sight(said);
  }

  private List<Seen> looks(Check check) {
    String part = LoadRef.parse(check.subject().orElseThrow()).part();
    return switch (vehicle.requirePart(part).kind()) {
      case RELAY -> List.of(Seen.CLICKS, Seen.SILENT);
      case FUSE -> List.of(Seen.BROKEN, Seen.WHOLE);
      default -> List.of(Seen.ON, Seen.DIM, Seen.OFF);
    };
  }

  private Optional<Check> nextPoint(Check check, Random random) {
    int red = network.requireNode(check.red().orElseThrow());
    int black = network.requireNode(check.black().orElseThrow());
    List<TerminalRef> near = new ArrayList<>();
    for (Element e : network.elements()) {
      int other = e.a() == red ? e.b() : e.b() == red ? e.a() : red;
      if (other != red && other != black && other != Network.REFERENCE) {
        network.terminals(other).stream()
            .filter(t -> vehicle.access(t).reachable())
            .findFirst()
            .ifPresent(near::add);
      }
    }
    if (near.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Check.measure(
            check.kind(),
            near.get(random.nextInt(near.size())),
            check.black().orElseThrow(),
            check.setting()));
  }

  /** One control left as it was, or one part left in; never the battery, which is proven off. */
  private Optional<Check> notSet(Check check, Random random) {
    List<String> things = new ArrayList<>(check.setting().positions().keySet());
    check.setting().apart().stream()
        .filter(p -> !p.equals(vehicle.battery().id()))
        .forEach(things::add);
    if (things.isEmpty()) {
      return Optional.empty();
    }
    String left = things.get(random.nextInt(things.size()));
    SortedMap<String, String> positions = new TreeMap<>(check.setting().positions());
    positions.remove(left);
    java.util.TreeSet<String> apart = new java.util.TreeSet<>(check.setting().apart());
    apart.remove(left);
    return Optional.of(
        Check.measure(
            check.kind(),
            check.red().orElseThrow(),
            check.black().orElseThrow(),
            new Setting(positions, apart)));
  }
}
