package loopwright.ui.shell;

import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * A view that is made when it is first asked for: the window is up sooner, and what is never looked
 * at takes no memory. For the window's thread alone.
 *
 * @param <T> the view
 */
final class OnDemand<T> {
  private final Supplier<T> maker;
  private T made;

  OnDemand(Supplier<T> maker) {
    this.maker = maker;
  }

  /** The view; made now if it wasn't before. */
  T get() {
    if (made == null) {
      made = maker.get();
    }
    return made;
  }

  /** Does something with the view if it was made. */
  void ifMade(Consumer<T> use) {
    if (made != null) {
      use.accept(made);
    }
  }
}
