package loopwright.ui;

import java.util.ArrayDeque;
import java.util.Objects;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;

/**
 * Runs work off the window's thread, one piece after another in the order given, and hands what
 * came of it back on the window's thread.
 */
public final class Worker {
  private final Executor background;
  private final Executor window;
  private final Queue<Runnable> waiting = new ArrayDeque<>();
  private final ReadOnlyIntegerWrapper pending = new ReadOnlyIntegerWrapper(0);
  private boolean running;
  private Optional<Consumer<BooleanSupplier>> idle = Optional.empty();

  /**
   * Makes a worker.
   *
   * @param background where work runs; may have any number of threads
   * @param window runs on the window's thread
   */
  public Worker(Executor background, Executor window) {
    this.background = Objects.requireNonNull(background, "background");
    this.window = Objects.requireNonNull(window, "window");
  }

  /** A worker of its own queue on the same threads. */
  public Worker another() {
    return new Worker(background, window);
  }

  /** How many pieces of work are not done yet. Read on the window's thread. */
  public ReadOnlyIntegerProperty pendingProperty() {
    return pending.getReadOnlyProperty();
  }

  /** Runs something on the window's thread. */
  public void onWindow(Runnable action) {
    window.execute(action);
  }

  /**
   * Queues work. Call on the window's thread.
   *
   * @param work runs in the background
   * @param done gets the result on the window's thread
   * @param failed gets what was thrown, on the window's thread
   */
  public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    pending.set(pending.get() + 1);
    enqueue(
        () -> {
          Runnable after;
          try {
            T result = work.call();
            after = () -> done.accept(result);
          } catch (Exception e) {
            after = () -> failed.accept(e);
          }
          Runnable report = after;
          window.execute(
              () -> {
                pending.set(pending.get() - 1);
                report.run();
              });
        });
  }

  /**
   * Sets what to do while nothing is waiting, in place of what was set before. It isn't counted as
   * pending; what queued work interrupts is begun again after it.
   *
   * @param work gets what tells it to go on; it ends soon after that turns false
   */
  public void whenIdle(Consumer<BooleanSupplier> work) {
    synchronized (waiting) {
      idle = Optional.of(work);
      if (running) {
        return;
      }
      running = true;
    }
    background.execute(this::drain);
  }

  /** Forgets what was to do while nothing is waiting. */
  public void neverIdle() {
    synchronized (waiting) {
      idle = Optional.empty();
    }
  }

  private void enqueue(Runnable task) {
    synchronized (waiting) {
      waiting.add(task);
      if (running) {
        return;
      }
      running = true;
    }
    background.execute(this::drain);
  }

  private void drain() {
    while (true) {
      Runnable task;
      synchronized (waiting) {
        task = waiting.poll();
        if (task == null && idle.isPresent()) {
          Consumer<BooleanSupplier> work = idle.get();
          task = () -> idle(work);
        } else if (task == null) {
          running = false;
          return;
        }
      }
      task.run();
    }
  }

  private void idle(Consumer<BooleanSupplier> work) {
    BooleanSupplier goOn =
        () -> {
          synchronized (waiting) {
            return waiting.isEmpty() && idle.equals(Optional.of(work));
          }
        };
    boolean failed = false;
    try {
      work.accept(goOn);
    } catch (RuntimeException e) {
      // Only a service: whoever needs the result for real will meet the same failure and tell it.
      failed = true;
    }
    synchronized (waiting) {
      if (idle.equals(Optional.of(work)) && (failed || waiting.isEmpty())) {
        idle = Optional.empty();
      }
    }
  }
}
