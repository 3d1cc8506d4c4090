package loopwright.paper;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import loopwright.model.Setting;
import loopwright.solver.Network;
import loopwright.solver.Renumbering;
import loopwright.solver.Trail;

/**
 * What one check of a plan leaves to the next one: where each of its states settled. By names
 * alone, so that it serves whatever was edited; whether a state still holds is for the solver to
 * say.
 */
final class Kept {

  /**
   * What tells a state from others of the same plan.
   *
   * @param setting positions of the controls and what is apart
   * @param changed what else is changed, in words; empty if nothing
   * @param pulledIn relays that are pulled in to begin with
   */
  record Key(Setting setting, String changed, Set<String> pulledIn) {}

  private final Network network;
  private final Map<Key, Trail> trails = new HashMap<>();
  private int solved;

  Kept(Network network) {
    this.network = network;
  }

  /** Where states of the same name settled, in the numbers of another network. */
  Function<Key, Trail> in(Network now) {
    Renumbering numbers = Renumbering.between(network, now);
    return key -> trails.getOrDefault(key, Trail.NONE).in(numbers);
  }

  /** Keeps a state. */
  void keep(Key key, Trail trail, boolean anew) {
    trails.put(key, trail);
    solved += anew ? 1 : 0;
  }

  /** How many states there are. */
  int states() {
    return trails.size();
  }

  /** How many of them had to be solved. */
  int solved() {
    return solved;
  }
}
