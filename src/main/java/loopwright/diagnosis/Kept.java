package loopwright.diagnosis;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Results that are worked out once and kept. Several threads may ask at a time; two that ask for
 * the same may both work it out, and both get the one that was kept first. What works it out is
 * free to ask for other results.
 */
final class Kept<K, V> {
  private final Map<K, V> map;

  private Kept(Map<K, V> map) {
    this.map = map;
  }

  /** Keys are the same if they are equal. */
  static <K, V> Kept<K, V> byEquals() {
    return new Kept<>(new HashMap<>());
  }

  /** Keys are the same if they are one object. */
  static <K, V> Kept<K, V> byIdentity() {
    return new Kept<>(new IdentityHashMap<>());
  }

  /** What is kept for a key, worked out now if nothing is. */
  V get(K key, Function<? super K, ? extends V> make) {
    V kept;
    synchronized (map) {
      kept = map.get(key);
    }
    if (kept != null) {
      return kept;
    }
    V made = make.apply(key);
    synchronized (map) {
      V first = map.putIfAbsent(key, made);
      return first == null ? made : first;
    }
  }

  /** Keeps a result that is known. */
  void put(K key, V value) {
    synchronized (map) {
      map.put(key, value);
    }
  }

  /** Forgets what has other keys. */
  void keepOnly(Predicate<? super K> stays) {
    synchronized (map) {
      map.keySet().removeIf(k -> !stays.test(k));
    }
  }

  /** How many results are kept. */
  int size() {
    synchronized (map) {
      return map.size();
    }
  }
}
