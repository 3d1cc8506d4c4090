package loopwright.casework.record;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import loopwright.casework.Account;
import loopwright.casework.OwnRate;
import loopwright.casework.OwnRecord;
import loopwright.knowledge.Context;
import loopwright.knowledge.FaultMode;
import loopwright.knowledge.Knowledge;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;

/**
 * Confirmed repairs shift a vehicle's failure rates. A pure function of the kept cases: of each
 * mend whose proof succeeded, in a case that was no practice, what had been found before it.
 *
 * <p>A failure mode of a kind of part fails in this vehicle as often as the tables say times an
 * unknown factor; the factor is Gamma distributed with mean 1 and shape {@value #STRENGTH}, the
 * failures found are Poisson distributed with mean factor times expected. The posterior mean is
 *
 * <pre>factor = (STRENGTH + found) / (STRENGTH + expected)</pre>
 *
 * held within {@value #LEAST} and {@value #MOST} (the gamma-Poisson model for ratios of observed to
 * expected counts, Clayton and Kaldor, Biometrics 43, 1987, from memory). {@code found} adds up the
 * mends, each shared among the modes of the mended part as the case believed in them. {@code
 * expected} adds up, over the same mends, the mode's share of all failures that the tables give the
 * vehicle in the case's context; which of them bear on the circuit complained of is not looked at.
 *
 * <p>Shape 3 is our own choice: rates of one vehicle then lie 58 % (one standard deviation) about
 * the tables', two finds of a kind count it about 1.6 times, and no single one decides anything.
 * The bounds keep what a vehicle never had in the search.
 */
public final class OwnHistory implements OwnRecord {
  /** Shape of the factor's distribution before any find. */
  public static final double STRENGTH = 3;

  /** Least factor. */
  public static final double LEAST = 1 / 3.0;

  /** Greatest factor. */
  public static final double MOST = 3;

  /** A factor nearer to 1 changes nothing that anybody could see. */
  private static final double NEAR = 0.01;

  private final Supplier<List<CaseRecord>> kept;
  private final Knowledge knowledge;

  /**
   * The history of vehicles.
   *
   * @param kept gives the kept cases
   * @param knowledge the failure tables
   */
  public OwnHistory(Supplier<List<CaseRecord>> kept, Knowledge knowledge) {
    this.kept = kept;
    this.knowledge = knowledge;
  }

  @Override
  public List<OwnRate> rates(Vehicle vehicle) {
    return rates(kept.get(), vehicle, knowledge);
  }

  /** The rates that differ from the tables', in the tables' order; empty without any find. */
  static List<OwnRate> rates(List<CaseRecord> records, Vehicle vehicle, Knowledge knowledge) {
    Map<String, Double> found = new HashMap<>();
    Map<Context, Integer> mends = new HashMap<>();
    for (CaseRecord record : records) {
      if (record.opened().practice() || !record.opened().vehicleId().equals(vehicle.id())) {
        continue;
      }
      for (CaseRecord.Repair repair : record.repairs()) {
        if (repair.proven() && count(repair, found)) {
          mends.merge(record.opened().context(), 1, Integer::sum);
        }
      }
    }
    List<OwnRate> rates = new ArrayList<>();
    if (mends.isEmpty()) {
      return rates;
    }
    Map<String, Double> expected = expected(vehicle, knowledge, mends);
    for (FaultMode mode : knowledge.faults()) {
      String key = key(mode.kind().word(), mode.mode());
      double n = found.getOrDefault(key, 0.0);
      double e = expected.getOrDefault(key, 0.0);
      double factor = factor(n, e);
      if (Math.abs(factor - 1) >= NEAR) {
        rates.add(new OwnRate(mode.kind(), mode.mode(), n, e, factor));
      }
    }
    return rates;
  }

  /** The factor for so many finds where so many were expected. */
  static double factor(double found, double expected) {
    return Math.max(LEAST, Math.min(MOST, (STRENGTH + found) / (STRENGTH + expected)));
  }

  /** Shares a mend among the modes of its part; false if none was found in it. */
  private static boolean count(CaseRecord.Repair repair, Map<String, Double> found) {
    List<Account.Cause> causes =
        repair.fault().stream()
            .flatMap(f -> f.causes().stream())
            .filter(c -> c.part().equals(repair.mend().part()))
            .toList();
    double all = causes.stream().mapToDouble(Account.Cause::belief).sum();
    if (all <= 0) {
      return false;
    }
    causes.forEach(c -> found.merge(key(c.kind().word(), c.mode()), c.belief() / all, Double::sum));
    return true;
  }

  /** Finds of each mode that the tables expect of so many mends in each context. */
  private static Map<String, Double> expected(
      Vehicle vehicle, Knowledge knowledge, Map<Context, Integer> mends) {
    Network network = Network.of(vehicle, knowledge.typicals());
    List<Failure> failures = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      failures.addAll(Failure.of(network, part, knowledge.faults()));
    }
    Map<String, Double> expected = new HashMap<>();
    mends.forEach(
        (context, count) -> {
          double all = failures.stream().mapToDouble(f -> f.rate(context)).sum();
          for (Failure failure : failures) {
            expected.merge(
                key(failure.mode().kind().word(), failure.mode().mode()),
                count * failure.rate(context) / all,
                Double::sum);
          }
        });
    return expected;
  }

  private static String key(String kind, String mode) {
    return kind + "/" + mode;
  }
}
