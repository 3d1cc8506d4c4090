package loopwright.ui;

import java.util.ArrayDeque;
import java.util.Objects;
import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
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
        if (task == null) {
          running = false;
          return;
        }
      }
      task.run();
    }
  }
}
